using Contam.Families;
using Contam.Families.Reading;
using Contam.Tests.Families.Reading;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Treatment.Reading;

public sealed class Layered_standards
{
    private static readonly ShopStandard Lower = Read("lower", """
        format: 1
        standard: lower
        title: Lower
        clean-findings: accept
        working-day: 8 h
        first-running-hours: 5 h
        kinds:
          pump: {about: lower pump, removable: true}
          hose: {about: lower hose}
        debris:
          sealant: {has-size: true, hard: false}
          carbon: {has-size: true, hard: false}
        rules:
          - {for: {kind: pump}, exposed: [clean]}
          - {for: {kind: hose}, exposed: [flush]}
        times:
          pump: {remove: 10, refit: 20}
          hose: {remove: 1}
        cautions:
          - {for: {circuit: fuel}, say: lower fuel one}
          - {for: {circuit: fuel}, say: lower fuel two}
          - {say: lower for all}
          - {for: {circuit: oil}, say: lower oil}
        texts:
          - {for: {action: remove}, say: lower remove}
          - {for: {action: refit}, say: lower refit}
        """);

    private static readonly ShopStandard Upper = Read("upper", """
        format: 1
        standard: upper
        clean-findings: never
        working-day: 7 h
        kinds:
          valve: {about: upper valve}
          pump: {about: upper pump}
        debris:
          carbon: {has-size: true, hard: true}
        rules:
          - {for: {kind: pump, debris: metal}, exposed: [replace]}
          - {for: {kind: pump}, exposed: [replace]}
        times:
          valve: {remove: 3}
          pump: {remove: 11, flush: 5}
        cautions:
          - {for: {circuit: fuel}, say: upper fuel}
          - {for: {circuit: fuel, treatment: flush}, say: upper fuel flush}
        texts:
          - {for: {action: refit}, say: upper refit}
        """);

    [Fact]
    public void Take_each_thing_from_the_upper_where_it_says_it()
    {
        ShopStandard both = Upper.Over(Lower);

        Assert.Equal(
            ("upper", "Lower", CleanFindings.Never, TimeSpan.FromHours(7), TimeSpan.FromHours(5)),
            (both.Id, both.Title, both.CleanFindings, both.WorkingDay, both.FirstRunningHours));
        Assert.Equal(["upper pump", "lower hose", "upper valve"], both.Kinds.Select(kind => kind.About));
        Assert.Equal(["sealant soft", "carbon hard"], both.Debris.Select(debris => $"{debris.Name} {(debris.IsHard ? "hard" : "soft")}"));
        Assert.Equal(
            ["pump - Replace", "hose - Flush", "pump metal Replace"],
            both.Rules.Select(rule => $"{rule.For.Kind} {rule.For.Debris ?? "-"} {string.Join(' ', rule.Exposed!.Value)}"));
        Assert.Equal(
            ["pump 11 5 20", "hose 1  ", "valve 3  "],
            both.Times.Select(times => $"{times.Kind} {times.Minutes.Remove} {times.Minutes.Flush} {times.Minutes.Refit}"));
        Assert.Equal(["lower for all", "lower oil", "upper fuel", "upper fuel flush"], both.Cautions.Select(caution => caution.Say));
        Assert.Equal(["lower remove", "upper refit"], both.Texts.Select(text => text.Say));
    }

    [Fact]
    public void Keep_the_places_of_what_they_are_made_of()
    {
        ShopStandard both = Upper.Over(Lower);
        Assert.Equal(["upper.yaml:12:5", "lower.yaml:15:5", "upper.yaml:11:5"], both.Rules.Select(rule => rule.Place.ToString()));
    }

    [Fact]
    public void Change_their_hash_with_either_layer_and_with_the_order()
    {
        string[] hashes = [Upper.Sha256, Lower.Sha256, Upper.Over(Lower).Sha256, Lower.Over(Upper).Sha256, Upper.Over(Upper).Sha256];
        Assert.Equal(hashes.Length, hashes.Distinct().Count());
        Assert.All(hashes, hash => Assert.Matches("^[0-9a-f]{64}$", hash));
    }

    [Fact]
    public void Over_nothing_say_the_same()
    {
        ShopStandard same = Upper.Over(new ShopStandard { Id = "nothing" });
        Assert.Equal(Upper.Rules, same.Rules);
        Assert.Equal(Upper.Kinds, same.Kinds);
        Assert.Equal(Upper.Times, same.Times);
        Assert.Equal(Upper.Cautions, same.Cautions);
        Assert.Equal(Upper.Title, same.Title);
    }

    [Fact]
    public void Give_a_catalogue_with_the_debris_that_is_built_in_first()
    {
        Catalogue catalogue = Upper.Over(Lower).CatalogueOf();
        Assert.Equal(["metal", "rubber", "water", "sealant", "carbon"], catalogue.Debris.Select(debris => debris.Name));
        Assert.Equal(["pump", "hose", "valve"], catalogue.Kinds.Select(kind => kind.Name));
        Assert.Same(Debris.Metal, catalogue.FindDebris("metal"));
    }

    private static ShopStandard Read(string name, string text)
    {
        Outcome<ShopStandard> outcome = StandardReader.ReadText(text, name + ".yaml", new Catalogue([], []));
        Assert.Equal("", TestCatalogue.Told(outcome.Problems));
        return outcome.Value!;
    }
}
