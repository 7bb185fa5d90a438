using System.Text.Json;
using Contam.Cli.Tests.Gauge;

namespace Contam.Cli.Tests.Flush;

public sealed class A_flush
{
    /// <summary>By hand: 4000·π·d·ν/4 for the 10 mm rail at 2.8 cSt is 5.27788 L/min, and so is four times that of a 2.5 mm pipe.</summary>
    [Fact]
    public void Without_a_flow_asks_for_the_least_that_reaches_every_bore()
    {
        (int exit, JsonElement answer) = Called.Json("flush", Called.Diesel, "--circuit", "fuel");
        Assert.Equal(0, exit);
        Assert.Equal((40, 2.8, false, true), (answer.GetProperty("temperatureC").GetDouble(), answer.GetProperty("viscosityCst").GetDouble(), answer.GetProperty("flowGiven").GetBoolean(), answer.GetProperty("enough").GetBoolean()));
        Assert.Equal(5.27788, answer.GetProperty("flowLPerMin").GetDouble(), 5);
        Assert.Equal((4000, "turbulent", true), (Bore(answer, "rail").GetProperty("reynolds").GetDouble(), Bore(answer, "rail").GetProperty("regime").GetString(), Bore(answer, "rail").GetProperty("enough").GetBoolean()));
        JsonElement pipe = Bore(answer, "injector-pipe-3");
        Assert.Equal((2.5, 4, 4000), (pipe.GetProperty("boreMm").GetDouble(), pipe.GetProperty("branches").GetInt32(), pipe.GetProperty("reynolds").GetDouble()));
        Assert.Equal(5.27788 / 4, pipe.GetProperty("flowLPerMin").GetDouble(), 5);
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("volumes").ValueKind);
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("minutes").ValueKind);
    }

    /// <summary>By hand: 40 L/min in 12 mm is 5.8946 m/s; for Reynolds 4000 it would have to be 17.684 cSt, or 104.0827 L/min at the 46.0147 cSt that it has at 60 °C (ASTM D341 by another program).</summary>
    [Fact]
    public void With_too_little_flow_says_what_mends_each_bore()
    {
        (int exit, JsonElement answer) = Called.Json("flush", Called.Diesel, "--circuit", "oil", "--flow", "40L/min");
        Assert.Equal((1, false, 60), (exit, answer.GetProperty("enough").GetBoolean(), answer.GetProperty("temperatureC").GetDouble()));
        Assert.Equal(46.0147, answer.GetProperty("viscosityCst").GetDouble(), 3);
        JsonElement gallery = Bore(answer, "main-gallery");
        Assert.Equal(5.8946, gallery.GetProperty("velocityMPerS").GetDouble(), 4);
        Assert.False(gallery.GetProperty("enough").GetBoolean());
        JsonElement mend = gallery.GetProperty("mend");
        Assert.Equal(17.684, mend.GetProperty("thinnerCst").GetDouble(), 3);
        Assert.Equal(104.083, mend.GetProperty("circuitFlowLPerMin").GetDouble(), 2);
        Assert.False(mend.GetProperty("oneBranchAtATime").GetBoolean());
        Assert.True(Bore(answer, "piston-jet-1").GetProperty("mend").GetProperty("oneBranchAtATime").GetBoolean());

        // As hot as it says, it is enough.
        string hotter = FormattableString.Invariant($"{mend.GetProperty("hotterC").GetDouble() + 0.01:0.00}C");
        Assert.Equal(0, Called.Json("flush", Called.Diesel, "--circuit", "oil", "--flow", "40L/min", "--temperature", hotter, "--parts", "main-gallery").Exit);
    }

    [Fact]
    public void Reaches_a_lower_number_sooner() =>
        Assert.Equal(3000.0 / 4000, FlowFor("3000") / FlowFor("4000"), 9);

    /// <summary>By hand: ln 100 volumes of 61.13 L (tank 60, separator 0.6, filter 0.5, rail 0.03) at 10 L/min.</summary>
    [Fact]
    public void Counts_the_volumes_for_a_dilution()
    {
        (_, JsonElement answer) = Called.Json("flush", Called.Diesel, "--circuit", "fuel", "--flow", "10L/min", "--dilution", "1%");
        Assert.Equal(61.13, answer.GetProperty("systemL").GetDouble(), 6);
        Assert.Equal(4.60517, answer.GetProperty("volumes").GetDouble(), 5);
        Assert.Equal(4.60517 * 61.13 / 10, answer.GetProperty("dilutionMinutes").GetDouble(), 3);
    }

    /// <summary>By hand: the 14 µm number falls from 1300 to 80 per mL, the most of the three: ln 16.25 / 0.995 · 11 L / 40 L/min.</summary>
    [Theory]
    [InlineData("200")]
    [InlineData("4:200,6:200,14:200")]
    public void Counts_the_minutes_through_a_filter(string beta)
    {
        (_, JsonElement answer) = Called.Json("flush", Called.Diesel, "--circuit", "oil", "--flow", "40L/min", "--volume", "11L", "--beta", beta, "--from-code", "22/20/17", "--to-code", "18/16/13");
        Assert.Equal(0.770578, answer.GetProperty("minutes").GetDouble(), 5);
    }

    /// <summary>32 cSt at 40 °C and 5.4 at 100: 8.5 cSt at 80 °C, the published example of ASTM D341 (scribd.com/document/361017004).</summary>
    [Fact]
    public void Takes_another_fluid_by_two_points()
    {
        (_, JsonElement answer) = Called.Json("flush", Called.Diesel, "--circuit", "oil", "--viscosity", "40C:32cSt,100C:5.4cSt", "--temperature", "80C");
        Assert.Equal(8.5, answer.GetProperty("viscosityCst").GetDouble(), 1);
    }

    [Fact]
    public void Is_shown_as_a_page() =>
        Assert.Equal(
            """
            Flush of the oil circuit: oil 15w40 at 55 °C, 55.52 cSt
            NOT ENOUGH: 40 L/min stays below Reynolds 4000 in main oil gallery, piston jet
            1–4. Debris may stay there.

            BORE BY BORE
                                     bore mm  L/min   m/s     Re      bar     flow
            !  Main oil gallery      12       40      5.895   1274    0.382   laminar
            !  Piston jet 1–4        1.5      10      94.31   2548    -       transitional
            ! stays below the wanted number

            WHAT WOULD MEND IT
            Any one of these alone. Thinner or hotter comes before more flow (ISO 23309).
            Heat no further than fluid, hoses and seals stand, and never heat a fuel.
              For all of them         hotter: 92 °C; thinner: 17.68 cSt; more flow: 125.6
                                      L/min round the circuit
              Main oil gallery        hotter: 92 °C; thinner: 17.68 cSt; more flow: 125.6
                                      L/min round the circuit
              Piston jet 1–4          hotter: 68 °C; thinner: 35.37 cSt; one branch at a
                                      time: 15.7 L/min through it alone, which this flow
                                      gives; more flow: 62.79 L/min round the circuit

            TAKEN AS GIVEN
            - Parts that repeat one another share the flow evenly, and every other part has
              all of it.
            - Where the circuit forks into different parts each gets less than is said here:
              shut the others, and flush such branches one at a time.
            - The pressure taken is that of a smooth straight bore; bends and fittings take
              more.

            """,
            Called.With("flush", Called.Diesel, "--circuit", "oil", "--temperature", "55C", "--flow", "40L/min", "--parts", "main-gallery,piston-jet").Out);

    [Fact]
    public void Is_shown_in_imperial_units_where_asked() =>
        Assert.StartsWith(
            "Flush of the fuel circuit: diesel fuel at 104 °F, 2.8 cSt\nIt takes at least 1.394 US gpm to reach Reynolds 4000 in every bore.\n",
            Called.With("flush", Called.Diesel, "--circuit", "fuel", "--units", "imperial").Out,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("contam: there is no circuit `oli`. Did you mean oil? harbour-diesel-i4 has air, fuel, oil, fresh-water and raw-water.\n", "--circuit", "oli")]
    [InlineData("contam: harbour-diesel-i4 does not say which fluid runs in air. Say its viscosity: --viscosity 15cSt.\n", "--circuit", "air")]
    [InlineData("contam: the temperature is 500 °C; -70 to 370 °C was expected.\n", "--circuit", "oil", "--temperature", "500C")]
    [InlineData("contam: --temperature: `55` has no unit. A temperature is written in C, F or K.\n", "--circuit", "oil", "--temperature", "55")]
    [InlineData("contam: --flow: a flow (L/min, L/h, m3/h, gpm(US)) is due, got `40bar`. Write a flow, for instance `30 L/min`.\n", "--circuit", "oil", "--flow", "40bar")]
    [InlineData("contam: --flow: more than 0 L/min was expected.\n", "--circuit", "oil", "--flow", "0L/min")]
    [InlineData("contam: --re: a number was expected, for instance 4000, got `NaN`.\n", "--circuit", "oil", "--re", "NaN")]
    [InlineData("contam: main-gallery: the Reynolds number is -1; more than 0 was expected.\n", "--circuit", "oil", "--re", "-1", "--parts", "main-gallery")]
    [InlineData("contam: --beta, --from-code and --to-code belong together: what the filter does, how clean the fluid is, and how clean it must be. For instance --beta 200 --from-code 22/20/17 --to-code 18/16/13.\n", "--circuit", "oil", "--beta", "200")]
    [InlineData("contam: at 4 µm(c): beta is 0.5; at least 1 was expected.\n", "--circuit", "oil", "--beta", "0.5", "--from-code", "22/20/17", "--to-code", "18/16/13")]
    [InlineData("contam: --beta: a size of 4, 6 or 14 µm(c) and a beta were expected, for instance 6:200, got `5:200`.\n", "--circuit", "oil", "--beta", "5:200", "--from-code", "22/20/17", "--to-code", "18/16/13")]
    [InlineData("contam: what is left is 0 %; more than 0 % was expected.\n", "--circuit", "oil", "--dilution", "0%")]
    [InlineData("contam: sump is not on oil or says no bore. oil has bores at oil-cooler, main-gallery, crankshaft, turbo-oil-feed, turbo-oil-return, piston-jet-1, piston-jet-2, piston-jet-3, piston-jet-4 and head-gallery.\n", "--circuit", "oil", "--parts", "sump")]
    public void Is_refused_with_what_was_expected(string message, params string[] typed) =>
        Assert.Equal(message, Called.Refusal("flush", Called.Diesel, typed));

    private static double FlowFor(string reynolds) =>
        Called.Json("flush", Called.Diesel, "--circuit", "oil", "--re", reynolds).Answer.GetProperty("flowLPerMin").GetDouble();

    private static JsonElement Bore(JsonElement answer, string part) =>
        answer.GetProperty("bores").EnumerateArray().Single(bore => bore.GetProperty("part").GetString() == part);
}
