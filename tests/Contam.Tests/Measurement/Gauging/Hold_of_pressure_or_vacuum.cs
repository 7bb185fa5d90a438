using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement;
using Contam.Measurement.Gauging;

namespace Contam.Tests.Measurement.Gauging;

public sealed class Hold_of_pressure_or_vacuum
{
    private static readonly HoldTest Pressure = new(HoldKind.Pressure, Given.Bar(2), Given.Bar(1.95), TimeSpan.FromMinutes(10));
    private static readonly HoldTest Vacuum = new(HoldKind.Vacuum, Given.Bar(0.6), Given.Bar(0.5), TimeSpan.FromMinutes(10));

    private static readonly Limit Drop = Given.Limit(Measure.PressureDrop, Given.AtMostKpa(10), Given.AboveKpa(20)) with { At = Given.Bar(2), Over = TimeSpan.FromMinutes(10) };

    [Fact]
    public void Loses_what_the_gauge_shows_where_no_temperature_is_given()
    {
        HoldFigures figures = Pressure.Figures().Value;
        Assert.Equal(5, figures.Loss.Kilopascals, 9);
        Assert.Equal(5, figures.GaugeLoss.Kilopascals, 9);
        Assert.False(figures.IsCorrected);
        Assert.Null(figures.Leak);
        Assert.Equal(10, Vacuum.Figures().Value.Loss.Kilopascals, 9);
    }

    /// <summary>By hand: vacuum 0.6 to 0.5 bar under 1 bar is 0.4 to 0.5 bar absolute; warmed from 280 to 300 K, 0.5 is 0.46667 at 280 K: 0.06667 bar leaked in.</summary>
    [Fact]
    public void Takes_the_temperature_out_of_a_vacuum_too()
    {
        HoldFigures figures = (Vacuum with { Atmosphere = Given.Bar(1), StartTemperature = new Temperature(280), EndTemperature = new Temperature(300), Volume = Given.Litres(3) }).Figures().Value;
        Assert.Equal(0.066667, figures.Loss.Bar, 6);
        Assert.True(figures.IsCorrected);
        // 6666.7 Pa · 0.003 m³ / 600 s
        Assert.Equal(0.033333, figures.Leak!.Value.PascalCubicMetresPerSecond, 6);
    }

    [Fact]
    public void Takes_a_change_of_the_atmosphere_out() =>
        Assert.Equal(0, (Pressure with { Atmosphere = Given.Bar(1), AtmosphereAtEnd = Given.Bar(1.05) }).Figures().Value.Loss.Bar, 9);

    [Fact]
    public void Is_judged_by_its_limit()
    {
        HoldJudgement good = Pressure.Judge(Drop).Value;
        Assert.Equal(new Judgement(Verdict.Good, Verdict.Good, Verdict.Good, "5 kPa is good: <= 10 kPa"), good.Judgement);
        Assert.Equal([HoldNote.NotCorrectedForTemperature], good.Notes);
        Assert.Equal(Verdict.Marginal, (Pressure with { End = Given.Bar(1.85) }).Judge(Drop).Value.Judgement.Verdict);
        Assert.Equal(Verdict.Reject, (Pressure with { End = Given.Bar(1.7) }).Judge(Drop).Value.Judgement.Verdict);
        Assert.Equal(Verdict.Undecided, Pressure.Judge(Drop, Given.Kilopascals(6)).Value.Judgement.Verdict);
    }

