using Contam.Families.Quantities;

namespace Contam.Measurement.Cleanliness;

/// <summary>Particles per mL, cumulative: each size and larger, so that the numbers fall or stay.</summary>
/// <param name="At4">At 4 µm(c) and larger.</param>
/// <param name="At6">At 6 µm(c) and larger.</param>
/// <param name="At14">At 14 µm(c) and larger.</param>
public sealed record ParticleCounts(ParticleConcentration At4, ParticleConcentration At6, ParticleConcentration At14)
{
    /// <summary>The most that a code allows at each size: what to reckon from where only the code is known.</summary>
    /// <param name="code">Three scale numbers, 0 to 28, falling or staying.</param>
    public static Sum<ParticleCounts> MostOf((int At4, int At6, int At14) code)
    {
        Sum<ParticleConcentration> at4 = CleanlinessScale.UpperLimit(code.At4);
        Sum<ParticleConcentration> at6 = CleanlinessScale.UpperLimit(code.At6);
        Sum<ParticleConcentration> at14 = CleanlinessScale.UpperLimit(code.At14);
        if ((at4.Fault ?? at6.Fault ?? at14.Fault) is { } fault)
            return fault;
        return code.At4 >= code.At6 && code.At6 >= code.At14
            ? new ParticleCounts(at4.Value, at6.Value, at14.Value)
            : new Fault(FormattableString.Invariant($"the code {code.At4}/{code.At6}/{code.At14} rises; numbers that fall or stay were expected, for each size and larger is counted"));
    }

    /// <summary>What is wrong with the counts, or <c>null</c>.</summary>
    internal Fault? Fault() =>
        Expect.NotNegative("the count at 4 µm(c)", At4.PerMillilitre, "per mL")
        ?? Expect.NotNegative("the count at 6 µm(c)", At6.PerMillilitre, "per mL")
        ?? Expect.NotNegative("the count at 14 µm(c)", At14.PerMillilitre, "per mL")
        ?? NotMore(At6, "6", At4, "4")
        ?? NotMore(At14, "14", At6, "6");

    private static Fault? NotMore(ParticleConcentration larger, string largerSize, ParticleConcentration smaller, string smallerSize) =>
        larger <= smaller ? null : new Fault(
            $"{Expect.Show(larger.PerMillilitre)} per mL at {largerSize} µm(c) is more than {Expect.Show(smaller.PerMillilitre)} per mL at {smallerSize} µm(c); "
            + "counts of each size and larger were expected");
}
