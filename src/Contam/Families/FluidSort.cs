using System.Collections.Immutable;

namespace Contam.Families;

/// <summary>
/// What a fluid is, as the texts of a standard need to know it. The id of a fluid is only its name; a fluid whose id is one of these words is that, unless
/// it says otherwise. A circuit without a fluid carries a gas.
/// </summary>
public static class FluidSort
{
    /// <summary>A circuit without a fluid.</summary>
    public const string Air = "air";

    /// <summary>A fluid that does not say what it is.</summary>
    public const string Unsaid = "unsaid";

    /// <summary>What a fluid may be.</summary>
    public static ImmutableArray<string> All { get; } = ["petrol", "diesel", "engine-oil", "two-stroke-oil", "gear-oil", "hydraulic-oil", "coolant", "raw-water"];

    private static readonly ImmutableArray<(string Group, ImmutableArray<string> Sorts)> Groups =
    [
        ("fuel", ["petrol", "diesel"]),
        ("oil", ["engine-oil", "two-stroke-oil", "gear-oil", "hydraulic-oil"]),
    ];

    /// <summary>What the fluid of a circuit is: one of <see cref="All"/>, <see cref="Air"/> or <see cref="Unsaid"/>.</summary>
    public static string Of(Family family, Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(circuit);
        if (circuit.Fluid is not { } id)
            return Air;
        string? said = family.Fluids.FirstOrDefault(fluid => fluid.Id == id)?.Sort;
        return said ?? (All.Contains(id) ? id : Unsaid);
    }

    /// <summary>Whether a word of a standard means this circuit: the id of its fluid, what that is, or the group (fuel, oil) that it belongs to.</summary>
    public static bool Fits(string word, Family family, Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        string sort = Of(family, circuit);
        return word == circuit.Fluid || word == sort || Groups.Any(group => group.Group == word && group.Sorts.Contains(sort));
    }
}
