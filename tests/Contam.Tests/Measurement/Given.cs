using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;

namespace Contam.Tests.Measurement;

/// <summary>Quantities and limits as a bench says them, for tests.</summary>
internal static class Given
{
    internal static Length Mm(double value) => new(value / 1e3);

    internal static Length Inch(double value) => new(value * 0.0254);

    internal static Length Thou(double value) => new(value * 25.4e-6);

    internal static KinematicViscosity Cst(double value) => new(value / 1e6);

    internal static FlowRate LitresPerMinute(double value) => new(value / 60000);

    internal static Volume Litres(double value) => new(value / 1e3);

    internal static Volume Millilitres(double value) => new(value / 1e6);

    internal static Pressure Bar(double value) => new(value * 1e5);

    internal static Pressure Kilopascals(double value) => new(value * 1e3);

    internal static Temperature Celsius(double value) => Temperature.FromCelsius(value);

    internal static Density Density(double value) => new(value);

    internal static ParticleConcentration PerMl(double value) => new(value);

    internal static ImmutableArray<Length> Dial(params double[] millimetres) => [.. millimetres.Select(Mm)];

    internal static Limit Limit(Measure measures, Threshold good, Threshold? reject = null) =>
        new("the-limit", new PartId("a-part"), measures, good, reject, "", new SourceSpan("family.yaml", 1, 1));

    internal static Threshold AtMostMm(double value) => new(Comparison.AtMost, value / 1e3, FormattableString.Invariant($"<= {value} mm"));

    internal static Threshold AboveMm(double value) => new(Comparison.Above, value / 1e3, FormattableString.Invariant($"> {value} mm"));

    internal static Threshold AtMostKpa(double value) => new(Comparison.AtMost, value * 1e3, FormattableString.Invariant($"<= {value} kPa"));

    internal static Threshold AboveKpa(double value) => new(Comparison.Above, value * 1e3, FormattableString.Invariant($"> {value} kPa"));

    internal static Threshold Code(Comparison comparison, int at4, int at6, int at14) =>
        new(comparison, 0, FormattableString.Invariant($"{(comparison == Comparison.AtMost ? "<=" : ">")} {at4}/{at6}/{at14}"), (at4, at6, at14));
}