    [Fact]
    public void Proves_nothing_good_when_watched_too_short_or_begun_too_low()
    {
        HoldJudgement hasty = (Pressure with { Watched = TimeSpan.FromMinutes(9.9) }).Judge(Drop).Value;
        Assert.Equal(
            new Judgement(Verdict.Undecided, Verdict.Good, Verdict.Reject, "it was watched for less time than the limit asks; watch it for the whole time"),
            hasty.Judgement);
        HoldJudgement marginal = (Pressure with { Watched = TimeSpan.FromMinutes(5), End = Given.Bar(1.85) }).Judge(Drop).Value;
        Assert.Equal((Verdict.Undecided, Verdict.Marginal, Verdict.Reject), (marginal.Judgement.Verdict, marginal.Judgement.Mildest, marginal.Judgement.Worst));
        HoldJudgement gentle = (Pressure with { Start = Given.Bar(1.9), End = Given.Bar(1.89) }).Judge(Drop).Value;
        Assert.Equal(Verdict.Undecided, gentle.Judgement.Verdict);
        Assert.Equal([HoldNote.StartedTooLow, HoldNote.NotCorrectedForTemperature], gentle.Notes);
    }

    [Fact]
    public void Stays_rejected_however_short_it_was() =>
        Assert.Equal(Verdict.Reject, (Pressure with { End = Given.Bar(1.5), Watched = TimeSpan.FromMinutes(1) }).Judge(Drop).Value.Judgement.Verdict);

    [Fact]
    public void Proves_nothing_when_the_gauge_rose()
    {
        HoldJudgement rose = (Pressure with { End = Given.Bar(2.05) }).Judge(Drop, Given.Kilopascals(1)).Value;
        Assert.Equal(Verdict.Undecided, rose.Judgement.Verdict);
        Assert.Equal("the gauge moved the wrong way; look for a change of temperature, or a source that was not shut off", rose.Judgement.Because);
        Assert.Equal(Verdict.Good, (Pressure with { End = Given.Bar(2.05) }).Judge(Drop, Given.Kilopascals(5)).Value.Judgement.Verdict);
    }

    [Fact]
    public void Warns_when_it_holds_although_water_got_in()
    {
        HoldTest wet = Pressure with { WaterGotIn = true, StartTemperature = Given.Celsius(20), EndTemperature = Given.Celsius(20) };
        Assert.Equal([HoldNote.HoldsAlthoughWaterGotIn], wet.Judge(Drop).Value.Notes);
        Assert.Empty((wet with { End = Given.Bar(1.7) }).Judge(Drop).Value.Notes);
        Assert.Empty((wet with { WaterGotIn = false }).Judge(Drop).Value.Notes);
    }

    [Fact]
    public void Says_what_is_wrong_with_a_figure()
    {
        Assert.Equal("the gauge at the start is 0 bar; more than 0 bar was expected", (Pressure with { Start = default }).Figures().Fault!.Text);
        Assert.Equal("the gauge at the end is -0.1 bar; at least 0 bar was expected", (Pressure with { End = Given.Bar(-0.1) }).Figures().Fault!.Text);
        Assert.Equal("the time watched is 0 min; more than 0 min was expected", (Pressure with { Watched = TimeSpan.Zero }).Figures().Fault!.Text);
        Assert.Equal(
            "a vacuum of 1.2 bar at the start is more than the atmosphere gives; an absolute pressure above 0 was expected",
            (Vacuum with { Start = Given.Bar(1.2) }).Figures().Fault!.Text);
        Assert.Equal("the volume is 0 L; more than 0 L was expected", (Pressure with { Volume = default(Volume) }).Figures().Fault!.Text);
        Assert.Equal("a temperature is given at the start alone; one at both, or none, was expected", (Pressure with { StartTemperature = Given.Celsius(20) }).Figures().Fault!.Text);
        Assert.Equal("a temperature is given at the end alone; one at both, or none, was expected", (Pressure with { EndTemperature = Given.Celsius(20) }).Figures().Fault!.Text);
        Assert.Equal(
            "the absolute temperature at the end is 0 K; more than 0 K was expected",
            (Pressure with { StartTemperature = Given.Celsius(20), EndTemperature = default(Temperature) }).Figures().Fault!.Text);
        Assert.Equal("the-limit does not measure a vacuum drop", Vacuum.Judge(Drop).Fault!.Text);
    }
}
