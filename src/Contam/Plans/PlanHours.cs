namespace Contam.Plans;

/// <summary>Hours of a plan.</summary>
/// <param name="Bench">Technicians' hours, the most that the looks can lead to.</param>
/// <param name="Elapsed">Working hours from start to end with every step done.</param>
/// <param name="Technicians">How many technicians.</param>
/// <param name="LowerBoundElapsed">No order of these steps can end sooner than this.</param>
/// <param name="ElapsedFree">Working hours of the shortest schedule that was found when the phases of the bench are left free; at most <paramref name="Elapsed"/>.</param>
public sealed record PlanHours(double Bench, double Elapsed, int Technicians, double LowerBoundElapsed, double ElapsedFree)
{
    /// <summary>Technicians' hours where every look is clean: what is sure. The same as <see cref="Bench"/> for a flat plan.</summary>
    public double BenchAllClean { get; init; } = Bench;

    /// <summary>Technicians' hours to be expected, by shares of common practice.</summary>
    public double BenchExpected { get; init; } = Bench;

    /// <summary>Working hours from start to end where every look is clean.</summary>
    public double ElapsedAllClean { get; init; } = Elapsed;

    /// <summary>The hours of a working day, by the standard.</summary>
    public double WorkingDay { get; init; } = 8;
}
