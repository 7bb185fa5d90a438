namespace Contam.Cli.Tests;

/// <summary><c>contam start --from</c> and <c>contam parts --format csv</c>: a family as a spreadsheet keeps it.</summary>
public sealed class From_a_table : IDisposable
{
    private const string Joints = """
        circuit,from,to,fluid,when,passage,only-if-failed,both-ways
        hydraulic,Oil tank,winch pump,hydraulic-oil,,,,
        hydraulic,winch pump,control valve,,,,,
        hydraulic,control valve,Oil tank,,,,,
        hydraulic,winch pump,relief-valve,,,,,
        hydraulic,relief-valve,Oil tank,,,,,
        hydraulic,Oil tank,breather,,stopped,,,yes
        hydraulic,control valve,winch pump,,,4 mm,relief-valve,
        """;

    private const string Parts = """
        id;kind;name;sheds;holds;rating;access;look-minutes;look-shows;look-how;volume
        oil tank;tank;;;;;;10;good;draw a litre, and let it stand;40 L
        winch pump;pump;Pump of the winch;"metal common 500 um magnetic flakes; rubber rare";;;;;;;
        control valve;valve;;;metal 10 um;nominal;winch pump;;;;
        relief-valve;;?;?;;;;;;;
        breather;;;;;;;;;;
        """;

    private readonly DirectoryInfo here = Directory.CreateTempSubdirectory("contam");

    public static TheoryData<string> Shipped => A_start.Shipped;

    public void Dispose() => here.Delete(recursive: true);

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Comes_back_as_it_was_written(string family)
    {
        Assert.Equal(0, CommandSession.Of($"parts {family} --format csv --into {At("tables")}").Exit);
        CommandSession started = CommandSession.Of($"start {At("again")} --from {At("tables/joints.csv")}");
        Assert.Equal((0, ""), (started.Exit, started.Error));

        Assert.Equal(0, CommandSession.Of($"parts {At("again/again.yaml")} --format csv --into {At("second")}").Exit);
        Assert.Equal(File.ReadAllText(At("tables/parts.csv")), File.ReadAllText(At("second/parts.csv")));
        Assert.Equal(Sorted(At("tables/joints.csv")), Sorted(At("second/joints.csv")));
        Assert.Equal(File.ReadAllText(At("tables/parts.csv")), CommandSession.Of($"parts {family} --format csv").Out);
        Assert.Equal(File.ReadAllText(At("tables/joints.csv")), CommandSession.Of($"parts {family} --format csv --joints").Out);
    }

    [Fact]
    public void Reads_what_people_keep_in_spreadsheets()
    {
        CommandSession started = Start(Joints, Parts);

        Assert.Equal((0, ""), (started.Exit, started.Error));
        Assert.Equal("""
            parts:
              oil-tank: {kind: tank, inspect: {minutes: 10, shows: good, how: 'draw a litre, and let it stand'}, volume: 40 L}
              winch-pump:
                kind: pump
                name: Pump of the winch
                sheds: {metal: {likely: common, up-to: 500 um, magnetic: true, form: flakes}, rubber: rare}
              control-valve: {kind: valve, holds: {metal: 10 um}, rating: nominal, access: [winch-pump]}
              relief-valve: {kind: relief-valve}   # not known: name, sheds
              breather: {kind: breather}

            circuits:
              hydraulic:
                fluid: hydraulic-oil
                runs:
                  - [oil-tank, winch-pump, control-valve, oil-tank]
                  - [winch-pump, relief-valve, oil-tank]

            links:
              - {from: oil-tank, to: breather, circuit: hydraulic, when: [stopped], both-ways: true}
              - {from: control-valve, to: winch-pump, circuit: hydraulic, passage: 4 mm, only-if-failed: relief-valve}

            """, Written()[Written().IndexOf("parts:", StringComparison.Ordinal)..]);
    }

    [Fact]
    public void Takes_kinds_from_names_where_there_is_no_table_of_parts()
    {
        Assert.Equal(0, Start(Joints, null).Exit);
        Assert.Contains("  winch-pump: {kind: pump}   # kind taken from its name\n", Written(), StringComparison.Ordinal);
        Assert.Contains("  breather: {kind: breather}", Written(), StringComparison.Ordinal);
    }

    [Fact]
    public void Reads_tabs_marks_and_line_ends_as_every_spreadsheet_writes_them()
    {
        Assert.Equal(0, Start(Joints, Parts).Exit);
        string plain = Written();
        Directory.Delete(At("winch"), recursive: true);

        Assert.Equal(0, Start("\uFEFF" + Joints.Replace(',', '\t').Replace("\n", "\r\n", StringComparison.Ordinal) + "\r\n\t\t\t\r\n", "\uFEFF" + Parts.Replace("\n", "\r", StringComparison.Ordinal)).Exit);
        Assert.Equal(plain, Written());
    }

