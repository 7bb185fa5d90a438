using System.Collections.Immutable;
using System.Globalization;

namespace Contam.Proof;

/// <summary>What playing the steps of a plan came to.</summary>
/// <param name="Faults">
/// Everything that went wrong, in the order in which it happened; empty where the play ends with nothing dirty and everything back.
/// The first is exact; a later one may follow from it, or be hidden by it.
/// </param>
public sealed record Simulation(ImmutableArray<Fault> Faults)
{
    /// <summary>Whether nothing went wrong.</summary>
    public bool IsClean => Faults.IsEmpty;
}

/// <summary>One thing that goes wrong when the steps are done as they stand.</summary>
/// <param name="Step">The number of the step, or <c>null</c> for what is wrong when all are done.</param>
/// <param name="Part">The id of the part that it goes wrong at; <c>null</c> where it is the step itself.</param>
/// <param name="What">What goes wrong, as a sentence without a full stop that names the part.</param>
public sealed record Fault(int? Step, string? Part, string What)
{
    /// <summary>The part whose debris comes onto one that is clean or is being cleaned, where that is what goes wrong; else <c>null</c>.</summary>
    public string? DirtiedFrom { get; init; }

    /// <summary>Whether the part is dirty, or was never looked at, when all is done.</summary>
    public bool IsUncleanAtEnd { get; init; }

    /// <summary>The fault with the step before it.</summary>
    public override string ToString() =>
        Step is { } number ? string.Create(CultureInfo.InvariantCulture, $"step {number}: {What}") : $"when all is done: {What}";
}
