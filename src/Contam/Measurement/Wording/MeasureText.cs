using Contam.Families;

namespace Contam.Measurement.Wording;

/// <summary>What a measure is called.</summary>
public static class MeasureText
{
    /// <summary>The measure in words, as it stands in a sentence.</summary>
    public static string Of(Measure measure) => measure switch
    {
        Measure.RunOut => "run-out",
        Measure.PressureDrop => "pressure drop",
        Measure.VacuumDrop => "vacuum drop",
        Measure.Clearance => "clearance",
        Measure.Cleanliness => "cleanliness",
        Measure.WaterContent => "water content",
        Measure.FlowBalance => "flow balance",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "not a measure"),
    };
}
