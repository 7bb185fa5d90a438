using System.Text.Json;

namespace Contam.Cli.Tests.Gauge;

public sealed class A_fluid_or_an_injector_set
{
    /// <summary>300 000 / 50 000 / 700 in 100 mL is 19/16/10: micronscientific.co.za, news 653.</summary>
    [Theory]
    [InlineData("3000/mL", "500/mL", "7/mL")]
    [InlineData("300000/100mL", "50000/100mL", "700/100mL")]
    public void Counts_come_to_their_code(params string[] counts)
    {
        (int exit, JsonElement answer) = Called.Json("gauge", Called.Diesel, ["oil-cleanliness", .. counts]);
        Assert.Equal((0, "marginal", "19/16/10"), (exit, answer.GetProperty("verdict").GetString(), answer.GetProperty("code").GetString()));
        Assert.Equal(["count4", "number4", "count6", "number6", "count14", "number14", "marginToGood"], Called.Names(answer));
        Assert.Equal(-1, Called.Figure(answer, "marginToGood"));
        Assert.Equal("clearance 60 µm: the number at 14 µm(c) bears on it most", answer.GetProperty("parts").EnumerateArray().First(part => part.GetProperty("part").GetString() == "oil-pump").GetProperty("meaning").GetString());
        // The cooling side of the oil cooler is not oil's way, and the tank of the other fluid is not either.
        Assert.DoesNotContain(answer.GetProperty("parts").EnumerateArray(), part => part.GetProperty("part").GetString() is "injection-pump" or "raw-pump");
    }

    [Theory]
    [InlineData("18/16/13", "good", 0)]
    [InlineData("20/18/15", "marginal", 0)]
    [InlineData("21/16/13", "reject", 1)]
    [InlineData("-/16/13", "undecided", 1)]
    public void A_code_is_judged_as_it_stands(string code, string verdict, int exit)
    {
        (int ended, JsonElement answer) = Called.Json("gauge", Called.Diesel, "oil-cleanliness", code);
        Assert.Equal((exit, verdict, code), (ended, answer.GetProperty("verdict").GetString(), answer.GetProperty("code").GetString()));
    }

    [Fact]
    public void Few_particles_counted_are_marked()
    {
        (_, JsonElement answer) = Called.Json("gauge", Called.Diesel, "oil-cleanliness", "85", "12", "3", "--counted-in", "10mL");
        Assert.Equal("10/≥7/≥5", answer.GetProperty("code").GetString());
    }

    [Fact]
    public void Water_is_told_what_it_means_where_the_oil_goes()
    {
        (int exit, JsonElement answer) = Called.Json("gauge", Called.Diesel, "oil-water", "0.07%");
        Assert.Equal((0, "marginal"), (exit, answer.GetProperty("verdict").GetString()));
        Assert.Equal(0.07, Called.Figure(answer, "waterContent"));
        Assert.Equal(
            ["the water may be dissolved or free, for such fluids differ: treat it as free", "a drop on a hot plate may crackle", "it may still look bright, so a look proves nothing"],
            answer.GetProperty("notes").EnumerateArray().Select(note => note.GetString()));
        Assert.Equal(
            "the film breaks: it pits, and rusts where it stands still",
            answer.GetProperty("parts").EnumerateArray().Single(part => part.GetProperty("part").GetString() == "main-bearing-5").GetProperty("meaning").GetString());
        Assert.Equal(
            ["the water is dissolved: it is not seen, and comes out when the fluid cools", "it may still look bright, so a look proves nothing"],
            Called.Json("gauge", Called.Gearcase, "gear-oil-water", "250ppm", "--saturation", "400ppm").Answer.GetProperty("notes").EnumerateArray().Select(note => note.GetString()));
        Assert.Equal(
            ["what this fluid dissolves is not known, so all of the water is taken as free; say it with the maker's figure for saturation"],
            Called.Json("gauge", Called.Gearcase, "gear-oil-water", "250ppm").Answer.GetProperty("notes").EnumerateArray().Select(note => note.GetString()));
    }

