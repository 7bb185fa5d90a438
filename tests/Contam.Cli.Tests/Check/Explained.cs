using Contam.Problems;
using Contam.Reports;
using Contam.Support;

namespace Contam.Cli.Tests.Check;

/// <summary>What stands behind the codes: <c>check --explain</c>, and <c>systems/problems.md</c>.</summary>
public class Explained
{
    public static TheoryData<string> Codes => [.. ProblemCodes.All.Select(code => code.Code)];

    [Fact]
    public void Is_a_page_with_meaning_example_and_mend()
    {
        CommandSession session = CommandSession.Of("check --explain dead-end");
        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.Equal(
            """
            dead-end (lint)
              A run ends at a part from which fluid must go on: its kind does not say
              `fluid-may-end`, and no other run or link leads on from it.

            EXAMPLE
              runs: [[tank, pump, filter]]

            WHAT TO DO
              Write where the fluid goes from there: a return, a drain, a leak-off.

            WHERE IT IS MEANT SO
              Say so on the part or on the circuit, with the reason:
                meant: {dead-end: the drain ends over the side}

            """,
            session.Out);
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Holds_every_code(string code)
    {
        ProblemCode known = ProblemCodes.Find(code)!;
        CommandSession page = CommandSession.Of($"check --explain {code}", width: 2000);
        Assert.Equal((0, ""), (page.Exit, page.Error));
        Assert.Contains(known.Meaning, page.Out, StringComparison.Ordinal);
        Assert.Contains(known.Mend, page.Out, StringComparison.Ordinal);
        Assert.All(known.Example.Split('\n'), line => Assert.Contains("  " + line + "\n", page.Out, StringComparison.Ordinal));
        Assert.Contains($"  {code} ", CommandSession.Of("check --explain", width: 2000).Out, StringComparison.Ordinal);
        Assert.Contains($"\n### `{code}`\n", ProblemCodeMarkdown.Write(), StringComparison.Ordinal);
    }

    [Fact]
    public void Is_the_document_in_the_repository()
    {
        string path = RepositoryFiles.At("systems/problems.md");
        if (Environment.GetEnvironmentVariable("CONTAM_UPDATE_CASES") == "1")
            File.WriteAllText(path, ProblemCodeMarkdown.Write());
        Assert.Equal(File.ReadAllText(path), ProblemCodeMarkdown.Write());
    }

    [Fact]
    public void Offers_the_nearest_code() => Refuses(
        "check --explain daed-end", "contam: there is no code `daed-end`. Did you mean dead-end? contam check --explain lists all.\n");

    [Fact]
    public void Takes_no_file_beside_it() => Refuses(
        "check systems/families/harbour-diesel-i4.yaml --explain dead-end", "contam: --explain explains a code and checks no file. Leave one of the two out.\n");

    [Fact]
    public void Is_offered_where_nothing_is_named() => Refuses(
        "check", "contam: no file is named. contam check FILE… checks files; contam check --explain lists what it can say.\n");

    private static void Refuses(string words, string message)
    {
        CommandSession session = CommandSession.Of(words);
        Assert.Equal((2, "", message), (session.Exit, session.Out, session.Error));
    }
}
