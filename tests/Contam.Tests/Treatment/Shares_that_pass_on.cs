using Contam.Families;
using Contam.Families.Reading;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Treatment;

/// <summary>How often debris that came to a part goes further, as a standard says it.</summary>
public class Shares_that_pass_on
{
    private const string Lower = """
        format: 1
        standard: lower
        kinds: {hose: {}, screen: {}}
        passes-on:
          - {for: {kind: hose}, share: 0.95}
          - {for: {kind: screen, debris: metal}, share: 0.3}
          - {for: {kind: screen}, share: 0.6}
          - {for: {debris: water}, share: 1}
          - {for: {part: odd}, share: 0.1}
          - {for: {part: odd, debris: rubber}, share: 0.2}
        """;

    [Theory]
    [InlineData("a", "hose", "metal", 0.95)]
    [InlineData("a", "hose", "water", 0.95)]
    [InlineData("a", "screen", "metal", 0.3)]
    [InlineData("a", "screen", "rubber", 0.6)]
    [InlineData("a", "tank", "water", 1)]
    [InlineData("a", "tank", "metal", 0.9)]
    [InlineData("odd", "screen", "metal", 0.1)]
    [InlineData("odd", "screen", "rubber", 0.2)]
    public void Are_those_that_fit_most_closely(string part, string kind, string debris, double share) =>
        Assert.Equal(share, Share(Read(Lower), part, kind, debris));

    [Fact]
    public void Are_the_upper_standards_where_it_says_any_for_the_same()
    {
        ShopStandard upper = Read("""
            format: 1
            standard: upper
            kinds: {hose: {}, screen: {}}
            passes-on:
              - {for: {kind: screen}, share: 0.5}
              - {for: {kind: hose, debris: metal}, share: 0.8}
            """);
        ShopStandard both = upper.Over(Read(Lower));
        Assert.Equal(
            (0.3, 0.5, 0.8, 0.95),
            (Share(both, "a", "screen", "metal"), Share(both, "a", "screen", "rubber"), Share(both, "a", "hose", "metal"), Share(both, "a", "hose", "rubber")));
    }

    private static double Share(ShopStandard standard, string part, string kind, string debris)
    {
        var place = new SourceSpan("f.yaml", 1, 1);
        Debris sort = standard.CatalogueOf().FindDebris(debris)!;
        return new PassingOn(standard).ShareOf(new Part(new PartId(part), new Kind(kind, place), place), sort);
    }

    private static ShopStandard Read(string text)
    {
        Outcome<ShopStandard> outcome = StandardReader.ReadText(text, "s.yaml");
        Assert.True(outcome.Value is not null, string.Join('\n', outcome.Problems));
        return outcome.Value;
    }
}
