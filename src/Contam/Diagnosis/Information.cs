namespace Contam.Diagnosis;

/// <summary>
/// Information in bits, after C. E. Shannon, "A mathematical theory of communication", Bell System Technical Journal 27, 1948.
/// </summary>
internal static class Information
{
    /// <summary>The entropy of shares that add to 1: how many yes-or-no answers they leave open, at best. A share of 0 adds nothing.</summary>
    public static double Entropy(ReadOnlySpan<double> shares)
    {
        double bits = 0;
        foreach (double share in shares)
            bits += Term(share);
        return bits;
    }

    /// <summary>The entropy of something that happens with this chance.</summary>
    public static double Entropy(double chance) => Term(chance) + Term(1 - chance);

    /// <summary>
    /// By how much the entropy over the suspects is expected to drop when one learns whether something happens that under each of them happens with a chance
    /// of its own. Equal to the entropy of the outcome less the mean entropy that it has under each suspect, which takes half the sums. Never negative but for rounding, which
    /// is cut off at 0.
    /// </summary>
    public static double Gain(ReadOnlySpan<double> shares, ReadOnlySpan<double> chances)
    {
        double chance = 0;
        double known = 0;
        for (int i = 0; i < shares.Length; i++)
        {
            chance += shares[i] * chances[i];
            known += shares[i] * Entropy(chances[i]);
        }

        return Math.Max(0, Entropy(chance) - known);
    }

    private static double Term(double share) => share <= 0 ? 0 : -share * Math.Log2(share);
}
