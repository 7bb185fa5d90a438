namespace Contam.Families;

/// <summary>Where a part can be tested.</summary>
public enum TestAt
{
    /// <summary>By itself: on the bench, or where it stands while all is open.</summary>
    Bench,

    /// <summary>Built up with the parts that ride on it or stand on it, before it goes on: a head with its valves in.</summary>
    BuiltUp,

    /// <summary>In its place, with everything back on.</summary>
    Fitted,
}