    public static TheoryData<string, string, string, string, string> Mistakes => new()
    {
        { "a title mistyped", "circuit,from,to", "circut,from,to", "", "joints.csv:1:1: error: row 1: there is no column `circut` [bad-table]\n  did you mean `circuit`?\njoints.csv:1:1: error: row 1: the column `circuit` is missing [bad-table]\n  the first row names the columns: circuit, from, to, and others as needed\n" },
        { "a part mistyped", "relief-valve,Oil tank", "releif-valve,Oil tank", "", "joints.csv:6:2: error: row 6, column from: there is no part `releif-valve` [unknown-part]\n  did you mean `relief-valve`?\n" },
        { "a part without a row", "relief-valve,Oil tank", "cooler,Oil tank", "", "joints.csv:6:2: error: row 6, column from: there is no part `cooler` [unknown-part]\n  give it a row in the table of parts\n" },
        { "an empty circuit", "hydraulic,control valve,Oil", ",control valve,Oil", "", "joints.csv:4:1: error: row 4, column circuit: nothing is written here [bad-table]\n  every row names its circuit, and the parts that the joint leads from and to\n" },
        { "a part joined to itself", "control valve,Oil tank", "control valve,control valve", "", "joints.csv:4:3: error: row 4, column to: `control-valve` is joined to itself [joined-to-itself]\n  take one of the two out, or name the part that was meant\n" },
        { "two fluids", "winch pump,control valve,", "winch pump,control valve,engine-oil", "", "joints.csv:3:4: error: row 3, column fluid: the fluid of `hydraulic` is `engine-oil` here and `hydraulic-oil` above [fluids-differ]\n  a circuit has one fluid: correct one of the two, or make two circuits\n" },
        { "a state mistyped", "breather,,stopped", "breather,,stoped", "", "joints.csv:7:5: error: row 7, column when: when it is open is running, cranking or stopped, got `stoped` [bad-choice]\n  did you mean `stopped`?\n" },
        { "a decimal comma", "4 mm,relief-valve,", "\"4,5 mm\",relief-valve,", "", "joints.csv:8:6: error: row 8, column passage: a comma stands in the number `4,5 mm` [decimal-comma]\n  write a decimal point: `4.5 mm`\n" },
        { "a kind mistyped", "", "oil tank;tank", "oil tank;tnak", "parts.csv:2:2: error: row 2, column kind: there is no kind `tnak` [unknown-kind]\n  did you mean `tank`?\n" },
        { "debris mistyped", "", "metal common 500", "metall common 500", "parts.csv:3:4: error: row 3, column sheds: there is no debris `metall` [unknown-debris]\n  did you mean `metal`?\n" },
        { "a word that says nothing of what is shed", "", "metal common 500", "metal often 500", "parts.csv:3:4: error: row 3, column sheds: `often` says nothing of what is shed [bad-table]\n  write debris, how likely, and if known a size and looks: `metal common 400 um magnetic flakes`\n" },
        { "a size without its unit", "", "metal 10 um", "metal 10", "parts.csv:4:5: error: row 4, column holds: `10` has no unit [missing-unit]\n  a length is written in um, mm, m, thou or in\n" },
        { "a part twice", "", "\nbreather;", "\nbreather;\nbreather;", "parts.csv:7:1: error: row 7, column id: the part `breather` has a row already, row 6 [duplicate-id]\n  keep one of the two, or give one of them another id\n" },
        { "a quote not closed", "", "rubber rare\"", "rubber rare", "parts.csv:3:1: error: row 3: a quote that opens here is not closed [bad-table]\n  close it with `\"`; a quote within a cell is written twice\n" },
        { "a cell too many", "4 mm,relief-valve,", "4 mm,relief-valve,,,see drawing", "", "joints.csv:8:9: error: row 8: a cell stands beyond the last column that has a title [bad-table]\n  put a cell that holds a comma in double quotes, or give the column its title\n" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void Says_row_and_column_of_what_is_wrong(string what, string first, string second, string third, string said)
    {
        // The change is made in the joints where a first text is given, else in the parts.
        CommandSession started = first.Length > 0 ? Start(Once(Joints, first, second), Parts) : Start(Joints, Once(Parts, second, third));

        Assert.True(started.Error.StartsWith(said, StringComparison.Ordinal), $"{what}:\n{started.Error}");
        Assert.Equal(1, started.Exit);
        Assert.False(Directory.Exists(At("winch")));
    }

    [Fact]
    public void Says_what_to_do_with_a_workbook()
    {
        File.WriteAllBytes(At("joints.csv"), [.. "PK"u8, 3, 4, 0]);
        CommandSession started = CommandSession.Of($"start {At("winch")} --from {At("joints.csv")}");
        Assert.Equal((2, $"contam: {At("joints.csv")} is no table: this is a zip archive, as spreadsheets and word processors write, and a text file is due. Save it in the spreadsheet as comma-separated values (CSV, UTF-8) and name that file.\n"), (started.Exit, started.Error));
    }

    [Fact]
    public void Takes_the_apostrophe_off_that_keeps_formulas_away()
    {
        Assert.Equal(0, Start(Joints, Parts.Replace("Pump of the winch", "'=1+1", StringComparison.Ordinal)).Exit);
        Assert.Contains("name: '=1+1'", Written(), StringComparison.Ordinal);
    }

    private static string Once(string text, string found, string written)
    {
        int at = text.IndexOf(found, StringComparison.Ordinal);
        Assert.True(at >= 0 && text.IndexOf(found, at + 1, StringComparison.Ordinal) < 0, $"`{found}` does not stand once in the table");
        return text[..at] + written + text[(at + found.Length)..];
    }

    private CommandSession Start(string joints, string? parts)
    {
        File.WriteAllText(At("joints.csv"), joints);
        if (parts is not null)
            File.WriteAllText(At("parts.csv"), parts);
        CommandSession session = CommandSession.Of($"start {At("winch")} --from {At("joints.csv")}");
        return session with { Error = session.Error.Replace(here.FullName + "/", "", StringComparison.Ordinal) };
    }

    private string Written() => File.ReadAllText(At("winch/winch.yaml"));

    private string At(string path) => Path.Combine(here.FullName, path);

    private static string[] Sorted(string file) => [.. File.ReadAllLines(file).Order(StringComparer.Ordinal)];
}
