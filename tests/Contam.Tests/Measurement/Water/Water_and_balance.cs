using Contam.Families.Quantities;
using Contam.Measurement.Gauging;
using Contam.Measurement.Water;

namespace Contam.Tests.Measurement.Water;

public sealed class Water_in_an_oil
{
    [Theory]
    [InlineData(100, WaterForm.Dissolved, false, true)]
    [InlineData(500, WaterForm.Dissolved, false, true)]
    [InlineData(501, WaterForm.DissolvedOrFree, true, true)]
    [InlineData(1001, WaterForm.DissolvedOrFree, true, false)]
    [InlineData(2001, WaterForm.Free, true, false)]
    public void Is_dissolved_either_or_free(double ppm, WaterForm form, bool crackles, bool bright)
    {
        WaterMeaning meaning = WaterInOil.Meaning(Share.FromPartsPerMillion(ppm), Saturation.DefaultFor(OilUse.Engine)).Value;
        Assert.Equal((form, crackles, bright), (meaning.Form, meaning.CrackleTestMayShow, meaning.MayStillLookBright));
        Assert.Equal("default: common practice, no source; printed ranges differ, and all are for room temperature", meaning.Source);
    }

    [Fact]
    public void Is_free_sooner_in_a_turbine_oil() =>
        Assert.Equal(WaterForm.Free, WaterInOil.Meaning(Share.FromPartsPerMillion(200), Saturation.DefaultFor(OilUse.Turbine)).Value.Form);

    [Fact]
    public void Goes_by_the_makers_figure_where_there_is_one()
    {
        var makers = new Saturation(Share.FromPartsPerMillion(300), Share.FromPartsPerMillion(300), "the maker's sheet");
        WaterMeaning meaning = WaterInOil.Meaning(Share.FromPartsPerMillion(301), makers).Value;
        Assert.Equal((WaterForm.Free, "the maker's sheet"), (meaning.Form, meaning.Source));
    }

    [Fact]
    public void Says_what_is_wrong_with_a_figure()
    {
        Saturation engine = Saturation.DefaultFor(OilUse.Engine);
        Assert.Equal("the water content is not a number; 0 to 1000000 ppm was expected", WaterInOil.Meaning(new Share(double.NaN), engine).Fault!.Text);
        Assert.Equal("the water content is 1100000 ppm; 0 to 1000000 ppm was expected", WaterInOil.Meaning(Share.FromPercent(110), engine).Fault!.Text);
        Assert.Equal(
            "the greatest saturation is 500 ppm; 2000 to 1000000 ppm was expected",
            WaterInOil.Meaning(new Share(0), engine with { Least = engine.Most, Most = engine.Least }).Fault!.Text);
    }
}

public sealed class Balance_of_injectors
{
    /// <summary>By hand: 95, 100, 105, 100: mean 100, spread 10 %, −5, 0, 5, 0 %.</summary>
    [Fact]
    public void Is_each_against_the_mean_and_the_spread_of_all()
    {
        FlowBalance balance = FlowBalance.Of([Given.LitresPerMinute(95), Given.LitresPerMinute(100), Given.LitresPerMinute(105), Given.LitresPerMinute(100)]).Value;
        Assert.Equal(10, balance.Spread.Percent, 9);
        Assert.Equal([-5d, 0, 5, 0], balance.AgainstMean.Select(one => Math.Round(one.Percent, 9)));
        Assert.Equal((2, 0), (balance.Most, balance.Least));
    }

    [Fact]
    public void Is_the_same_for_volumes_in_one_time()
    {
        FlowBalance balance = FlowBalance.Of([Given.Millilitres(40), Given.Millilitres(60)]).Value;
        Assert.Equal(40, balance.Spread.Percent, 9);
    }

    [Fact]
    public void Takes_a_dead_injector_for_a_reading()
    {
        FlowBalance balance = FlowBalance.Of([Given.Millilitres(0), Given.Millilitres(60), Given.Millilitres(60)]).Value;
        Assert.Equal(150, balance.Spread.Percent, 9);
        Assert.Equal(-100, balance.AgainstMean[0].Percent, 9);
    }

    [Fact]
    public void Says_what_is_wrong_with_a_figure()
    {
        Assert.Equal("1 delivery is given; at least 2 were expected", FlowBalance.Of([Given.Millilitres(40)]).Fault!.Text);
        Assert.Equal("delivery 2 is -1 L/min; at least 0 L/min was expected", FlowBalance.Of([Given.LitresPerMinute(1), Given.LitresPerMinute(-1)]).Fault!.Text);
        Assert.Equal("nothing delivers anything; at least one delivery above 0 was expected", FlowBalance.Of([default(Volume), default]).Fault!.Text);
    }
}
