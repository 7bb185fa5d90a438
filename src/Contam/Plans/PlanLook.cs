using System.Collections.Immutable;

namespace Contam.Plans;

/// <summary>A look that decides how far to go. A look counts as found where debris was found at any of its places, or where a find elsewhere disproves a clean one.</summary>
public sealed record PlanLook
{
    /// <summary>Its letter: A for the first.</summary>
    public required string Id { get; init; }

    /// <summary>The ids of the places; several are like places that are looked at together.</summary>
    public ImmutableArray<string> Places { get; init; } = [];

    /// <summary>The names of the debris that it is for.</summary>
    public ImmutableArray<string> Debris { get; init; } = [];

    /// <summary>The number of the step in which it is made.</summary>
    public int Step { get; init; }

    /// <summary>A technician's minutes for the look at all its places, with what comes off for them alone.</summary>
    public double Minutes { get; init; }

    /// <summary>Letters of earlier looks: it is made when debris was found at any of them; empty for always.</summary>
    public ImmutableArray<string> OnlyIf { get; init; } = [];

    /// <summary>The chance of a find where it is made, from 0 to 1: shares of common practice, good for ranking only.</summary>
    public double Odds { get; init; }

    /// <summary>The ids of the parts that may be left alone on the strength of it.</summary>
    public ImmutableArray<string> Clears { get; init; } = [];

    /// <summary>A technician's minutes of the steps whose condition names it.</summary>
    public double MinutesHanging { get; init; }
}

/// <summary>
/// A find that clean looks cannot explain: it speaks against them. Each field holds letters of looks, in their order. A look that is void counts as found in every
/// condition. Only what was really found makes something void, not a look that counts as found.
/// </summary>
/// <param name="Found">Where debris was found at this look; empty for a find that the plan was made with.</param>
/// <param name="Clean">And all of these are clean,</param>
/// <param name="Void">then those of these that are clean are void.</param>
public sealed record PlanDisproof(ImmutableArray<string> Found, ImmutableArray<string> Clean, ImmutableArray<string> Void);
