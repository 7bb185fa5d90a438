using Contam.Diagnosis;
using Contam.Families;

namespace Contam.Tests.Diagnosis;

/// <summary>A shop's own counts instead of the words good, fair and poor. Worked by hand.</summary>
public class Looks_of_the_shop
{
    private const string Two = "a[sheds metal] > x[look=good]; b[sheds metal] > y\n@clean x metal";

    [Theory]
    // The word alone: 9 x 0.1 against 9 x 1.
    [InlineData(0, 0, "b 0.9091, a 0.0909")]
    // 4 of 10: (9 + 4) / (10 + 10) = 0.65, so 0.35 against 1.
    [InlineData(4, 10, "b 0.7407, a 0.2593")]
    // 90 of 90: (9 + 90) / 100 = 0.99, so 0.01 against 1.
    [InlineData(90, 90, "b 0.9901, a 0.0099")]
    public void Weigh_a_clean_finding(int found, int looks, string shares) => Assert.Equal(shares, Asked.Shares(With(Two, "x", found, looks)));

    [Fact]
    public void Weigh_a_find() =>
        // Both ways lead to x; the stray of b at y stays 0.01. a: 9 x 0.65; b: 9 x 0.01.
        Assert.Equal("a 0.9848, b 0.0152", Asked.Shares(With("a[sheds metal] > x[look=good]; b[sheds metal] > y\n@found x metal", "x", 4, 10)));

    [Fact]
    public void Never_make_a_find_less_likely_than_a_stray_piece() =>
        // 3 / (10 + 990) = 0.003 would be.
        Assert.Equal("a 0.5, b 0.5", Asked.Shares(With("a[sheds metal] > x[look=poor]; b[sheds metal] > y\n@found x metal", "x", 0, 990)));

    [Fact]
    public void Of_other_debris_or_places_change_nothing() => Assert.Equal(Asked.Shares(Asked.Of(Two)), Asked.Shares(With(Two, "y", 0, 50)));

    [Theory]
    [InlineData(Shows.Good, 0, 1, Shows.Fair)]
    [InlineData(Shows.Good, 10, 10, Shows.Good)]
    [InlineData(Shows.Good, 0, 6, Shows.Poor)]
    [InlineData(Shows.Fair, 29, 29, Shows.Fair)]
    [InlineData(Shows.Fair, 30, 30, Shows.Good)]
    [InlineData(Shows.Poor, 7, 7, Shows.Poor)]
    [InlineData(Shows.Poor, 8, 8, Shows.Fair)]
    public void Earn_the_word_whose_figure_they_reach(Shows word, int found, int looks, Shows earned)
    {
        Family family = Asked.Of(Two, parts: part => part.Inspect is { } look ? part with { Inspect = look with { Shows = word } } : part).Question.Family;
        Family applied = History("x", found, looks).AppliedTo(family, [Debris.Metal]);
        Assert.Equal(earned, applied[new PartId("x")].Inspect!.Shows);
        Assert.Equal(family.Joints, applied.Joints);
    }

    [Fact]
    public void Keep_every_word_where_there_are_none()
    {
        Family family = Asked.Of(Two).Question.Family;
        Assert.Equal(family.Parts, new LookHistory([], 0).AppliedTo(family, [Debris.Metal]).Parts);
    }

    private static SuspectAnswer With(string text, string place, int found, int looks) => Suspecting.Of(Asked.Of(text).Question with { History = History(place, found, looks) });

    private static LookHistory History(string place, int found, int looks) => new([new PlaceCount(new PartId(place), Debris.Metal, new LookCount(found, looks))], 1);
}
