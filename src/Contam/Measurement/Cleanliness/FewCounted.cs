namespace Contam.Measurement.Cleanliness;

/// <summary>
/// How many particles a sample could hold on average when few were counted: the average at which chance shows so few or fewer once in
/// twenty times (the upper limit of a Poisson count, one-sided, 95 %). Source: Garwood 1936; ISO 4406 marks counts below 20.
/// </summary>
internal static class FewCounted
{
    /// <summary>Counts from here on are taken as they are.</summary>
    internal const int Enough = 20;

    private const double OnceInTwenty = 0.05;

    /// <summary>The average.</summary>
    /// <param name="counted">0 to 19.</param>
    internal static double MostLikelyAtMost(int counted)
    {
        double low = counted;
        double high = counted + 20;
        for (int halving = 0; halving < 60; halving++)
        {
            double middle = (low + high) / 2;
            if (ChanceOfSoFew(counted, middle) > OnceInTwenty)
                low = middle;
            else
                high = middle;
        }

        return high;
    }

    private static double ChanceOfSoFew(int counted, double average)
    {
        double term = 1;
        double sum = 1;
        for (int k = 1; k <= counted; k++)
        {
            term *= average / k;
            sum += term;
        }

        return sum * Math.Exp(-average);
    }
}
