namespace Contam.Jobs.Stores;

/// <summary>Why a shop's record cannot be used as it is asked for.</summary>
public enum ShopFault
{
    /// <summary>It is not there, or cannot be got at.</summary>
    Missing,

    /// <summary>It may be read but not written.</summary>
    ReadOnly,

    /// <summary>Somebody else holds it.</summary>
    Locked,

    /// <summary>It is from a later version of the program.</summary>
    Newer,

    /// <summary>It is damaged, or no record at all.</summary>
    Damaged,

    /// <summary>There is no room left.</summary>
    Full,

    /// <summary>What is asked for is not there, or not allowed.</summary>
    Refused,

    /// <summary>The server does not answer as it should.</summary>
    Server,
}

/// <summary>A shop's record cannot be used as it is asked for. The message names place, cause and mend; nothing that was acknowledged is lost.</summary>
public sealed class ShopException(ShopFault fault, string message, Exception? inner = null) : Exception(message, inner)
{
    /// <summary>Why.</summary>
    public ShopFault Fault { get; } = fault;
}
