using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Reports.Text;
using Contam.Support;
using Contam.Treatment.Reading;

namespace Contam.Reports.Tests.Text;

/// <summary>
/// How much a person has to read. Words are what has a letter or a digit in it; a box to tick is none. The bounds stand a little above what is reached.
/// </summary>
public sealed class Words_that_are_printed
{
    private const int EachFailure = 40;

    public static TheoryData<string> Families =>
        [.. Directory.GetFiles(RepositoryFiles.At("systems/families"), "*.yaml").Order(StringComparer.Ordinal).Select(file => Path.GetFileNameWithoutExtension(file)!)];

    // The aims are 3,000 and 6,000.
    [Theory]
    [InlineData("harbour-diesel-i4", "injection-pump", 3_150)]
    [InlineData("estuary-v6-outboard", "compressor", 6_650)]
    public void Are_few(string name, string failed, int most)
    {
        int words = WritingRules.Words(string.Join('\n', Printed(Family(name), Plan(Family(name), failed, "metal", HowFar.MostLooks))));
        TestContext.Current.TestOutputHelper?.WriteLine($"{name} {failed}: {words} words");
        Assert.InRange(words, 500, most);
    }

    /// <summary>What the report says itself, between the texts of the standard: the sentences of simplified technical English, rule 6.3, have at most 25 words. Lists are no sentences.</summary>
    [Theory]
    [MemberData(nameof(Families))]
    public void Stand_in_short_sentences_where_the_report_says_them(string name)
    {
        Family family = Family(name);
        foreach ((string failed, string debris) in Failures(family).Where((_, index) => index % EachFailure == 0))
        {
            PlanDocument plan = Plan(family, failed, debris, HowFar.MostLooks);
            string[] lines = Printed(family, plan);
            HashSet<string> given = [.. plan.Steps.Select(step => step.Text).Concat(plan.Methods.Select(method => method.Text)).Concat(plan.Cautions.Select(caution => caution.Text)).SelectMany(WritingRules.Sentences)];
            string[] own =
            [
                .. lines.TakeWhile(line => line != "BEFORE THE WORK").Concat(lines.SkipWhile(line => line != "HOURS")).Concat(lines.Where(line => line.Contains("[ ] ", StringComparison.Ordinal)))
                    .Where(line => !line.StartsWith("At the bench", StringComparison.Ordinal) && !line.StartsWith('!'))
                    .SelectMany(WritingRules.Sentences)
                    .Where(sentence => !given.Any(text => sentence.EndsWith(text, StringComparison.Ordinal) || text.Contains(sentence, StringComparison.Ordinal))),
            ];
            Assert.True(own.Length > 10);
            Assert.Equal([], own.Where(sentence => WritingRules.Words(sentence) > WritingRules.MostInDescription && sentence.Count(one => one == ',') < 3));
            Assert.Equal([], own.SelectMany(WritingRules.BannedIn));
        }
    }

    private static Family Family(string name) => FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;

    private static IEnumerable<(string Failed, string Debris)> Failures(Family family) =>
        family.Parts.SelectMany(part => BuiltInStandards.HouseOverKinds.CatalogueOf().Debris.Where(debris => part.ShedOf(debris) is not null).Select(debris => (part.Id.Value, debris.Name)));

    private static PlanDocument Plan(Family family, string failed, string debris, int looks) =>
        Planner.Plan(new PlanRequest(family, BuiltInStandards.HouseOverKinds, [new PartId(failed)], [BuiltInStandards.HouseOverKinds.CatalogueOf().FindDebris(debris)!]) { MostLooks = looks });

    // So wide that nothing is folded.
    private static string[] Printed(Family family, PlanDocument plan)
    {
        using var text = new StringWriter();
        PlanText.Write(plan, family, text, new TextLook(100_000, HasColour: false));
        return text.ToString().Split('\n');
    }
}
