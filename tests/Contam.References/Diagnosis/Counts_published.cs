using Contam.Diagnosis;

namespace Contam.References.Diagnosis;

/// <summary>
/// The mean of a chance after so many looks, against a worked example: A. Gelman and others, "Bayesian Data Analysis", 3rd edition, section 2.4,
/// "Probability of a girl birth given placenta previa": 437 of 980, with a uniform prior the posterior is Beta(438, 544) with mean 0.446; and that with
/// Beta priors in general it is Beta(a + y, b + n - y), with mean (a + y) / (a + b + n).
/// </summary>
public sealed class Counts_published
{
    [Fact]
    public void Girls_among_births_with_a_uniform_prior() => Assert.Equal(0.446, new LookCount(437, 980).MeanAfter(0.5, 2), 0.0005);

    /// <summary>The conjugate rule against the posterior itself, summed over a fine grid: prior density times likelihood, which no formula for the mean shortens.</summary>
    [Theory]
    [InlineData(437, 980, 0.485, 10)]
    [InlineData(437, 980, 0.485, 200)]
    [InlineData(2, 3, 0.6, 10)]
    [InlineData(0, 2, 0.9, 10)]
    [InlineData(0, 0, 0.3, 10)]
    public void The_mean_is_that_of_prior_times_likelihood(int found, int looks, double expected, double worth)
    {
        (double a, double b) = (worth * expected, worth * (1 - expected));
        const int steps = 200_000;
        (double mass, double moment) = (0, 0);
        double peak = LogDensity((a + found) / (worth + looks));
        for (int step = 0; step < steps; step++)
        {
            double chance = (step + 0.5) / steps;
            double density = Math.Exp(LogDensity(chance) - peak);
            mass += density;
            moment += density * chance;
        }

        Assert.Equal(moment / mass, new LookCount(found, looks).MeanAfter(expected, worth), 1e-5);

        double LogDensity(double chance) => ((a - 1 + found) * Math.Log(chance)) + ((b - 1 + looks - found) * Math.Log(1 - chance));
    }
}
