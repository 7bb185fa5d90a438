using Contam.Families.Quantities;
using Contam.Measurement.Flushing;
using Contam.Tests.Measurement;

namespace Contam.References.Measurement.Flushing;

public sealed class Dilution_and_filtering
{
    /// <summary>
    /// A tank of 200 L rinsed at 2 L/min until 1 % is left: the textbook problem printed at
    /// physicsforums.com/threads/modeling-with-a-first-order-equation.1023435, x' = −x/100; its answer is 100·ln 100 = 460.5 min (worked out by hand).
    /// </summary>
    [Fact]
    public void Rinses_the_textbook_tank_in_460_minutes_and_a_half()
    {
        double volumes = Dilution.VolumesWhenMixed(Share.FromPercent(1)).Value;
        TimeSpan time = Dilution.Time(volumes, Given.Litres(200), Given.LitresPerMinute(2)).Value;
        Assert.Equal(460.5, time.TotalMinutes, 1);
    }

    /// <summary>Worked by hand: e⁻¹, e⁻³ (about 3 times the capacity is what naval hydraulic practice has go through), ln 20.</summary>
    [Fact]
    public void Leaves_what_is_worked_out_by_hand()
    {
        Assert.Equal(36.788, Dilution.LeftWhenMixed(1).Value.Percent, 3);
        Assert.Equal(4.979, Dilution.LeftWhenMixed(3).Value.Percent, 3);
        Assert.Equal(2.9957, Dilution.VolumesWhenMixed(Share.FromPercent(5)).Value, 4);
        Assert.Equal(0.95, Dilution.VolumesWhenOnceThrough(Share.FromPercent(5)).Value, 10);
    }

    /// <summary>By hand: a drain that leaves a half behind leaves 12.5 % after three fillings; one that leaves 30 % leaves 2.7 % after three, 0.81 % after four.</summary>
    [Theory]
    [InlineData(50, 12.5, 3)]
    [InlineData(30, 2.7, 3)]
    [InlineData(30, 2.6, 4)]
    [InlineData(30, 100, 0)]
    public void Counts_the_fillings_that_are_worked_out_by_hand(double staysBehind, double left, int fillings) =>
        Assert.Equal(fillings, Dilution.Fillings(Share.FromPercent(staysBehind), Share.FromPercent(left)).Value);

    /// <summary>
    /// By hand: 100 L at 50 L/min through β 2 (half taken out in a pass): the count halves in ln 2 / 0.5 · 2 min = 2.7726 min;
    /// β 75 at 20 000 to 640 per mL: ln 31.25 / (74/75) · 2 min = 6.9771 min.
    /// </summary>
    [Theory]
    [InlineData(2, 1000, 500, 2.7726)]
    [InlineData(75, 20_000, 640, 6.9771)]
    public void Cleans_in_the_time_that_is_worked_out_by_hand(double beta, double from, double to, double minutes) =>
        Assert.Equal(minutes, FilterTime.Of(Given.PerMl(from), Given.PerMl(to), beta, Given.Litres(100), Given.LitresPerMinute(50)).Value.TotalMinutes, 4);
}
