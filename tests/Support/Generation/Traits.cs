namespace Contam.Support.Generation;

/// <summary>
/// How often each feature occurs in one generated system, each from 0 (never) to 1. Drawn anew for every system, with features
/// left out altogether as often as not, so that one feature does not drown another: where everything is joined to everything, no barrier matters.
/// </summary>
internal sealed class Traits
{
    internal Traits(Random random)
    {
        double Rate(params double[] choices) => choices[random.Next(choices.Length)];

        Branch = Rate(0, 0.05, 0.2, 0.5);
        Loop = Rate(0, 0.02, 0.1, 0.3);
        Diamond = Rate(0, 0.05, 0.2);
        BothWays = Rate(0, 0.03, 0.15);
        SelfLoop = Rate(0, 0.02);
        Parallel = Rate(0, 0.05);
        PlainLink = Rate(0, 0.1, 0.4);
        Conditional = Rate(0, 0.03, 0.15);
        When = Rate(0, 0.05, 0.2);
        LinkPassage = Rate(0, 0.05, 0.2);
        Holds = Rate(0, 0.05, 0.15, 0.4);
        Passage = Rate(0, 0.05, 0.2);
        Sheds = Rate(0.2, 0.6, 1);
        Clearance = Rate(0, 0.2, 0.5);
        Critical = Rate(0, 0.05, 0.3);
        Look = Rate(0, 0.3, 0.8);
        InPlace = Rate(0, 0.2, 0.5, 1);
        Filter = Rate(0, 0.1, 0.2);
        Repeat = Rate(0, 0.1);
        Access = Rate(0, 0.1, 0.3);
        InPlaceAccess = Rate(0, 0, 0, 1);
        Seals = Rate(0, 0.2, 0.6);
        SendOut = Rate(0, 0.05, 0.2);
        Minutes = Rate(0, 0.2);
        Islands = random.Next(4) == 0 ? random.Next(2, 5) : 1;
        Circuits = random.Next(1, 4);
        IsShuffled = random.Next(2) == 0;
    }

    internal double Branch { get; }

    internal double Loop { get; }

    internal double Diamond { get; }

    internal double BothWays { get; }

    internal double SelfLoop { get; }

    internal double Parallel { get; }

    internal double PlainLink { get; }

    internal double Conditional { get; }

    internal double When { get; }

    internal double LinkPassage { get; }

    internal double Holds { get; }

    internal double Passage { get; }

    internal double Sheds { get; }

    internal double Clearance { get; }

    internal double Critical { get; }

    internal double Look { get; }

    internal double InPlace { get; }

    internal double Filter { get; }

    internal double Repeat { get; }

    internal double Access { get; }

    /// <summary>Whether a part that is treated where it is may stand in the way of another.</summary>
    internal double InPlaceAccess { get; }

    internal double Seals { get; }

    internal double SendOut { get; }

    internal double Minutes { get; }

    /// <summary>Into how many groups with no joint between them the parts fall.</summary>
    internal int Islands { get; }

    internal int Circuits { get; }

    /// <summary>Whether the parts stand in another order than along the flow.</summary>
    internal bool IsShuffled { get; }
}
