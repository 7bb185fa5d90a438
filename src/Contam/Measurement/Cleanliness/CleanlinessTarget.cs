using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Measurement.Cleanliness;

/// <summary>One size of a code against a target.</summary>
/// <param name="Size">The size, in µm(c): 4, 6 or 14.</param>
/// <param name="Measured">The number measured; <c>null</c> where that size was not counted.</param>
/// <param name="Target">The number wanted at most.</param>
/// <param name="Verdict">Good, reject, or undecided where too few were counted to tell or none at all.</param>
public sealed record SizeAgainstTarget(ParticleSize Size, CleanlinessNumber? Measured, int Target, Verdict Verdict);

/// <summary>A code against a target code.</summary>
/// <param name="Verdict">Reject where any size is over its number; else undecided where any is; else good.</param>
/// <param name="Sizes">The three sizes, smallest first.</param>
public sealed record CleanlinessTarget(Verdict Verdict, ImmutableArray<SizeAgainstTarget> Sizes)
{
    /// <summary>Holds a code against a target.</summary>
    /// <param name="measured">The code.</param>
    /// <param name="target">Three scale numbers, 0 to 28, that fall or stay.</param>
    public static Sum<CleanlinessTarget> Of(CleanlinessCode measured, (int At4, int At6, int At14) target)
    {
        ArgumentNullException.ThrowIfNull(measured);
        if (ParticleCounts.MostOf(target).Fault is { } fault)
            return fault;
        ImmutableArray<SizeAgainstTarget> sizes =
        [
            Size(4, measured.At4, target.At4),
            Size(6, measured.At6, target.At6),
            Size(14, measured.At14, target.At14),
        ];
        bool Any(Verdict verdict) => sizes.Any(size => size.Verdict == verdict);
        Verdict all = Any(Verdict.Reject) ? Verdict.Reject : Any(Verdict.Undecided) ? Verdict.Undecided : Verdict.Good;
        return new CleanlinessTarget(all, sizes);
    }

    private static SizeAgainstTarget Size(double micrometres, CleanlinessNumber? measured, int target)
    {
        Verdict verdict = measured is not { } number || (number.Number <= target && number.UpTo > target) ? Verdict.Undecided
            : number.Number <= target ? Verdict.Good
            : Verdict.Reject;
        return new SizeAgainstTarget(ParticleSize.FromMicrometres(micrometres), measured, target, verdict);
    }
}
