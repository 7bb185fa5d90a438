namespace Contam.Cli.Tests.Describe;

/// <summary><c>contam describe</c>: an engine by question and answer, which can be stopped, taken up, undone and corrected anywhere.</summary>
public sealed class A_description : IDisposable
{
    /// <summary>The deck winch of the guide, as somebody answers who follows its hoses.</summary>
    private static readonly string[] Winch =
    [
        "hydraulic-unit", "hydraulic", "hydraulic-oil", "oil tank", "suction strainer", "winch pump", "pressure hose", "control valve", "winch motor", "hydraulic-motor", "return filter", "oil tank",
        "", "", "relief valve", "oil tank", "", "", "", "case drain", "hose", "oil tank", "", "", "", "",
        "no", "", "10 good draw half a litre from the bottom into a clear jar",
        "metal 150 um", "no", "no", "", "", "",
        "metal common 500 um", "pressure hose", "",
        "rubber occasional", "", "",
        "", "", "",
        "metal occasional", "", "",
        "metal 10 um, rubber 10 um", "yes", "no", "", "", "",
        "", "", "",
        "", "", "",
        "",
    ];

    private const string ByHand = """
        format: 1
        family: winch
        machine: hydraulic-unit
        title: Winch
        fluids: {hydraulic-oil: {}}
        parts:
          oil-tank: {kind: tank, inspect: {minutes: 10, shows: good, how: draw half a litre from the bottom into a clear jar}}
          suction-strainer: {kind: strainer, holds: {metal: 150 um}, rating: nominal}
          winch-pump: {kind: pump, sheds: {metal: {likely: common, up-to: 500 um}}, access: [pressure-hose]}
          pressure-hose: {kind: hose, sheds: {rubber: occasional}}
          control-valve: {kind: valve}
          winch-motor: {kind: hydraulic-motor, sheds: {metal: occasional}}
          return-filter: {kind: filter, holds: {metal: 10 um, rubber: 10 um}, rating: absolute}
          relief-valve: {kind: relief-valve}
          case-drain: {kind: hose}
        circuits:
          hydraulic:
            fluid: hydraulic-oil
            runs:
              - [oil-tank, suction-strainer, winch-pump, pressure-hose, control-valve, winch-motor, return-filter, oil-tank]
              - [winch-pump, relief-valve, oil-tank]
              - [winch-motor, case-drain, oil-tank]
        """;

    private readonly DirectoryInfo here = Directory.CreateTempSubdirectory("contam");

    public void Dispose() => here.Delete(recursive: true);

    [Fact]
    public void Is_the_family_that_a_person_would_write()
    {
        CommandSession described = Type(Winch);

        Assert.Equal((0, ""), (described.Exit, described.Error));
        Assert.Contains($"\n{Winch.Length} questions. ", described.Out, StringComparison.Ordinal);
        Assert.Equal(PartsOf(ByHandAt("by-hand.yaml")), PartsOf(At("winch/winch.yaml")));
        Assert.Equal("1 file: no errors, no warnings.\n", CommandSession.Of($"check {At("winch/winch.yaml")}").Out);
    }

    [Fact]
    public void Is_written_as_a_person_writes()
    {
        Type(Winch);
        Assert.Equal("""
            format: 1
            family: winch
            machine: hydraulic-unit
            title: Winch

            fluids:
              hydraulic-oil: {}

            parts:
              oil-tank:
                kind: tank
                inspect: {minutes: 10, shows: good, how: draw half a litre from the bottom into a clear jar}
              suction-strainer:
                kind: strainer
                holds: {metal: 150 um}
                rating: nominal
              winch-pump:
            """, string.Join('\n', File.ReadAllLines(At("winch/winch.yaml")).Skip(2).Take(17)));
    }

