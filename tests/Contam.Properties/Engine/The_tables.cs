using Contam.Authoring;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Problems;
using Contam.Support;

namespace Contam.Properties.Engine;

/// <summary>A family written as tables and read back says the same.</summary>
public class The_tables
{
    [Fact]
    public void Lose_nothing_that_they_can_say() => ForEvery.Case(whole =>
    {
        // No file may join a part to itself.
        Family family = SystemBuilder.Build(whole.Family.Parts, whole.Family.Joints.Where(joint => joint.From != joint.To), whole.Family.States);
        Outcome<string> text = FamilyFromTables.Write(
            "again", new TableFile("joints.csv", Written(FamilyTables.Joints(family))), new TableFile("parts.csv", Written(FamilyTables.Parts(family))), whole.Catalogue);
        Assert.Equal([], text.Problems.Where(problem => problem.Severity == Severity.Error));
        Family again = FamilyReader.ReadText(text.Value!, "again.yaml", whole.Catalogue).Value!;

        Assert.Equal(family.Parts.Select(Said), again.Parts.Select(Said));
        Assert.Equal(JointsOf(family), JointsOf(again));
    });

    // Every cell in quotes, as some spreadsheets do.
    private static string Written(Table table) => string.Concat(table.Rows.Insert(0, table.Titles).Select(row =>
        string.Join(',', row.Select(cell => "\"" + cell.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"")) + "\n"));

    /// <summary>Everything that a part says, as words; places are left out.</summary>
    private static string Said(Part part) => string.Join(" | ",
    [
        part.Id.Value, part.Name, part.Kind.Name,
        string.Join(',', part.Sheds.Select(shed => $"{shed.Debris.Name} {shed.Likely} {shed.UpTo} {shed.Magnetic} {shed.Form}")),
        string.Join(',', part.Holds.Select(hold => $"{hold.Debris.Name} {hold.Above}")),
        $"{part.RatingIsSaid} {part.HasAbsoluteRating} {part.HasBypass} {part.Passage} {part.Clearance} {part.ClearedBy} {part.TestAt} {part.IsRemovable}",
        string.Join(',', part.Access), string.Join(',', part.StandsOn), $"{part.RidesOn} {part.Assembly}", string.Join(',', part.Together), string.Join(',', part.Seals),
        part.Inspect is { } look ? $"{look.Minutes} {look.Shows} {look.How} {look.UsesUp} {look.TakesOff} {(look.Access is { } access ? "[" + string.Join(',', access) + "]" : "")}" : "",
        part.SendOut is { } away ? $"{away.Days} {away.Who}" : "",
        $"{part.Minutes} {part.Lead} {part.Volume} {part.Bore} {part.Length}", string.Join(',', part.Meant.Select(meant => meant.Code + meant.Why)),
    ]);

    private static IEnumerable<string> JointsOf(Family family) =>
        // What is never open in any state of this family is no joint: the tables leave it out.
        family.Joints.Where(joint => joint.When != EngineStates.None).Select(joint => $"{joint.Circuit} {joint.From} {joint.To} {joint.When} {joint.OnlyIfFailed} {joint.Passage}").Distinct().Order(StringComparer.Ordinal);
}