    /// <summary>By hand: mean 98.5 mL, spread 7/98.5, the first 2.5/98.5 above.</summary>
    [Theory]
    [InlineData("101mL", "99mL", "100mL", "94mL")]
    [InlineData("101L/h", "99L/h", "100L/h", "94L/h")]
    public void Injectors_are_held_against_their_mean(params string[] delivered)
    {
        (int exit, JsonElement answer) = Called.Json("gauge", Called.Diesel, ["injector-balance", .. delivered]);
        Assert.Equal((0, "marginal"), (exit, answer.GetProperty("verdict").GetString()));
        Assert.Equal(["spread", "mean", "againstMean1", "againstMean2", "againstMean3", "againstMean4", "marginToGood", "marginToReject"], Called.Names(answer));
        Assert.Equal(7.106599, Called.Figure(answer, "spread"), 6);
        Assert.Equal(98.5, Called.Figure(answer, "mean"));
        Assert.Equal(2.538071, Called.Figure(answer, "againstMean1"), 6);
        Assert.Contains("\n  Injector 4                   -4.569 %           against the mean (94 ", Called.With("gauge", Called.Diesel, ["injector-balance", .. delivered]).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void An_injector_left_out_is_missed() =>
        Assert.Equal(
            ["rail feeds 4 injectors, and 3 readings are given; one left out may be the worst"],
            Called.Json("gauge", Called.Diesel, "injector-balance", "100mL", "99mL", "101mL").Answer.GetProperty("notes").EnumerateArray().Select(note => note.GetString()));

    [Fact]
    public void Of_several_clearances_the_worst_decides()
    {
        (int exit, JsonElement answer) = Called.Json("gauge", Called.Gearcase, "pinion-backlash", "0.28mm", "0.41mm", "0.31mm");
        Assert.Equal((1, "reject"), (exit, answer.GetProperty("verdict").GetString()));
        Assert.Equal((0.41, 0.28, 0.41), (Called.Figure(answer, "clearance"), Called.Figure(answer, "smallest"), Called.Figure(answer, "largest")));
    }

    [Theory]
    [InlineData("contam: one code or three counts were expected, got 2. Write a code (19/16/13), three counts a volume at 4, 6 and 14 µm(c) and larger (3000/mL 500/mL 7/mL), or three counts with the sample they were counted in (8500 1200 9 --counted-in 10mL).\n", "oil-cleanliness", "3000/mL", "500/mL")]
    [InlineData("contam: the count at 4 µm(c): `3000` does not say in what volume. Write a code (19/16/13), three counts a volume at 4, 6 and 14 µm(c) and larger (3000/mL 500/mL 7/mL), or three counts with the sample they were counted in (8500 1200 9 --counted-in 10mL).\n", "oil-cleanliness", "3000", "500", "7")]
    [InlineData("contam: a cleanliness code was expected: three scale numbers from 0 to 28, for instance 19/16/13, with - for a size that was not counted.\n", "oil-cleanliness", "19/x/13")]
    [InlineData("contam: the code 13/16/19 rises; numbers that fall or stay were expected, for each size and larger is counted.\n", "oil-cleanliness", "13/16/19")]
    [InlineData("contam: --uncertainty is for readings of a meter; for particles say --counted-in, and oil-cleanliness measures cleanliness. Leave it out.\n", "oil-cleanliness", "19/16/13", "--uncertainty", "1%")]
    [InlineData("contam: oil-water needs 1 reading, got 2. Write what the laboratory says, for instance 250ppm.\n", "oil-water", "1ppm", "2ppm")]
    [InlineData("contam: the water content is 1500000 ppm; 0 to 1000000 ppm was expected.\n", "oil-water", "150%")]
    [InlineData("contam: injector-balance needs at least 2 readings, one an injector, got 1. Write what each injector delivers, for instance 101mL 99mL 100mL 98mL.\n", "injector-balance", "100mL")]
    [InlineData("contam: nothing delivers anything; at least one delivery above 0 was expected.\n", "injector-balance", "0mL", "0mL")]
    public void What_cannot_be_read_is_answered_with_what_was_expected(string message, string limit, params string[] typed) =>
        Assert.Equal(message, Called.Refusal("gauge", Called.Diesel, [limit, .. typed]));
}
