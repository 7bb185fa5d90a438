using System.Text.Json;

namespace Contam.Cli.Tests.Gauge;

public sealed class Run_out_of_a_shaft
{
    private const string Limit = "propeller-shaft-run-out";

    [Theory]
    [InlineData("6thou", "good", 0)]
    [InlineData("6.1thou", "marginal", 0)]
    [InlineData("9thou", "marginal", 0)]
    [InlineData("9.1thou", "reject", 1)]
    [InlineData("15thou", "reject", 1)]
    public void Is_judged_in_the_unit_of_the_dial(string high, string verdict, int exit)
    {
        (int ended, JsonElement answer) = Called.Json("gauge", Called.Gearcase, Limit, "0thou", high);
        Assert.Equal((exit, verdict), (ended, answer.GetProperty("verdict").GetString()));
        Assert.Equal(double.Parse(high[..^4], System.Globalization.CultureInfo.InvariantCulture), Called.Figure(answer, "totalIndicatedReading"));
    }

    [Theory]
    [InlineData("0.1524mm")]
    [InlineData("152.4um")]
    [InlineData("152.4µm")]
    [InlineData("0.006in")]
    [InlineData("0.006inch")]
    [InlineData("6thou")]
    public void Is_good_at_six_thou_in_every_unit(string high)
    {
        string unit = new([.. high.SkipWhile(one => !char.IsLetter(one))]);
        Assert.Equal("good", Called.Json("gauge", Called.Gearcase, Limit, "0" + unit, high).Answer.GetProperty("verdict").GetString());
    }

    /// <summary>e = 0.05 mm at 90°, oval 0.02 mm at 45°, by hand: 0.05·sin θ + 0.02·sin 2θ.</summary>
    [Theory]
    [InlineData("0:0mm 45:0.0553553mm 90:0.05mm 135:0.0153553mm 180:0mm 225:-0.0153553mm 270:-0.05mm 315:-0.0553553mm", "deg")]
    [InlineData("12:0mm 1.5:0.0553553mm 3:0.05mm 4.5:0.0153553mm 6:0mm 7.5:-0.0153553mm 9:-0.05mm 10:30:-0.0553553mm", "clock")]
    [InlineData("0mm 0.0553553mm 0.05mm 0.0153553mm 0mm -0.0153553mm -0.05mm -0.0553553mm", "even")]
    public void Is_taken_apart_however_the_places_are_said(string readings, string marks)
    {
        string[] typed = [.. readings.Split(' ').Select(one => marks == "deg" ? one.Replace(":", "deg:", StringComparison.Ordinal) : one)];
        (int exit, JsonElement answer) = Called.Json("gauge", Called.Gearcase, [Limit, .. typed]);
        Assert.Equal(0, exit);
        Assert.Equal(["totalIndicatedReading", "oncePerTurn", "highSpotDegrees", "ovality", "ovalHighSpotDegrees", "residual", "marginToGood", "marginToReject"], Called.Names(answer));
        Assert.Equal(0.1107106, Called.Figure(answer, "totalIndicatedReading"), 9);
        Assert.Equal(0.05, Called.Figure(answer, "oncePerTurn"), 6);
        Assert.Equal(90, Called.Figure(answer, "highSpotDegrees"), 3);
        Assert.Equal(0.02, Called.Figure(answer, "ovality"), 6);
        Assert.Equal(45, Called.Figure(answer, "ovalHighSpotDegrees"), 3);
        Assert.Equal(0, Called.Figure(answer, "residual"), 6);
        Assert.Equal(0.1524 - 0.1107106, Called.Figure(answer, "marginToGood"), 9);
    }

    [Fact]
    public void Shows_the_first_figure_alone_below_eight_readings_and_says_why()
    {
        (_, JsonElement answer) = Called.Json("gauge", Called.Gearcase, Limit, "0thou", "1thou", "2thou", "3thou", "4thou", "3thou", "2thou");
        Assert.Equal(["totalIndicatedReading", "marginToGood", "marginToReject"], Called.Names(answer));
        Assert.Equal(["the high spot and the ovality need readings at 8 places or more round the turn; 7 given"], answer.GetProperty("notes").EnumerateArray().Select(note => note.GetString()));
    }

