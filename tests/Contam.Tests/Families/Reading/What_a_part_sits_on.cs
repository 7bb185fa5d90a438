using Contam.Families;
using Contam.Families.Reading;

namespace Contam.Tests.Families.Reading;

/// <summary>What parts say of each other: what they stand on, ride on, are inside of and are renewed with.</summary>
public class What_a_part_sits_on
{
    [Fact]
    public void Is_one_part_or_a_list() => Check(
        """
        block: {kind: pump}
        case: {kind: pump}
        head: {kind: pump, stands-on: block}
        cover: {kind: pump, stands-on: [head, case], assembly: case}
        plate: {kind: pump, rides-on: cover, assembly: head}
        """,
        "head: stands on block",
        "cover: stands on head case, inside of case",
        "plate: rides on cover, inside of head");

    [Fact]
    public void Goes_number_to_number_between_repeats() => Check(
        """
        piston-#: {kind: pump, count: 2, rides-on: rod-#, assembly: rod-#}
        rod-#: {kind: pump, count: 2, stands-on: [crank, bearing-#], assembly: crank}
        crank: {kind: pump, stands-on: bearing-#}
        bearing-#: {kind: pump, count: 2}
        last: {kind: pump, rides-on: rod-2}
        """,
        "piston-1: rides on rod-1, inside of rod-1",
        "piston-2: rides on rod-2, inside of rod-2",
        "rod-1: stands on crank bearing-1, inside of crank",
        "rod-2: stands on crank bearing-2, inside of crank",
        "crank: stands on bearing-1 bearing-2",
        "last: rides on rod-2");

    [Fact]
    public void Is_renewed_with_whatever_its_set_is_renewed_with() => Check(
        """
        a: {kind: pump, together: c}
        b: {kind: pump}
        c: {kind: pump, together: [d]}
        d: {kind: pump}
        e: {kind: pump, together: d}
        f: {kind: pump, together: g-#}
        g-#: {kind: pump, count: 2}
        h-#: {kind: pump, count: 2, together: k-#}
        k-#: {kind: pump, count: 2}
        """,
        "a: with a c d e",
        "c: with a c d e",
        "d: with a c d e",
        "e: with a c d e",
        "f: with f g-1 g-2",
        "g-1: with f g-1 g-2",
        "g-2: with f g-1 g-2",
        "h-1: with h-1 k-1",
        "h-2: with h-2 k-2",
        "k-1: with h-1 k-1",
        "k-2: with h-2 k-2");

    [Fact]
    public void Is_looked_for_with_the_prefix_of_its_module_first()
    {
        using var folder = new TestFolder(
        [
            ("bank.yaml", """
                format: 1
                parts:
                  head: {kind: pump, stands-on: block, together: gasket}
                  gasket: {kind: pump, rides-on: head, assembly: head}
                """),
            ("f.yaml", """
                format: 1
                family: f
                use:
                  - {module: bank.yaml, prefix: port-}
                adjust:
                  port-gasket: {rides-on: block}
                parts:
                  block: {kind: pump}
                """),
        ]);
        Outcome<Family> outcome = FamilyReader.ReadFile(folder.PathOf("f.yaml"), TestCatalogue.Value);
        Assert.Equal("", TestCatalogue.Told(outcome.Problems));
        Assert.Equal(
            ["port-head: stands on block, with port-head port-gasket", "port-gasket: rides on block, with port-head port-gasket, inside of port-head"],
            Said(outcome.Value!));
    }

    [Fact]
    public void Is_kept_when_the_same_parts_are_put_in_place()
    {
        Family family = Read("head: {kind: pump, stands-on: block}\nblock: {kind: pump}", "machine: gearbox\n");
        Family copy = family.WithParts(family.Parts);
        Assert.Equal(Machine.Gearbox, copy.Machine);
        Assert.Equal(Said(family), Said(copy));
    }

    [Theory]
    [InlineData("", Machine.Engine)]
    [InlineData("machine: engine\n", Machine.Engine)]
    [InlineData("machine: gearcase\n", Machine.Gearcase)]
    [InlineData("machine: gearbox\n", Machine.Gearbox)]
    [InlineData("machine: hydraulic-unit\n", Machine.HydraulicUnit)]
    public void Belongs_to_a_machine(string said, Machine expected) => Assert.Equal(expected, Read("a: {kind: pump}", said).Machine);

    private static void Check(string parts, params string[] expected) => Assert.Equal(expected, Said(Read(parts)));

    private static Family Read(string parts, string head = "")
    {
        Outcome<Family> outcome = TestCatalogue.Read($"format: 1\nfamily: f\n{head}parts:\n  {parts.ReplaceLineEndings("\n  ")}\n");
        Assert.Equal("", TestCatalogue.Told(outcome.Problems));
        return outcome.Value!;
    }

    private static string[] Said(Family family) => [.. family.Parts.Select(Words).Where(words => !words.EndsWith(": ", StringComparison.Ordinal))];

    private static string Words(Part part) => $"{part.Id}: " + string.Join(", ", new[]
    {
        part.StandsOn.IsEmpty ? "" : "stands on " + string.Join(' ', part.StandsOn),
        part.RidesOn is PartId carrier ? $"rides on {carrier}" : "",
        part.Together.IsEmpty ? "" : "with " + string.Join(' ', part.Together),
        part.Assembly is PartId whole ? $"inside of {whole}" : "",
    }.Where(word => word.Length > 0));
}
