using System.Text;
using Contam.Families;
using Contam.Reports.Text;
using Contam.Support;

namespace Contam.Cli.Tests.Parts;

/// <summary><c>parts --tree</c>: each circuit in flow order.</summary>
public class As_a_tree
{
    [Fact]
    public void Shows_a_ring_and_its_branches() => Shows(
        """
        parts:
          tank: {kind: tank}
          feed-hose: {kind: hose}
          pump: {kind: pump, name: High-pressure pump}
          rail: {kind: rail}
          injector-#: {kind: injector, count: 4}
          leak-off: {kind: hose}
          relief: {kind: relief-valve}
          gauge: {kind: sensor}
        circuits:
          fuel:
            fluid: diesel
            runs:
              - [tank, feed-hose, pump, rail, injector-#, leak-off, tank]
              - [pump, relief, tank]
              - [rail, gauge]
        fluids: {diesel: {}}
        """,
        """
        f

        FUEL: DIESEL
          tank
          feed-hose
          pump · High-pressure pump
          ├─ rail
          │  ├─ injector-1–4
          │  │  leak-off
          │  │  └─ back to tank
          │  └─ gauge – ends here
          └─ relief
             └─ back to tank

        """);

    [Fact]
    public void Shows_a_forgotten_return_as_an_end() => Shows(
        """
        parts:
          tank: {kind: tank}
          pump: {kind: pump}
          case-drain: {kind: hose}
        circuits:
          oil:
            runs:
              - [tank, pump, tank]
              - [pump, case-drain]
        """,
        """
        f

        OIL
          tank
          pump
          ├─ back to tank
          case-drain – ends here

        """);

    [Fact]
    public void Says_what_a_joint_waits_for() => Shows(
        """
        engine-running: [running, stopped]
        parts:
          filter: {kind: strainer}
          hose: {kind: hose}
          bore-#: {kind: cylinder, count: 2}
          ring-#: {kind: ring-pack, count: 2}
          silencer: {kind: exhaust}
          sump: {kind: sump}
        circuits:
          air: {runs: [[filter, hose, bore-#, silencer]]}
          oil: {runs: [[sump]]}
        links:
          - {from: hose, to: filter, circuit: air, when: stopped}
          - {from: bore-#, to: ring-#, circuit: oil, only-if-failed: ring-#}
          - {from: ring-#, to: sump, circuit: oil, only-if-failed: ring-#, passage: 2 mm}
        """,
        """
        f

        AIR
          filter
          hose
          ├─ back to filter (when stopped)
          bore-1–2
          silencer – ends here

        OIL
          sump – ends here
          bore-1–2
          ring-1–2 (if ring-# has failed)
          └─ joins sump (if ring-# has failed, hard pieces up to 2000 µm)

        """);

    [Fact]
    public void Says_where_a_way_goes_on_in_another_circuit_and_what_is_on_none() => Shows(
        """
        parts:
          tank: {kind: tank}
          bore: {kind: cylinder}
          silencer: {kind: exhaust}
          spare: {kind: hose}
        circuits:
          fuel: {runs: [[tank, bore]]}
          air: {runs: [[bore, silencer]]}
        """,
        """
        f

        FUEL
          tank
          bore – goes on in air

        AIR
          bore
          silencer – ends here

        ON NO CIRCUIT
          spare

        """);

    [Fact]
    public void Folds_only_repeats_that_are_joined_alike() => Shows(
        """
        parts:
          chamber-#: {kind: crankcase, count: 3}
          drain-#: {kind: hose, count: 2}
        circuits:
          oil: {runs: [[chamber-1, drain-1, chamber-2, drain-2, chamber-3, chamber-1]]}
        """,
        """
        f

        OIL
          chamber-1
          drain-1
          chamber-2
          drain-2
          chamber-3
          └─ back to chamber-1

        """);