    [Fact]
    public void Is_shown_as_a_page_with_a_plot() =>
        Assert.Equal(
            new Called(
                1,
                """
                REJECT  Propeller shaft, run-out
                14 thou is rejected: > 9 thou; 5 thou past reject.
                Not to be used as it is.
                Limit propeller-shaft-run-out: good <= 6 thou, reject > 9 thou (common practice,
                no source).

                FIGURES
                  Total indicated reading      14 thou
                  Once per turn                7 thou             how far the centre is off, by
                                                                  a bend or off-centre; alone it
                                                                  reads twice this
                  High spot                    90 deg             about 3 o'clock
                  Ovality                      0 thou             twice per turn; alone it reads
                                                                  twice this
                  Left over                    0 thou             the most that a reading is off
                                                                  both: a dent, a burr, a
                                                                  misread dial

                ROUND THE TURN
                      7 thou |           ····o····
                             |       ···o         o···
                             |    ·o·                 ·o·
                             |  ··                       ··
                      0 thou |o·                           ·o·                           ··
                             |                                ··                       ··
                             |                                  ·o·                 ·o·
                             |                                     ···o         o···
                     -7 thou |                                         ····o····
                             +-------------------------------------------------------------
                              0°            90°           180°           270°           360°
                            o reading · once and twice per turn fitted together

                TAKEN AS GIVEN
                - 12 o'clock is 0°, 3 o'clock 90°.

                """,
                ""),
            Called.With(
                "gauge", Called.Gearcase, Limit, "12:0thou", "1:3.5thou", "2:6.0622thou", "3:7thou", "4:6.0622thou", "5:3.5thou", "6:0thou", "7:-3.5thou", "8:-6.0622thou", "9:-7thou", "10:-6.0622thou", "11:-3.5thou"));

    [Fact]
    public void Is_undecided_where_the_meter_cannot_tell()
    {
        (int exit, JsonElement answer) = Called.Json("gauge", Called.Gearcase, Limit, "0mm", "0.16mm", "--uncertainty", "0.01mm");
        Assert.Equal((1, "undecided"), (exit, answer.GetProperty("verdict").GetString()));
        Assert.Equal("0.16 mm ± 0.02 mm could be good or marginal (good <= 6 thou, reject > 9 thou)", answer.GetProperty("because").GetString());
        Assert.Equal(["each reading may be off by 0.01 mm, so the total indicated reading, which is the difference of two, by 0.02 mm"], answer.GetProperty("assumed").EnumerateArray().Select(note => note.GetString()));
        Assert.Equal("good", Called.Json("gauge", Called.Gearcase, Limit, "0mm", "0.13mm", "--uncertainty", "0.01mm").Answer.GetProperty("verdict").GetString());
    }

    [Theory]
    [InlineData("contam: no reading is given. Write the dial's readings round one turn, for instance 0mm 0.02mm 0.05mm 0.02mm, or with places 12:0mm 3:0.02mm.\n")]
    [InlineData("contam: propeller-shaft-run-out needs at least 2 readings, got 1. Where it is the total already, write the two ends of it: 0thou 7thou.\n", "7thou")]
    [InlineData("contam: the readings are in mm and thou. Write all of them in one unit, as the meter shows them.\n", "0mm", "7thou")]
    [InlineData("contam: reading 2: `7` has no unit. A length is written in um, mm, m, thou or in.\n", "0mm", "7")]
    [InlineData("contam: reading 1: a length (um, mm, m, thou, in) is due, got `NaN`. Write a number and its unit, for instance `25 um`.\n", "NaN", "7thou")]
    [InlineData("contam: reading 1: a length (um, mm, m, thou, in) is due, got `0.2bar`. Write a length, for instance `25 um`.\n", "0.2bar", "7thou")]
    [InlineData("contam: reading 2: a comma stands in the number `0,2mm`. Write a decimal point: `0.2 mm`.\n", "0mm", "0,2mm")]
    [InlineData("contam: the places round the turn are said in more than one way. Write 12:0.02mm 3:0.05mm for hours on a clock, 90deg:0.02mm for degrees, or the readings alone where they are evenly spread.\n", "12:0mm", "90deg:1mm")]
    [InlineData("contam: the place `13` is not one: an hour from 12 round to 12 was expected. Write 12:0.02mm 3:0.05mm for hours on a clock, 90deg:0.02mm for degrees, or the readings alone where they are evenly spread.\n", "13:0mm", "1:1mm")]
    [InlineData("contam: --minutes is for a hold of pressure or vacuum, and propeller-shaft-run-out measures run-out. Leave it out.\n", "0mm", "1mm", "--minutes", "5")]
    [InlineData("contam: --uncertainty: a length (um, mm, m, thou, in) is due, got `1bar`. Write a length, for instance `25 um`.\n", "0mm", "1mm", "--uncertainty", "1bar")]
    public void Is_refused_with_what_was_expected(string message, params string[] typed) =>
        Assert.Equal(message, Called.Refusal("gauge", Called.Gearcase, [Limit, .. typed]));

    [Fact]
    public void Names_the_limits_where_none_of_that_name_is_there() =>
        Assert.Equal(
            "contam: there is no limit propellor-shaft-run-out. Did you mean propeller-shaft-run-out? outboard-gearcase has propeller-shaft-run-out, driveshaft-run-out, "
            + "gearcase-pressure-hold, gearcase-vacuum-hold, gear-oil-water, pinion-backlash, pinion-bearing-play, forward-gear-bearing-play.\n",
            Called.Refusal("gauge", Called.Gearcase, "propellor-shaft-run-out", "0mm", "1mm"));
}
