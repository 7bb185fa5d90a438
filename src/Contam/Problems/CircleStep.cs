namespace Contam.Problems;

/// <summary>How one part is tied to another.</summary>
internal enum Tie : byte
{
    /// <summary>The other is in its way.</summary>
    Access,

    /// <summary>The other stands on it.</summary>
    Carries,

    /// <summary>It stands on the other.</summary>
    StandsOn,

    /// <summary>It rides on the other.</summary>
    RidesOn,

    /// <summary>It is inside of the other.</summary>
    Assembly,
}

/// <summary>One step round a circle: a part, and how it is tied to the next.</summary>
/// <param name="Part">The id of the part.</param>
/// <param name="Tie">How it is tied to the next part of the circle; that of the last to the first.</param>
internal readonly record struct CircleStep(string Part, Tie Tie);
