using System.Collections.Immutable;
using Contam.Plans;

namespace Contam.Audits;

/// <summary>What the looks of one failure's plan decide, in technicians' hours.</summary>
/// <param name="Looks">How many looks decide; 0 where none pays.</param>
/// <param name="Sure">Where every look is clean.</param>
/// <param name="Expected">To be expected, by shares of common practice.</param>
/// <param name="Most">The most that the looks can lead to.</param>
public sealed record LookHours(int Looks, double Sure, double Expected, double Most)
{
    /// <summary>The share of the most hours that hangs on looks, from 0 to 1.</summary>
    public double OnLooks => Most <= 0 ? 0 : Math.Round((Most - Sure) / Most, 4);

    /// <summary>Those of a plan.</summary>
    internal static LookHours Of(PlanDocument plan) => new(plan.Looks.Length, plan.Hours.BenchAllClean, plan.Hours.BenchExpected, plan.Hours.Bench);
}

/// <summary>How some figures are spread: each is one of them (the nearest rank), so no figure is made up between two.</summary>
/// <param name="Lower">A quarter of them is at most this.</param>
/// <param name="Median">Half of them is at most this.</param>
/// <param name="Upper">Three quarters of them are at most this.</param>
/// <param name="Most">The greatest.</param>
public sealed record Quartiles(double Lower, double Median, double Upper, double Most)
{
    /// <summary>Of these; all 0 where there are none.</summary>
    public static Quartiles Of(IEnumerable<double> figures)
    {
        ImmutableArray<double> sorted = [.. figures.Order()];
        // The nearest rank: the first figure that at least so many quarters of all are at or below.
        double At(int quarters) => sorted.IsEmpty ? 0 : sorted[((quarters * sorted.Length) + 3) / 4 - 1];
        return new Quartiles(At(1), At(2), At(3), At(4));
    }
}
