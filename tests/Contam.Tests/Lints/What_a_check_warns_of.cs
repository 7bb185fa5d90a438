using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Lints;
using Contam.Problems;
using Contam.Support;
using Contam.Tests.Families.Reading;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Lints;

/// <summary>
/// The page of cases is the specification of the lints: every message whole, with its place. A case is named after its lint; one that begins with
/// <c>not</c> is near enough to raise it and does not. A second file <c>s.yaml</c> is a shop's standard, laid over the house's.
/// </summary>
public sealed class What_a_check_warns_of
{
    private const string Page = "Lints/lints.cases";

    public static TheoryData<string> Cases => [.. CaseFile.Read(Page).Select(one => one.Name)];

    public static TheoryData<string> Codes => [.. LintCodes.All.Select(code => code.Code)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Is_as_the_page_says(string name)
    {
        Case one = CaseFile.Read(Page).Single(one => one.Name == name);
        string told = TestCatalogue.Told(Look(one));
        if (CaseFile.IsUpdating)
            CaseFile.Update(Page, name, told);
        else
            Assert.Equal(one.Told, told);
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Holds_a_case_with_and_one_without_each_lint(string code)
    {
        Case[] with = [.. CaseFile.Read(Page).Where(one => one.Name.StartsWith(code + ":", StringComparison.Ordinal))];
        Case[] without = [.. CaseFile.Read(Page).Where(one => one.Name.StartsWith($"not {code}:", StringComparison.Ordinal))];
        Assert.NotEmpty(with);
        Assert.NotEmpty(without);
        Assert.All(with, one => Assert.Contains($"[{code}]", one.Told, StringComparison.Ordinal));
        Assert.All(without, one => Assert.DoesNotContain($"[{code}]", one.Told, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Is_silenced_where_it_is_meant(string code)
    {
        if (ProblemCodes.Find(code) is not { IsLint: true })
            return;
        Case silenced = CaseFile.Read(Page).Single(one => one.Name == $"not {code}: meant");
        // The same family without what it means raises the lint, so that the case is no empty one.
        (string file, string text) = silenced.Files[0];
        string loud = string.Join('\n', text.Split('\n').Where(line => !line.TrimStart().StartsWith("meant:", StringComparison.Ordinal)));
        Assert.Equal([], Look(silenced).Select(problem => problem.Code));
        Assert.Equal([code], Look(silenced with { Files = [(file, loud), .. silenced.Files.Skip(1)] }).Select(problem => problem.Code).Distinct());
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Is_explained_with_a_reason_that_a_file_can_hold(string code)
    {
        if (ProblemCodes.Find(code)!.MayBeMeant is not { } reason)
            return;
        Outcome<Family> outcome = TestCatalogue.Read($"format: 1\nfamily: f\nparts:\n  hose:\n    kind: hose\n    meant: {{{code}: {reason}}}\n");
        Assert.Equal("", TestCatalogue.Told(outcome.Problems));
        Assert.Equal([(code, reason)], outcome.Value!.Parts[0].Meant.Select(meant => (meant.Code, meant.Why)));
    }

    [Fact]
    public void Is_nothing_for_the_shipped_families()
    {
        ShopStandard standard = BuiltInStandards.HouseOverKinds;
        string[] files = [.. Directory.GetFiles(RepositoryFiles.At("systems/families"), "*.yaml").Order(StringComparer.Ordinal)];
        Assert.NotEmpty(files);
        Assert.All(files, file => Assert.Equal("", TestCatalogue.Told(Linting.Look(FamilyReader.ReadFile(file, standard.CatalogueOf()).Value!, standard))));
    }

    [Fact]
    public void Is_nothing_for_the_examples_of_the_guide()
    {
        ShopStandard standard = BuiltInStandards.HouseOverKinds;
        string[] examples =
        [
            .. File.ReadAllText(RepositoryFiles.At("systems/README.md")).Split("```yaml\n").Skip(1).Select(rest => rest[..rest.IndexOf("```", StringComparison.Ordinal)])
                .Where(example => example.Contains("\nfamily:", StringComparison.Ordinal)),
        ];
        Assert.NotEmpty(examples);
        Assert.All(examples, example => Assert.Equal("", TestCatalogue.Told(Linting.Look(FamilyReader.ReadText(example, "guide.yaml", standard.CatalogueOf()).Value!, standard))));
    }

    [Fact]
    public void Names_no_case_twice()
    {
        IReadOnlyList<Case> cases = CaseFile.Read(Page);
        Assert.Equal(cases.Count, cases.Select(one => one.Name).Distinct(StringComparer.Ordinal).Count());
    }

    private static ImmutableArray<Problem> Look(Case one)
    {
        ShopStandard standard = BuiltInStandards.HouseOverKinds;
        if (one.Files.Count == 2)
        {
            Outcome<ShopStandard> shop = StandardReader.ReadText(one.Files[1].Text, one.Files[1].File, standard.CatalogueOf());
            Assert.Equal("", TestCatalogue.Told(shop.Problems));
            standard = shop.Value!.Over(standard);
        }

        Outcome<Family> outcome = FamilyReader.ReadText(one.Files[0].Text, one.Files[0].File, standard.CatalogueOf());
        Assert.Equal("", TestCatalogue.Told(outcome.Problems));
        return Linting.Look(outcome.Value!, standard);
    }
}
