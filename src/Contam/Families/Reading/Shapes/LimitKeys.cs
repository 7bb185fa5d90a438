using Contam.Families.Quantities;

namespace Contam.Families.Reading.Shapes;

/// <summary>The keys of a limit.</summary>
internal static class LimitKeys
{
    /// <summary>What can be measured.</summary>
    public static readonly ChoiceShape<Measure> MeasureShape = new(
        "what is measured",
        ("run-out", Measure.RunOut),
        ("pressure-drop", Measure.PressureDrop),
        ("vacuum-drop", Measure.VacuumDrop),
        ("clearance", Measure.Clearance),
        ("cleanliness", Measure.Cleanliness),
        ("water-content", Measure.WaterContent),
        ("flow-balance", Measure.FlowBalance));

    public static readonly Key<string> Part = new(PartKeys.Reference)
    {
        Name = "part", Means = "The part that is measured; `injector-#` gives one limit for each", Example = "pump-coupling",
    };

    public static readonly Key<Measure> Measures = new(MeasureShape)
    {
        Name = "measures", Means = "What a reading measures", Example = "run-out",
    };

    public static readonly Key<string> Good = new(new WordsShape())
    {
        Name = "good", Means = "A reading that meets this is good: `<=`, `<`, `>=` or `>` and a value with its unit, or a cleanliness code", Example = "\"<= 0.05 mm\"",
    };

    public static readonly Key<string> Reject = new(new WordsShape())
    {
        Name = "reject", Means = "A reading that meets this is rejected; between the two it is marginal. Default: every reading that is not good", Example = "\"> 0.10 mm\"",
    };

    public static readonly Key<string> Source = new(new WordsShape())
    {
        Name = "source", Means = "Where the figures come from", Example = "demonstration value",
    };

    public static readonly Key<Pressure> At = new(new QuantityShape<Pressure>(Dimension.Pressure, Quantity.TryParse, pressure => pressure.Pascals == 0))
    {
        Name = "at", Means = "For a pressure or vacuum drop: what it starts from", Example = "0.7 bar",
    };

    public static readonly Key<TimeSpan> Over = new(new QuantityShape<TimeSpan>(Dimension.Duration, Quantity.TryParse, time => time == TimeSpan.Zero))
    {
        Name = "over", Means = "For a pressure or vacuum drop: how long it is watched", Example = "10 min",
    };

    /// <summary>A limit.</summary>
    public static readonly FormShape Limit = new("limit", "a limit", Part, Measures, Good, Reject, Source, At, Over)
    {
        Required = [Part, Measures, Good], Means = "What readings at a part are judged by",
    };
}
