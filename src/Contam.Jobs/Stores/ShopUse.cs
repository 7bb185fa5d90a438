namespace Contam.Jobs.Stores;

/// <summary>What a shop is opened for.</summary>
public enum ShopUse
{
    /// <summary>To be read. Nothing is changed, not even tables of an earlier version.</summary>
    Read,

    /// <summary>To be written to; it must be there.</summary>
    Write,

    /// <summary>To be written to, and made where it is not there.</summary>
    Create,
}
