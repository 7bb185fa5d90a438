namespace Contam.Families;

/// <summary>How many clean looks it takes to leave a part alone that debris has a way to.</summary>
public enum ClearedBy
{
    /// <summary>One clean place on every way to it, or a clean look at the part itself.</summary>
    OneLook,

    /// <summary>Two clean places on every way to it; a clean look at the part itself is one of them.</summary>
    TwoLooks,

    /// <summary>Nothing: it is treated whenever there is a way to it.</summary>
    Nothing,
}