    [Fact]
    public void Goes_on_wherever_it_was_stopped()
    {
        Type(Winch);
        string whole = File.ReadAllText(At("winch/winch.yaml"));
        Directory.Delete(At("winch"), recursive: true);

        // One answer a sitting; the input ends in the middle each time.
        foreach (string answer in Winch)
        {
            CommandSession sitting = Type(answer);
            Assert.Equal((0, ""), (sitting.Exit, sitting.Error));
        }

        Assert.Equal(whole, File.ReadAllText(At("winch/winch.yaml")));
        Assert.Contains("\n0 questions. ", Type().Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Takes_every_answer_back()
    {
        Type(Winch);
        string whole = File.ReadAllText(At("winch/winch.yaml"));
        Directory.Delete(At("winch"), recursive: true);

        // Each answer is given, taken back and given again. The last one ends the talk.
        Type([.. Winch[..^1].SelectMany(answer => new[] { answer, "undo", answer }), Winch[^1]]);

        Assert.Equal(whole, File.ReadAllText(At("winch/winch.yaml")));
    }

    [Fact]
    public void Corrects_a_part()
    {
        Type([.. Winch[..^1], "change winch pump", "", "metal rare", "control valve", "5 fair look through the port", Winch[^1]]);

        Assert.Contains("""
              winch-pump:
                kind: pump
                sheds: {metal: rare}
                access: [control-valve]
                inspect: {minutes: 5, shows: fair, how: look through the port}
            """, File.ReadAllText(At("winch/winch.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public void Reads_what_is_not_known_the_cautious_way()
    {
        Type("?", "oil", "?", "sump", "oil filter", "main bearing", "?", "?", "?", "?", "?", "?", "?", "?", "?", "?", "?", "?", "?", "?", "?", "?", "?", "?", "?");
        string text = File.ReadAllText(At("winch/winch.yaml"));

        Assert.Contains("sheds: {metal: rare, rubber: rare, water: rare}   # not known, so each is reckoned with", text, StringComparison.Ordinal);
        Assert.DoesNotContain("holds:", text, StringComparison.Ordinal);
        Assert.Contains("# what it holds is not known, so it counts as nothing", text, StringComparison.Ordinal);
        Assert.Contains("# what must be off before it is not known", text, StringComparison.Ordinal);
        Assert.Contains("# what it sits on is not known", text, StringComparison.Ordinal);
        Assert.Contains("dead-end: 'not known where it leads: to be followed at the machine'", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Copies_a_part_that_is_alike()
    {
        Type("engine", "oil", "oil", "sump", "oil pump", "left strainer", "right basket", "like left strainer", "sump");
        Assert.Contains("  right-basket:\n    kind: strainer\n", File.ReadAllText(At("winch/winch.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public void Offers_kinds_and_near_names_and_takes_no_slip_for_a_part()
    {
        string said = Type("engine", "oil", "oil", "sump", "oil pump", "spin-on", "filt", "filter", "oil pumb", "tree", "help", "8", "sump").Out;

        Assert.Contains("  Which of these?", said, StringComparison.Ordinal);
        Assert.Contains("Is that oil-pump, which you have named? Then write oil-pump. If it is another\n  part, write it with a mark behind it: oil pumb!", said, StringComparison.Ordinal);
        Assert.Contains("`8` will not do as a part: write letters, digits and spaces, beginning with a\n  letter.", said, StringComparison.Ordinal);
        Assert.Contains("undo takes the last answer back", said, StringComparison.Ordinal);
        Assert.Contains("      - [sump, oil-pump, spin-on, sump]", File.ReadAllText(At("winch/winch.yaml")), StringComparison.Ordinal);
    }

    [Fact]
    public void Asks_what_a_check_would_warn_of()
    {
        string said = Type("engine", "fuel", "diesel", "fuel tank", "feed hose", "injector", "end", "burnt in the cylinder", "", "", "", "", "", "", "", "", "", "", "", "", "used up", "").Out;
        Assert.Contains("Nothing brings fuel back to fuel-tank. What leads back to it?", said, StringComparison.Ordinal);
        Assert.Contains("meant: {does-not-close: the fluid is used up}", File.ReadAllText(At("winch/winch.yaml")), StringComparison.Ordinal);
        Assert.DoesNotContain("does-not-close", said[said.IndexOf("questions.", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Fact]
    public void Leaves_out_what_cannot_be_seen_and_says_so()
    {
        string said = Type("engine", "oil", "oil", "su\u0007mp", "oil\u001b[31m pump").Out;
        Assert.Contains("Characters that cannot be seen were left out. Taken as: sump", said, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', said);
        Assert.DoesNotContain('\u001b', File.ReadAllText(At("winch/winch.yaml")));
    }

    [Fact]
    public void Adds_to_a_file_that_was_written_by_hand_and_leaves_every_line_as_it_is()
    {
        Directory.CreateDirectory(At("winch"));
        string byHand = """
            # The winch on the foredeck.   (two spaces)
            format: 1
            family: winch   # mine

            parts:
              oil-tank:
                kind: tank   # under the bench
                inspect: {minutes: 5, shows: good, how: "dip it, then smell"}
              winch-pump: {kind: pump, access: [oil-tank]}   # noisy
              # the last of them
            fluids: {hydraulic-oil: {density: 870 kg/m3}}
            circuits:
              hydraulic:
                fluid: hydraulic-oil
                runs:
                  - - oil-tank
                    - winch-pump   # up
                    - oil-tank
            # the end
            """;
        File.WriteAllText(At("winch/winch.yaml"), byHand);

        CommandSession described = Type("cooling", "raw-water", "sea cock", "valve", "sea strainer", "end", "over the side", "", "", "", "", "", "", "", "", "", "");

        Assert.Equal((0, ""), (described.Exit, described.Error));
        string[] now = File.ReadAllLines(At("winch/winch.yaml"));
        int at = -1;
        foreach (string line in byHand.Split('\n').Where(line => !line.StartsWith("fluids:", StringComparison.Ordinal)))
        {
            at = Array.IndexOf(now, line, at + 1);
            Assert.True(at >= 0, $"`{line}` is gone or has moved:\n{string.Join('\n', now)}");
        }

        Assert.Contains("fluids: {hydraulic-oil: {density: 870 kg/m3}, raw-water: {}}", now);
        Assert.Contains("      - [sea-cock, sea-strainer]", now);
    }

    [Fact]
    public void Keeps_what_somebody_else_writes_meanwhile()
    {
        Type("hydraulic-unit", "hydraulic", "hydraulic-oil", "oil tank");
        string file = At("winch/winch.yaml");
        var typed = new LinesThenAction(["winch pump", "oil tank"], line: 1, () => File.WriteAllText(file, File.ReadAllText(file).Replace("    kind: tank\n", "    kind: tank\n    volume: 40 L   # measured\n", StringComparison.Ordinal)));

        CommandSession described = LinesThenAction.Call(["describe", At("winch")], typed);

        Assert.Contains("The file was changed by somebody else meanwhile. What they wrote is kept.", described.Out, StringComparison.Ordinal);
        Assert.Contains("    volume: 40 L   # measured\n", File.ReadAllText(file), StringComparison.Ordinal);
        Assert.Contains("      - [oil-tank, winch-pump, oil-tank]", File.ReadAllText(file), StringComparison.Ordinal);
    }

    [Fact]
    public void Says_what_is_wrong_with_a_folder()
    {
        Directory.CreateDirectory(At("winch"));
        Assert.Equal((2, $"contam: {At("winch")} holds no family file. Name a folder with one, or a folder that is not there yet.\n"), (Type().Exit, Type().Error));
        File.WriteAllText(At("winch/winch.yaml"), "format: 1\nfamily: winch\nparts: {a: {kind: gizmo}}\n");
        CommandSession broken = Type();
        Assert.Equal(2, broken.Exit);
        Assert.Contains("there is no kind `gizmo`", broken.Error, StringComparison.Ordinal);
    }

    private CommandSession Type(params string[] lines) => CommandSession.Of(["describe", At("winch")], 80, string.Concat(lines.Select(line => line + "\n")));

    private string At(string path) => Path.Combine(here.FullName, path);

    private string ByHandAt(string name)
    {
        File.WriteAllText(At(name), ByHand);
        return At(name);
    }

    private static string PartsOf(string file) => CommandSession.Of($"parts {file} --format json").Out;
}
