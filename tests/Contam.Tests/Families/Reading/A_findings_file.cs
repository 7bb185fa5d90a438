using Contam.Families;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;
using Contam.Problems;
using Contam.Support.Notation;

namespace Contam.Tests.Families.Reading;

public sealed class A_findings_file
{
    private static readonly Catalogue Known = new([], [Debris.Metal, Debris.Rubber, Debris.Water]);

    [Fact]
    public void Says_what_was_found_what_was_clean_and_what_could_not_be_told()
    {
        FindingsSheet sheet = Read(
            """
            - {part: filter, debris: metal, found: true, size: 120 um, form: flakes, magnetic: false, by: night shift}
            - {part: tank, found: false}
            - {part: pump, failed: true}
            - {part: rail, debris: rubber, cannot-tell: true}
            - {part: tank, cannot-tell: true}
            """).Value!;
        Assert.Equal(
            [
                new Finding(new PartId("filter"), Debris.Metal, Found: true) { Size = ParticleSize.FromMicrometres(120), Form = DebrisForm.Flakes, Magnetic = false, By = "night shift" },
                new Finding(new PartId("tank"), Debris.Metal, Found: false),
            ],
            sheet.Findings);
        Assert.Equal([new PartId("pump")], sheet.Failed);
        Assert.Equal([(new PartId("rail"), Debris.Rubber), (new PartId("tank"), Debris.Metal)], sheet.CannotTell);
    }

    [Theory]
    [InlineData("- {part: rail}", "f.yaml:1:4: the finding at `rail` does not say what was seen; add `found: true` or `found: false`, `failed: true` where the part itself has failed, or `cannot-tell: true`")]
    [InlineData("- {part: rail, found: true, cannot-tell: true, debris: metal}", "f.yaml:1:29: the finding at `rail` says what was seen and that it cannot be told; keep one of the two")]
    [InlineData("- {part: rail, found: true, debris: metal, form: flake}", "f.yaml:1:50: the form of debris is flakes, slivers, grains or fuzz, got `flake`; did you mean `flakes`?")]
    [InlineData("- {part: rail, found: true, debris: metal, canot-tell: true}", "f.yaml:1:44: a finding has no key `canot-tell`; did you mean `cannot-tell`?")]
    public void Is_told_what_is_wrong(string text, string expected) =>
        Assert.Equal(expected, string.Join('\n', Read(text).Problems.Select(problem => $"{problem.Place}: {problem.Text}; {problem.Mend}")));

    [Fact]
    public void Is_taken_in_within_the_limits_of_the_call()
    {
        const string One = "- {part: pump, debris: metal, found: true}\n";
        Outcome<FindingsSheet> narrow = FindingsReader.ReadText(One, "f.yaml", CaseReader.System("pump > filter"), Known, [Debris.Metal], new ReadLimits { FileBytes = One.Length - 1 });

        Assert.Equal([ProblemCodes.FileTooLarge], narrow.Problems.Select(problem => problem.Code));
        Assert.Empty(Read(One).Problems);
    }

    private static Outcome<FindingsSheet> Read(string text) => FindingsReader.ReadText(text, "f.yaml", CaseReader.System("pump > filter > rail > tank"), Known, [Debris.Metal]);
}
