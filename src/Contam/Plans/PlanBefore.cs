using System.Collections.Immutable;

namespace Contam.Plans;

/// <summary>What the work takes.</summary>
/// <param name="Hands">People.</param>
/// <param name="Tools">Tools, in the order of first use.</param>
/// <param name="Supplies">What is used up, in the order of first use. Spares and fluids stand in <see cref="PlanDocument.Order"/>.</param>
public sealed record PlanBefore(ImmutableArray<string> Hands, ImmutableArray<string> Tools, ImmutableArray<PlanSupply> Supplies)
{
    /// <summary>Nothing said.</summary>
    public static PlanBefore Nothing { get; } = new([], [], []);
}

/// <summary>Something that is used up.</summary>
/// <param name="Item">What.</param>
/// <param name="Quantity">How much.</param>
/// <param name="Unit">The unit; <c>null</c> for pieces.</param>
public sealed record PlanSupply(string Item, double Quantity, string? Unit);

/// <summary>A line of what must be ordered.</summary>
/// <param name="Item">What.</param>
/// <param name="Quantity">How many, or how much in <paramref name="Unit"/>.</param>
/// <param name="Why">seal, filter, replaced part, fluid.</param>
/// <param name="Unit"><c>L</c> for a fluid, else <c>null</c> for pieces.</param>
/// <param name="LeadDays">Working days until it is there; <c>null</c> for not said.</param>
public sealed record PlanOrderLine(string Item, double Quantity, string Why, string? Unit, double? LeadDays)
{
    /// <summary>Letters of looks: it is needed when debris was found at any of them; empty for whatever is seen.</summary>
    public ImmutableArray<string> OnlyIf { get; init; } = [];
}
