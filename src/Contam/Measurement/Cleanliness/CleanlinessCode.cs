using Contam.Families.Quantities;

namespace Contam.Measurement.Cleanliness;

/// <summary>
/// A cleanliness code: the scale numbers of the particles of 4, 6 and 14 µm(c) and larger. Source: ISO 4406.
/// A size that was not counted is <c>null</c> and is written <c>-</c> (the notation is from memory of the standard).
/// </summary>
/// <param name="At4">At 4 µm(c) and larger.</param>
/// <param name="At6">At 6 µm(c) and larger.</param>
/// <param name="At14">At 14 µm(c) and larger.</param>
public sealed record CleanlinessCode(CleanlinessNumber? At4, CleanlinessNumber? At6, CleanlinessNumber? At14)
{
    /// <summary>The code of counts per mL. It is not known how many particles were counted, so no number is marked ≥.</summary>
    /// <returns>The code; a fault where a count is negative or a larger size has more than a smaller one.</returns>
    public static Sum<CleanlinessCode> Of(ParticleCounts counts)
    {
        ArgumentNullException.ThrowIfNull(counts);
        if (counts.Fault() is { } fault)
            return fault;
        return new CleanlinessCode(Plain(counts.At4), Plain(counts.At6), Plain(counts.At14));
    }

    /// <summary>The code of particles counted in a sample. Counts are cumulative: each size and larger.</summary>
    /// <param name="at4">Counted at 4 µm(c) and larger; at least 0.</param>
    /// <param name="at6">At 6 µm(c) and larger; not more than at 4.</param>
    /// <param name="at14">At 14 µm(c) and larger; not more than at 6.</param>
    /// <param name="sample">The volume in which they were counted, above 0.</param>
    public static Sum<CleanlinessCode> OfCounted(long at4, long at6, long at14, Volume sample)
    {
        double millilitres = sample.CubicMetres * 1e6;
        if (Expect.Positive("the sample", millilitres, "mL") is { } fault)
            return fault;
        var counts = new ParticleCounts(new(at4 / millilitres), new(at6 / millilitres), new(at14 / millilitres));
        if (counts.Fault() is { } wrong)
            return wrong;
        return new CleanlinessCode(Counted(at4, millilitres), Counted(at6, millilitres), Counted(at14, millilitres));
    }

    /// <summary>The three numbers, as <c>22/18/13</c> or <c>14/12/≥7</c>.</summary>
    public override string ToString() => $"{Show(At4)}/{Show(At6)}/{Show(At14)}";

    private static CleanlinessNumber Plain(ParticleConcentration count)
    {
        int number = CleanlinessScale.NumberOf(count).Value;
        return new CleanlinessNumber(number, number, fewCounted: false);
    }

    private static CleanlinessNumber Counted(long counted, double millilitres)
    {
        int number = CleanlinessScale.NumberOf(new(counted / millilitres)).Value;
        if (counted >= FewCounted.Enough)
            return new CleanlinessNumber(number, number, fewCounted: false);
        // However small the sample, what it could hold stays a number.
        double most = Math.Min(FewCounted.MostLikelyAtMost((int)counted) / millilitres, double.MaxValue);
        int upTo = CleanlinessScale.NumberOf(new(most)).Value;
        return new CleanlinessNumber(number, upTo, fewCounted: true);
    }

    private static string Show(CleanlinessNumber? number) => number?.ToString() ?? "-";
}
