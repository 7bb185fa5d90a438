namespace Contam.Families;

/// <summary>What a reading measures.</summary>
public enum Measure
{
    /// <summary>Run-out of something that turns: a length.</summary>
    RunOut,

    /// <summary>Pressure lost over a time.</summary>
    PressureDrop,

    /// <summary>Vacuum lost over a time.</summary>
    VacuumDrop,

    /// <summary>A clearance: a length.</summary>
    Clearance,

    /// <summary>The cleanliness code of a fluid, as three numbers.</summary>
    Cleanliness,

    /// <summary>Water in a fluid, in parts per million.</summary>
    WaterContent,

    /// <summary>The spread of flows, as a share of their mean.</summary>
    FlowBalance,
}

/// <summary>How a reading is held against a value.</summary>
public enum Comparison
{
    /// <summary>At most.</summary>
    AtMost,

    /// <summary>Less than.</summary>
    Below,

    /// <summary>At least.</summary>
    AtLeast,

    /// <summary>More than.</summary>
    Above,
}

/// <summary>One side of a limit: a comparison with a value.</summary>
/// <param name="Comparison">How a reading is held against it.</param>
/// <param name="Value">In the SI unit of what is measured: metres, pascals, a share (ppm and % as a fraction of 1). Not used for cleanliness.</param>
/// <param name="Text">As written, for instance <c>&lt;= 0.05 mm</c>.</param>
/// <param name="Code">For cleanliness the three numbers, else <c>null</c>.</param>
public sealed record Threshold(Comparison Comparison, double Value, string Text, (int At4, int At6, int At14)? Code = null);

/// <summary>What readings at a part are judged by. Between good and reject a reading is marginal.</summary>
/// <param name="Id">Kebab-case id, unique in the family.</param>
/// <param name="Part">The part that is measured.</param>
/// <param name="Measures">What is measured.</param>
/// <param name="Good">A reading that meets this is good.</param>
/// <param name="Reject">A reading that meets this is rejected; <c>null</c> where every reading that is not good is rejected.</param>
/// <param name="Source">Where the figures come from, in words; empty for not said.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Limit(string Id, PartId Part, Measure Measures, Threshold Good, Threshold? Reject, string Source, SourceSpan Place)
{
    /// <summary>For a hold: the pressure or vacuum it starts from, or <c>null</c>.</summary>
    public Quantities.Pressure? At { get; init; }

    /// <summary>For a hold: how long it is watched, or <c>null</c>.</summary>
    public TimeSpan? Over { get; init; }
}
