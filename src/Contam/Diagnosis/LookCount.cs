namespace Contam.Diagnosis;

/// <summary>How often something was found in so many looks. The default is no look at all.</summary>
/// <param name="Found">In how many of them it was found; from 0 to <paramref name="Looks"/>.</param>
/// <param name="Looks">How many looks.</param>
public readonly record struct LookCount(int Found, int Looks)
{
    /// <summary>
    /// The chance that the next look finds it: the mean of a chance of which was thought <paramref name="expected"/> before, as firmly as after
    /// <paramref name="worth"/> looks, and of which these looks have been seen since. The prior is Beta(a, b) with a = worth · expected and
    /// b = worth · (1 − expected), the looks are binomial, so the posterior is Beta(a + found, b + looks − found), with mean (a + found) / (a + b + looks).
    /// Source: A. Gelman and others, "Bayesian Data Analysis", 3rd edition, sections 2.1 and 2.4.
    /// </summary>
    /// <param name="expected">Between 0 and 1.</param>
    /// <param name="worth">Above 0.</param>
    public double MeanAfter(double expected, double worth) => ((worth * expected) + Found) / (worth + Looks);

    /// <summary>Both counts together.</summary>
    public static LookCount operator +(LookCount one, LookCount other) => new(one.Found + other.Found, one.Looks + other.Looks);
}
