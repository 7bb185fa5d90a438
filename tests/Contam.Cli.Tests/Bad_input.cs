namespace Contam.Cli.Tests;

/// <summary>Every slip that a newcomer makes gets a message with its place and its mend, exit status 2, and nothing on standard output.</summary>
public class Bad_input
{
    private const string Engine = """
        format: 1
        family: engine
        parts:
          pump: {kind: pump, sheds: {metal: common}}
          hose: {kind: hose, bore: 9 mm}
          injector-#: {kind: injector, count: 4}
          tank: {kind: tank}
        circuits:
          fuel:
            runs:
              - [tank, hose, pump, injector-#, tank]
        """;

    [Fact]
    public void A_file_that_is_missing() => Refuses(
        CommandSession.Of("plan no-such-engine.yaml --failed pump"),
        """
        error: there is no file `no-such-engine.yaml` [file-missing]
          check the name and the folder
        """);

    [Theory]
    [InlineData("two")]
    [InlineData("0")]
    [InlineData("101")]
    public void A_number_of_technicians_that_is_none(string given) => Refuses(
        CommandSession.Of($"plan systems/families/outboard-gearcase.yaml --failed pinion --technicians {given}"),
        $"""
        contam: --technicians takes a whole number from 1 to 100, got `{given}`.
          contam plan --help shows how it is used.
        """);

    [Fact]
    public void An_empty_file() => RefusesFile(
        "",
        """
        engine.yaml:1:1: error: the file says nothing [file-empty]
          begin with `format: 1`
        """);

    [Fact]
    public void A_binary_file() => Refuses(
        CommandSession.About([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0x00, 0x00, 0xFF], file => $"plan {file} --failed pump"),
        """
        engine.yaml:1:1: error: this is a picture, and a text file is due [not-text]
          name the text file, whose name usually ends in `.yaml`
        """);

    [Fact]
    public void A_file_that_is_no_yaml() => RefusesFile(
        "format: 1\nfamily: [engine\nparts: {}\n",
        """
        engine.yaml:3:1: error: the `[` of line 2 is not closed, or a comma is missing before this [bracket-not-closed]
          close it with `]`, and part its entries with commas
          see also engine.yaml:2:9
        """);

    [Fact]
    public void An_unknown_key() => RefusesFile(
        Engine.Replace("bore: 9 mm", "boer: 9 mm", StringComparison.Ordinal),
        """
        engine.yaml:5:22: error: a part has no key `boer` [unknown-key]
          did you mean `bore`?
        """);

    [Fact]
    public void A_key_that_stands_twice() => RefusesFile(
        Engine.Replace("bore: 9 mm", "bore: 9 mm, bore: 8 mm", StringComparison.Ordinal),
        """
        engine.yaml:5:34: error: the key `bore` stands twice, first on line 5 [duplicate-key]
          keep one of the two
          see also engine.yaml:5:22
        """);

    [Fact]
    public void A_wrong_unit() => RefusesFile(
        Engine.Replace("bore: 9 mm", "bore: 9 bar", StringComparison.Ordinal),
        """
        engine.yaml:5:30: error: a length (um, mm, m, thou, in) is due, got `9 bar` [wrong-unit]
          write a length, for instance `25 um`, or move the figure to the key that it belongs to
        """);

    [Fact]
    public void A_part_that_is_not_described() => RefusesFile(
        Engine.Replace("[tank, hose, pump", "[tank, hoes, pump", StringComparison.Ordinal),
        """
        engine.yaml:11:16: error: there is no part `hoes` [unknown-part]
          did you mean `hose`?
        """);

    [Fact]
    public void Counts_that_do_not_match() => RefusesFile(
        Engine.Replace("  tank: {kind: tank}", "  tank: {kind: tank}\n  cylinder-#: {kind: cylinder, count: 3}", StringComparison.Ordinal)
            .Replace("injector-#, tank]", "injector-#, cylinder-#]", StringComparison.Ordinal),
        """
        engine.yaml:12:40: error: `injector-#` stands 4 times and `cylinder-#` 3 times, so they cannot go number to number [counts-differ]
          make the counts equal, or name the parts one by one
          see also engine.yaml:6:3
          see also engine.yaml:8:3
        """);

    [Fact]
    public void Several_slips_are_told_in_one_go() => RefusesFile(
        Engine.Replace("bore: 9 mm", "bore: 9", StringComparison.Ordinal).Replace("kind: tank", "kind: tnak", StringComparison.Ordinal),
        """
        engine.yaml:5:29: error: `9` has no unit [missing-unit]
          a length is written in um, mm, m, thou or in
        engine.yaml:7:16: error: there is no kind `tnak` [unknown-kind]
          did you mean `tank`?
        """);

    [Fact]
    public void A_failed_part_that_does_not_exist() => Refuses(
        CommandSession.Of("plan systems/families/harbour-diesel-i4.yaml --failed injection-pmup --debris metal"),
        "contam: there is no part injection-pmup in harbour-diesel-i4. Did you mean injection-pump? contam parts systems/families/harbour-diesel-i4.yaml lists them.");

    [Fact]
    public void A_repeated_part_without_its_number() => Refuses(
        CommandSession.Of("plan systems/families/harbour-diesel-i4.yaml --failed injector --debris metal"),
        "contam: injector stands 4 times in harbour-diesel-i4. Say which: injector-1 to injector-4.");

    [Fact]
    public void An_unknown_debris() => Refuses(
        CommandSession.Of("plan systems/families/harbour-diesel-i4.yaml --failed injection-pump --debris steel"),
        "contam: there is no debris steel. The standard knows metal, rubber, water.");

    [Fact]
    public void Nothing_failed() => Refuses(
        CommandSession.Of("plan systems/families/harbour-diesel-i4.yaml --debris metal"),
        "contam: nothing has failed and nothing was found. Name the failed part with --failed PART, or say where debris was found with --found PART=DEBRIS.");

    [Fact]
    public void A_find_without_debris() => Refuses(
        CommandSession.Of("plan systems/families/harbour-diesel-i4.yaml --found rail"),
        "contam: --found rail does not say what was found. Write --found rail=metal, or --found rail=metal:120um.");

    [Fact]
    public void An_option_that_there_is_not() => Refuses(
        CommandSession.Of("plan systems/families/harbour-diesel-i4.yaml --faild injection-pump"),
        """
        contam: contam plan has no option --faild. Did you mean --failed?
          contam plan --help shows how it is used.
        """);

    [Fact]
    public void A_format_that_there_is_not()
    {
        CommandSession session = CommandSession.Of("plan systems/families/harbour-diesel-i4.yaml --failed injection-pump --format xml");
        Assert.Equal((2, ""), (session.Exit, session.Out));
        Assert.Contains("xml", session.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Terminal_escapes_in_what_was_typed_are_not_obeyed() => Assert.DoesNotContain(
        '\u001b', CommandSession.Of(["plan", "systems/families/harbour-diesel-i4.yaml", "--failed", "a\u001b[31mb"]).Error);

    [Fact]
    public void A_plan_that_is_none() => Refuses(
        CommandSession.Of("verify README.md systems/families/harbour-diesel-i4.yaml"),
        "contam: README.md is not a plan: line 1: '#' is an invalid start of a value. Give a file written by contam plan --format json.");

    private static void RefusesFile(string family, string expected) => Refuses(CommandSession.About(family, file => $"plan {file} --failed pump"), expected);

    private static void Refuses(CommandSession session, string expected)
    {
        Assert.Equal(expected + "\n", session.Error);
        Assert.Equal("", session.Out);
        Assert.Equal(2, session.Exit);
    }
}
