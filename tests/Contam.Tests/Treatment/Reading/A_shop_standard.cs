using System.Security.Cryptography;
using System.Text;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Tests.Families.Reading;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Treatment.Reading;

public sealed class A_shop_standard
{
    [Fact]
    public void Is_read_whole()
    {
        string text = CaseFile.Read("Treatment/Reading/standards.cases").Single(one => one.Name == "a sound one").Files[0].Text;
        ShopStandard standard = StandardReader.ReadText(text, "s.yaml", TestCatalogue.Value).Value!;

        Assert.Equal(
            ("s", "Harbour workshop", CleanFindings.Never, TimeSpan.FromHours(7.5), TimeSpan.FromHours(10)),
            (standard.Id, standard.Title, standard.CleanFindings, standard.WorkingDay, standard.FirstRunningHours));
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))), standard.Sha256);

        Kind cooler = Assert.Single(standard.Kinds);
        Assert.Equal(
            ("cooler", "a tube bundle", true, false, true, false, new TaskMinutes { Flush = 30 }, "a a", "s.yaml:8:3"),
            (cooler.Name, cooler.About, cooler.IsRemovable, cooler.IsFilter, cooler.JoinsFluids, cooler.FluidMayEnd, cooler.Minutes, string.Join(' ', cooler.Seals), cooler.Place.ToString()));
        Assert.Equal([new Debris("carbon", HasSize: true, IsHard: false)], standard.Debris);
        Assert.Equal(
            [
                "RuleFor { Part = , Kind = cooler, Debris = carbon }|Replace|Flush,Test|-|a tube bundle holds chips|s.yaml:12:5",
                "RuleFor { Part = oil-filter, Kind = , Debris =  }|-|-|Replace||s.yaml:13:5",
                "RuleFor { Part = , Kind = , Debris = metal }|Inspect,Clean|-|-||s.yaml:14:5",
            ],
            standard.Rules.Select(rule => $"{rule.For}|{Words(rule.Exposed)}|{Words(rule.Guarded)}|{Words(rule.Failed)}|{rule.Because}|{rule.Place}"));
        Assert.Equal([("hose", new TaskMinutes { Remove = 5, Flush = 10, Refit = 5 })], standard.Times);
        Assert.Equal(
            [
                new CautionRule(new BearsOn(null, null, null, null, null, null), "wear goggles", "common practice, no source", new SourceSpan("s.yaml", 18, 5)),
                new CautionRule(new BearsOn("fuel", null, TreatmentKind.Flush, null, null, null), "no naked flame", "common practice, no source", new SourceSpan("s.yaml", 19, 5)),
            ],
            standard.Cautions);
        Assert.Equal(
            [new StepWording(new BearsOn(null, null, null, StepAction.Remove, "hose", null), "take {part} off", "{parts} are off", "{size}", new SourceSpan("s.yaml", 21, 5))],
            standard.Texts);
    }

    [Fact]
    public void That_says_little_leaves_the_rest_unsaid()
    {
        ShopStandard standard = StandardReader.ReadText("format: 1\nstandard: s\n", "s.yaml").Value!;
        Assert.Null(standard.CleanFindings);
        Assert.Null(standard.WorkingDay);
        Assert.Null(standard.FirstRunningHours);
        Assert.Empty(standard.Rules);
        Assert.Equal("", standard.Title);
    }

    [Fact]
    public void That_is_missing_is_told_without_a_place()
    {
        using var folder = new TestFolder([]);
        Outcome<ShopStandard> outcome = StandardReader.ReadFile(folder.PathOf("s.yaml"));
        Assert.Equal("-: there is no file `s.yaml` | check the name and the folder [file-missing]", TestCatalogue.Told(outcome.Problems.Select(folder.Shortened)));
    }

    [Fact]
    public void That_is_built_in_is_sound_and_read_once()
    {
        Assert.Equal(("kinds", "house"), (BuiltInStandards.Kinds.Id, BuiltInStandards.House.Id));
        Assert.Same(BuiltInStandards.Kinds, BuiltInStandards.Kinds);
        Assert.Same(BuiltInStandards.House, BuiltInStandards.House);
        Assert.Equal(BuiltInStandards.House.Over(BuiltInStandards.Kinds).Sha256, BuiltInStandards.HouseOverKinds.Sha256);
        Assert.All(BuiltInStandards.Kinds.Kinds, kind => Assert.Equal("kinds.yaml", kind.Place.File));
        Assert.All(BuiltInStandards.House.Rules, rule => Assert.Equal("house.yaml", rule.Place.File));
    }

    [Fact]
    public void That_is_built_in_has_the_hash_of_its_file()
    {
        byte[] bytes = File.ReadAllBytes(Path.Combine(CaseFile.Root, "systems", "standards", "house.yaml"));
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(bytes)), BuiltInStandards.House.Sha256);
    }

    private static string Words(System.Collections.Immutable.ImmutableArray<TreatmentKind>? treatments) =>
        treatments is null ? "-" : string.Join(',', treatments.Value);
}
