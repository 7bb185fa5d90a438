using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Diagnosis;

/// <summary>Why looking ends somewhere in a looking plan.</summary>
public enum LookingEnd
{
    /// <summary>One suspect has at least the wanted share.</summary>
    Sure,

    /// <summary>No place is left whose look would be expected to tell as much as <see cref="Looking.LeastBits"/>.</summary>
    NothingTells,

    /// <summary>The plan goes on, but this branch is too unlikely to be shown; ask again when you are here.</summary>
    GoesOn,
}

/// <summary>A place in a looking plan: a look with a branch for each outcome, or an end.</summary>
/// <param name="Chance">How likely one comes here, from 0 to 1.</param>
/// <param name="Leaders">The suspects with the largest share here, in file order; empty where there is no suspect at all.</param>
/// <param name="LeaderShare">The share that each of them has.</param>
public sealed record LookingNode(double Chance, ImmutableArray<PartId> Leaders, double LeaderShare)
{
    /// <summary>Where to look; <c>null</c> at an end.</summary>
    public NextLook? Look { get; init; }

    /// <summary>What follows where debris is found; <c>null</c> at an end.</summary>
    public LookingNode? Found { get; init; }

    /// <summary>What follows where the place is clean; <c>null</c> at an end.</summary>
    public LookingNode? Clean { get; init; }

    /// <summary>Why looking ends here; <c>null</c> where there is a look.</summary>
    public LookingEnd? End { get; init; }
}

/// <summary>Where to look, and where then, until the source is known.</summary>
/// <param name="IsExact">Whether no plan has less expected minutes; else the place that tells most for each minute is taken every time.</param>
/// <param name="Sure">The share at which one suspect counts as the source.</param>
/// <param name="ExpectedMinutes">Minutes of looking to be expected; <c>null</c> for a plan that is not exact and too long to be followed to all its ends.</param>
/// <param name="Places">How many places that tell suspects apart are left to look at.</param>
/// <param name="Root">Where it begins.</param>
public sealed record LookingPlan(bool IsExact, double Sure, double? ExpectedMinutes, int Places, LookingNode Root);
