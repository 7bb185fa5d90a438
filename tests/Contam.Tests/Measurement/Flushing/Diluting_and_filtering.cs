using Contam.Families.Quantities;
using Contam.Measurement.Cleanliness;
using Contam.Measurement.Flushing;

namespace Contam.Tests.Measurement.Flushing;

public sealed class Diluting
{
    [Fact]
    public void Never_takes_out_all_of_it_by_mixing()
    {
        Assert.Equal("what is left is 0 %; more than 0 % was expected", Dilution.VolumesWhenMixed(default).Fault!.Text);
        Assert.Equal(1, Dilution.VolumesWhenOnceThrough(default).Value);
    }

    [Fact]
    public void Takes_nothing_where_all_may_be_left()
    {
        Assert.Equal(0, Dilution.VolumesWhenMixed(new Share(1)).Value);
        Assert.Equal(1, Dilution.LeftWhenMixed(0).Value.OfOne);
        Assert.Equal(0, Dilution.LeftWhenOnceThrough(1.5).Value.OfOne);
    }

    [Fact]
    public void Says_what_is_wrong_with_a_figure()
    {
        Assert.Equal("what is left is 120 %; at most 100 % was expected", Dilution.VolumesWhenMixed(Share.FromPercent(120)).Fault!.Text);
        Assert.Equal("what is left is not a number; more than 0 % was expected", Dilution.VolumesWhenMixed(new Share(double.NaN)).Fault!.Text);
        Assert.Equal("the number of volumes is -1; at least 0 was expected", Dilution.LeftWhenMixed(-1).Fault!.Text);
        Assert.Equal("what a draining leaves is 100 %; less than 100 % was expected", Dilution.Fillings(Share.FromPercent(100), Share.FromPercent(1)).Fault!.Text);
        Assert.Equal("more than a million fillings come out; look at what a draining leaves", Dilution.Fillings(new Share(1 - 1e-9), Share.FromPercent(1)).Fault!.Text);
        Assert.Equal("the system's volume is 0 L; more than 0 L was expected", Dilution.Time(3, default, Given.LitresPerMinute(1)).Fault!.Text);
        Assert.Equal("the flow is 0 L/min; more than 0 L/min was expected", Dilution.Time(3, Given.Litres(1), default).Fault!.Text);
        Assert.Equal("the flushing time comes out longer than ten years; look at the flow and the volume", Dilution.Time(3, Given.Litres(1), Given.LitresPerMinute(1e-9)).Fault!.Text);
    }
}

public sealed class Filtering_to_a_code
{
    private static readonly ParticleCounts Dirty = ParticleCounts.MostOf((22, 19, 15)).Value;

    /// <summary>By hand: 100 L at 50 L/min. 40 000 to 5000 with β 4: ln 8/0.75·2 = 5.5452 min; 5000 to 640 with β 10: ln 7.8125/0.9·2 = 4.5683; 320 to 40 with 10: ln 8/0.9·2 = 4.6210.</summary>
    [Fact]
    public void Takes_as_long_as_its_slowest_size()
    {
        FilterTimes times = FilterTime.ToCode(Dirty, (19, 16, 12), new BetaRatios(4, 10, null), Given.Litres(100), Given.LitresPerMinute(50)).Value;
        Assert.Equal(5.5452, times.At4.TotalMinutes, 4);
        Assert.Equal(4.5683, times.At6.TotalMinutes, 4);
        Assert.Equal(4.6210, times.At14.TotalMinutes, 4);
        Assert.Equal(times.At4, times.Longest);
    }

    [Fact]
    public void Takes_no_time_and_no_beta_where_it_is_clean_enough() =>
        Assert.Equal(TimeSpan.Zero, FilterTime.ToCode(Dirty, (22, 19, 15), new BetaRatios(null, null, null), Given.Litres(100), Given.LitresPerMinute(50)).Value.Longest);

    [Fact]
    public void Takes_a_beta_for_larger_sizes_too()
    {
        FilterTimes By(BetaRatios filter) => FilterTime.ToCode(Dirty, (19, 16, 12), filter, Given.Litres(100), Given.LitresPerMinute(50)).Value;
        Assert.Equal(By(new BetaRatios(4, 4, 4)), By(new BetaRatios(4, null, null)));
        Assert.Equal(By(new BetaRatios(4, 10, 10)), By(new BetaRatios(4, 10, null)));
        Assert.Equal(By(new BetaRatios(4, 4, 75)), By(new BetaRatios(4, null, 75)));
    }

    [Fact]
    public void Infers_no_beta_at_a_smaller_size() =>
        Assert.Equal(
            "no beta is said at 4 µm(c) or smaller; without one the time for that size cannot be told",
            FilterTime.ToCode(Dirty, (19, 16, 12), new BetaRatios(null, 75, null), Given.Litres(100), Given.LitresPerMinute(50)).Fault!.Text);

    [Fact]
    public void Never_ends_with_a_filter_that_takes_nothing_out() =>
        Assert.Equal(
            "at 4 µm(c): beta is 1, so the filter takes nothing out; more than 1 was expected",
            FilterTime.ToCode(Dirty, (19, 16, 12), new BetaRatios(1, 75, null), Given.Litres(100), Given.LitresPerMinute(50)).Fault!.Text);

    [Fact]
    public void Says_what_is_wrong_with_a_figure()
    {
        Assert.Equal("beta is 0.5; at least 1 was expected", FilterBeta.Efficiency(0.5).Fault!.Text);
        Assert.Equal("beta is not a number; more than 0 was expected", FilterBeta.Efficiency(double.NaN).Fault!.Text);
        Assert.Equal("the efficiency is 100 %; less than 100 % was expected", FilterBeta.Of(Share.FromPercent(100)).Fault!.Text);
        Assert.Equal("the efficiency is -1 %; at least 0 % was expected", FilterBeta.Of(Share.FromPercent(-1)).Fault!.Text);
        Assert.Equal("the count after the filter is 0 per mL; more than 0 per mL was expected", FilterBeta.Of(Given.PerMl(10), Given.PerMl(0)).Fault!.Text);
        Assert.Equal("beta is 0.5; at least 1 was expected", FilterBeta.Of(Given.PerMl(10), Given.PerMl(20)).Fault!.Text);
        Assert.Equal(
            "the code 16/19/12 rises; numbers that fall or stay were expected, for each size and larger is counted",
            FilterTime.ToCode(Dirty, (16, 19, 12), new BetaRatios(4, 10, null), Given.Litres(100), Given.LitresPerMinute(50)).Fault!.Text);
        Assert.Equal("the scale number is 29; 0 to 28 was expected", ParticleCounts.MostOf((29, 19, 12)).Fault!.Text);
    }
}
