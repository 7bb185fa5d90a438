using System.Collections.Immutable;

namespace Contam.Families;

/// <summary>
/// What sort of part something is. It brings the defaults that a part may override.
/// </summary>
/// <param name="Name">Kebab-case name, for instance <c>heat-exchanger</c>.</param>
/// <param name="Place">Where it is described.</param>
public sealed record Kind(string Name, SourceSpan Place)
{
    /// <summary>What it is, in a line.</summary>
    public string About { get; init; } = "";

    /// <summary>Whether such a part comes off to be treated; else it is treated where it is.</summary>
    public bool IsRemovable { get; init; }

    /// <summary>Whether it is there to catch debris, so that it is done last in its circuit.</summary>
    public bool IsFilter { get; init; }

    /// <summary>Whether such a part may stand in circuits of different fluids.</summary>
    public bool JoinsFluids { get; init; }

    /// <summary>Whether a run may end here.</summary>
    public bool FluidMayEnd { get; init; }

    /// <summary>Whether the fluid of a circuit is kept in such a part: drawn from it, and unless used up brought back to it.</summary>
    public bool IsReservoir { get; init; }

    /// <summary>How many clean looks leave such a part alone.</summary>
    public ClearedBy ClearedBy { get; init; }

    /// <summary>Where such a part can be tested.</summary>
    public TestAt TestAt { get; init; }

    /// <summary>Whether a look at such a part uses it up, so that a new one is needed whatever is seen.</summary>
    public bool LookUsesUp { get; init; }

    /// <summary>Whether a look at such a part opens its circuit, so that the circuit is made safe before.</summary>
    public bool LookOpens { get; init; } = true;

    /// <summary>Whether such a part usually sits on or in another that the family names as its carrier.</summary>
    public bool IsCarried { get; init; }

    /// <summary>Whether such a part is renewed whenever it is taken out, as a lip that was disturbed does not seal again.</summary>
    public bool IsRenewedWhenOut { get; init; }

    /// <summary>What can be measured at such a part; <c>null</c> for anything.</summary>
    public ImmutableArray<Measure>? Measures { get; init; }

    /// <summary>Minutes for each task, where the standard's <c>times</c> and the part say nothing.</summary>
    public TaskMinutes Minutes { get; init; } = TaskMinutes.None;

    /// <summary>Single-use seals of such a part, one entry a piece, renewed whenever it is opened.</summary>
    public ImmutableArray<string> Seals { get; init; } = [];
}
