using System.Text.Json;

namespace Contam.Cli.Tests.Gauge;

public sealed class A_hold
{
    private const string Pressure = "gearcase-pressure-hold";
    private const string Vacuum = "gearcase-vacuum-hold";

    /// <summary>By hand: 1.69325 bar absolute at 18 °C is 1.704881 at 20 °C; 1.71325 less that is 0.008369 bar, in 0.9 L and 600 s 0.0012553 Pa·m³/s.</summary>
    [Fact]
    public void Is_corrected_for_temperature_by_the_gas_law()
    {
        (int exit, JsonElement answer) = Called.Json("gauge", Called.Gearcase, Pressure, "0.70bar", "0.68bar", "--minutes", "10", "--temperature-from", "20C", "--temperature-to", "18C", "--volume", "0.9L");
        Assert.Equal((0, "good"), (exit, answer.GetProperty("verdict").GetString()));
        Assert.Equal(0.02, Called.Figure(answer, "gaugeLoss"), 9);
        Assert.Equal(0.008369, Called.Figure(answer, "loss"), 6);
        Assert.Equal(0.0008369, Called.Figure(answer, "lossPerMinute"), 7);
        Assert.Equal(0.012553, Called.Figure(answer, "leakRate"), 6);
        Assert.Empty(answer.GetProperty("notes").EnumerateArray());
    }

    [Fact]
    public void Takes_the_volume_from_the_family() =>
        Assert.Equal(
            Called.Figure(Called.Json("gauge", Called.Gearcase, Pressure, "10psi", "9.8psi", "--minutes", "10", "--volume", "0.9L").Answer, "leakRate"),
            Called.Figure(Called.Json("gauge", Called.Gearcase, Pressure, "10psi", "9.8psi", "--minutes", "10").Answer, "leakRate"));

    [Fact]
    public void That_passes_although_water_got_in_says_what_to_measure_next()
    {
        (int exit, JsonElement answer) = Called.Json("gauge", Called.Gearcase, Pressure, "0.70bar", "0.70bar", "--minutes", "10", "--temperature-from", "20C", "--temperature-to", "20C", "--water-got-in");
        Assert.Equal((0, "good", true), (exit, answer.GetProperty("verdict").GetString(), answer.GetProperty("holdsAlthoughWaterGotIn").GetBoolean()));
        Assert.Equal(
            [
                "it holds, and yet water got in: seals that hold still can leak when a bent shaft whips them, or hold one way and not the other, or cold and not warm; "
                + "measure the run-out of every shaft that turns in them, and hold it the other way round",
                "measure next the run-out: propeller-shaft-run-out (run-out good to 6 thou, reject above 9 thou), driveshaft-run-out (run-out good to 0.10 mm, reject above 0.20 mm)",
                "then hold it the other way round: gearcase-vacuum-hold (vacuum drop good to 0.02 bar, reject above 0.05 bar, in 5 min from 0.3 bar)",
            ],
            answer.GetProperty("notes").EnumerateArray().Select(note => note.GetString()));
        Assert.StartsWith("GOOD, AND YET WATER GOT IN  Gear housing, pressure drop\n", Called.With("gauge", Called.Gearcase, Pressure, "0.7bar", "0.7bar", "--minutes", "10", "--water-got-in").Out, StringComparison.Ordinal);
        Assert.False(Called.Json("gauge", Called.Gearcase, Pressure, "0.7bar", "0.5bar", "--minutes", "10", "--water-got-in").Answer.GetProperty("holdsAlthoughWaterGotIn").GetBoolean());
    }

    [Fact]
    public void Of_vacuum_reads_the_same_with_a_minus_and_without()
    {
        (int exit, JsonElement plain) = Called.Json("gauge", Called.Gearcase, Vacuum, "0.30bar", "0.26bar", "--minutes", "5");
        (_, JsonElement minus) = Called.Json("gauge", Called.Gearcase, Vacuum, "-0.30bar", "-0.26bar", "--minutes", "5");
        Assert.Equal((0, "marginal"), (exit, plain.GetProperty("verdict").GetString()));
        Assert.Equal(plain.ToString(), minus.ToString());
        Assert.Equal("reject", Called.Json("gauge", Called.Gearcase, Vacuum, "9inHg", "7inHg", "--minutes", "5").Answer.GetProperty("verdict").GetString());
    }

    [Fact]
    public void Watched_too_short_proves_nothing()
    {
        (int exit, JsonElement answer) = Called.Json("gauge", Called.Gearcase, Pressure, "0.70bar", "0.70bar", "--minutes", "5");
        Assert.Equal((1, "undecided"), (exit, answer.GetProperty("verdict").GetString()));
        Assert.Equal("it was watched for less time than the limit asks; watch it for the whole time", answer.GetProperty("because").GetString());
    }

    [Theory]
    [InlineData("contam: gearcase-pressure-hold needs 2 readings, at the start and at the end, got 1. Write the gauge at the start and at the end, for instance 0.70bar 0.68bar --minutes 10.\n", Pressure, "0.7bar", "--minutes", "10")]
    [InlineData("contam: gearcase-pressure-hold needs --minutes: how long was it watched? Write the gauge at the start and at the end, for instance 0.70bar 0.68bar --minutes 10.\n", Pressure, "0.7bar", "0.68bar")]
    [InlineData("contam: --minutes: a number was expected, for instance 10, got `NaN`.\n", Pressure, "0.7bar", "0.68bar", "--minutes", "NaN")]
    [InlineData("contam: --minutes: more than 0 and at most ten years was expected, got `0`.\n", Pressure, "0.7bar", "0.68bar", "--minutes", "0")]
    [InlineData("contam: reading 2: a pressure cannot be negative, got `-0.6bar`. Take the minus off, or check which figure was meant.\n", Pressure, "0.7bar", "-0.6bar", "--minutes", "10")]
    [InlineData("contam: a vacuum of 1.2 bar at the start is more than the atmosphere gives; an absolute pressure above 0 was expected.\n", Vacuum, "1.2bar", "1bar", "--minutes", "5")]
    [InlineData("contam: --temperature-from: `-300C` is too large or too small for a temperature. Check the figure and its unit.\n", Pressure, "0.7bar", "0.68bar", "--minutes", "10", "--temperature-from", "-300C", "--temperature-to", "18C")]
    [InlineData("contam: a temperature is given at the start alone; one at both, or none, was expected.\n", Pressure, "0.7bar", "0.68bar", "--minutes", "10", "--temperature-from", "20C")]
    [InlineData("contam: the reading `12:0.7bar` says a place round a turn, and gearcase-pressure-hold measures pressure drop. Write the gauge at the start and at the end, for instance 0.70bar 0.68bar --minutes 10.\n", Pressure, "12:0.7bar", "0.68bar", "--minutes", "10")]
    [InlineData("contam: one reading is below 0 and the other above. Write both as vacuum, with a minus or both without.\n", Vacuum, "-0.3bar", "0.2bar", "--minutes", "5")]
    public void Is_refused_with_what_was_expected(string message, string limit, params string[] typed) =>
        Assert.Equal(message, Called.Refusal("gauge", Called.Gearcase, [limit, .. typed]));
}
