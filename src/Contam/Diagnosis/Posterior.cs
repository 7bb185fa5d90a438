using System.Collections.Immutable;

namespace Contam.Diagnosis;

/// <summary>
/// How the suspicion is shared out: by the rule of Bayes, a source's share is its prior times its chance of every finding, divided by the sum over all
/// sources. Ours is exact, as one part is taken to have failed at a time and findings are taken to be independent, given the source.
/// Source of the rule: any textbook, for instance S. Russell and P. Norvig, "Artificial Intelligence: A Modern Approach", chapter on uncertainty.
/// </summary>
internal static class Posterior
{
    /// <summary>
    /// The shares, adding to 1. Worked with products and quotients alone, which every machine rounds alike, and scaled after every finding, so that a
    /// hundred findings do not run out of digits.
    /// </summary>
    /// <param name="priors">A positive figure for each source; at least one.</param>
    /// <param name="chances">For each finding the chance under each source, each above 0.</param>
    public static double[] Shares(ImmutableArray<double> priors, IEnumerable<double[]> chances)
    {
        double[] shares = [.. priors];
        foreach (double[] chance in chances)
        {
            double largest = 0;
            for (int source = 0; source < shares.Length; source++)
            {
                shares[source] *= chance[source];
                largest = Math.Max(largest, shares[source]);
            }

            for (int source = 0; source < shares.Length; source++)
                shares[source] /= largest;
        }

        double sum = shares.Sum();
        for (int source = 0; source < shares.Length; source++)
            shares[source] /= sum;
        return shares;
    }
}