    [Fact]
    public void Lays_out_wide_names_within_the_width()
    {
        CommandSession session = CommandSession.About(
            """
            format: 1
            family: f
            parts:
              tank: {kind: tank, name: 燃料タンク}
              pump: {kind: pump, name: 高圧燃料噴射ポンプと駆動軸と吐出弁と調量弁と逆止弁と圧力計}
              hose: {kind: hose, name: "Schläuche für Öl \u001b[31m und e\u0301"}
            circuits:
              fuel: {runs: [[tank, pump, tank], [pump, hose]]}
            """,
            file => $"parts {file} --tree",
            40);
        Assert.Equal(2, session.Exit);
        string text = """
            format: 1
            family: f
            parts:
              tank: {kind: tank, name: 燃料タンク}
              pump: {kind: pump, name: 高圧燃料噴射ポンプと駆動軸と吐出弁と調量弁と逆止弁と圧力計}
              hose: {kind: hose, name: "Schläuche für Öl und é"}
              valve: {kind: valve, name: صمام}
            circuits:
              fuel: {runs: [[tank, pump, tank], [pump, hose], [pump, valve]]}
            """;
        session = CommandSession.About(text, file => $"parts {file} --tree", 40);
        Assert.Equal(
            """
            f

            FUEL
              tank · 燃料タンク
              pump ·
                高圧燃料噴射ポンプと駆動軸と吐出弁と
                調量弁と逆止弁と圧力計
              ├─ back to tank
              ├─ hose · Schläuche für Öl und é –
              │    ends here
              └─ valve · صمام – ends here

            """,
            session.Out);
        Assert.All(session.Out.Split('\n'), line => Assert.InRange(DisplayWidth.Of(line), 0, 40));
    }

    [Fact]
    public void Goes_on_at_the_left_where_branches_stand_too_deep()
    {
        var runs = new StringBuilder();
        var parts = new StringBuilder();
        for (int i = 0; i < 40; i++)
        {
            parts.Append(System.Globalization.CultureInfo.InvariantCulture, $"  a{i}: {{kind: hose}}\n  b{i}: {{kind: hose}}\n");
            runs.Append(System.Globalization.CultureInfo.InvariantCulture, $"      - [a{i}, b{i}]\n{(i < 39 ? $"      - [a{i}, a{i + 1}]\n" : "")}");
        }

        string tree = CommandSession.About($"format: 1\nfamily: f\nparts:\n{parts}circuits:\n  oil:\n    runs:\n{runs}", file => $"parts {file} --tree").Out;
        Assert.All(tree.Split('\n'), line => Assert.InRange(DisplayWidth.Of(line), 0, 80));
        Assert.Contains("  further from above: a", tree, StringComparison.Ordinal);
        for (int i = 0; i < 40; i++)
            Assert.Matches($"(?m) b{i} – ends here$", tree);
    }

    [Theory]
    [InlineData("harbour-diesel-i4")]
    [InlineData("estuary-v6-outboard")]
    [InlineData("outboard-gearcase")]
    public void Shows_every_part_of_every_circuit_once(string name)
    {
        string file = $"systems/families/{name}.yaml";
        string tree = CommandSession.Of($"parts {file} --tree", width: 200).Out;
        Family family = Contam.Families.Reading.FamilyReader.ReadFile(RepositoryFiles.At(file), Contam.Treatment.Reading.Layering.CatalogueOf(Contam.Treatment.Reading.BuiltInStandards.HouseOverKinds)).Value!;
        foreach ((Circuit circuit, string text) in family.Circuits.Zip(tree.Split("\n\n").Skip(1)))
        {
            string[] shown = [.. text.Split('\n').Skip(1).Select(line => line.TrimStart(' ', '│', '├', '└', '─')).Where(line => line.Length > 0 && !line.StartsWith("back to", StringComparison.Ordinal) && !line.StartsWith("joins", StringComparison.Ordinal)).Select(line => line.Split(' ')[0])];
            Assert.Equal(circuit.Parts.Select(part => part.Value).Order(StringComparer.Ordinal), shown.SelectMany(WrittenOut).Order(StringComparer.Ordinal));
        }
    }

    [Fact]
    public void Is_for_reading_alone()
    {
        CommandSession session = CommandSession.Of("parts systems/families/outboard-gearcase.yaml --tree --format json");
        Assert.Equal((2, "", "contam: --tree is for reading. The joints stand in --format json without it.\n"), (session.Exit, session.Out, session.Error));
    }

    private static IEnumerable<string> WrittenOut(string label)
    {
        int dash = label.IndexOf('–', StringComparison.Ordinal);
        if (dash < 0)
            return [label];
        int start = label.LastIndexOf('-', dash);
        int first = int.Parse(label[(start + 1)..dash], System.Globalization.CultureInfo.InvariantCulture);
        int last = int.Parse(label[(dash + 1)..], System.Globalization.CultureInfo.InvariantCulture);
        return Enumerable.Range(first, last - first + 1).Select(number => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{label[..start]}-{number}"));
    }

    private static void Shows(string family, string tree)
    {
        CommandSession session = CommandSession.About("format: 1\nfamily: f\n" + family, file => $"parts {file} --tree");
        Assert.Equal(("", 0), (session.Error, session.Exit));
        Assert.Equal(tree, session.Out);
    }
}
