using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Contam.Cli.Tests.Draw;

/// <summary><c>draw --format mermaid</c>.</summary>
public partial class As_mermaid
{
    private const string Engine = """
        format: 1
        family: f
        parts:
          tank: {kind: tank}
          pump: {kind: pump, sheds: {metal: {likely: common, up-to: 400 um}}}
          filter: {kind: filter, holds: {metal: 4 um}, rating: absolute}
          rail: {kind: rail}
          drain: {kind: hose}
          spare: {kind: hose}
        circuits:
          fuel:
            fluid: diesel
            runs: [[tank, pump, filter, rail]]
        fluids: {diesel: {}}
        links:
          - {from: rail, to: filter, circuit: fuel, when: stopped, passage: 2 mm}
          - {from: tank, to: drain, circuit: fuel, only-if-failed: tank}
        """;

    [Fact]
    public void Shows_circuits_and_what_joints_wait_for()
    {
        CommandSession session = CommandSession.About(Engine, file => $"draw {file} --format mermaid");
        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.Equal(
            """
            flowchart LR
              subgraph c0["fuel, diesel"]
                p0["Tank"]
                p1["Pump"]
                p2["Filter"]
                p3["Rail"]
                p4["Drain"]
              end
              subgraph loose["on no circuit"]
                p5["Spare"]
              end
              p0 --> p1
              p1 --> p2
              p2 --> p3
              p3 -.->|"when stopped, hard pieces up to 2000 µm"| p2
              p0 -.->|"if tank has failed"| p4

            """,
            session.Out);
    }

    [Fact]
    public void Marks_grades_by_shape_word_and_border_too()
    {
        CommandSession session = CommandSession.About(Engine, file => $"draw {file} --format mermaid --failed pump --debris metal");
        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.Contains("    p0[\"Tank\"]\n    p1{{\"Pump, failed, exposed metal up to 400 µm\"}}\n    p2[[\"Filter, exposed metal up to 400 µm\"]]\n    p3(\"Rail, guarded metal up to 4 µm\")\n", session.Out, StringComparison.Ordinal);
        Assert.EndsWith("  class p1 failed\n  class p2 exposed\n  class p3 guarded\n", session.Out, StringComparison.Ordinal);
        Assert.Contains("  classDef guarded fill:#f0e442,color:#000000,stroke:#000000,stroke-width:2px,stroke-dasharray:6 3\n", session.Out, StringComparison.Ordinal);
    }

    public static TheoryData<string> HostileNames =>
    [
        "\"]; click p0 href \"javascript:alert(1)\"",
        "end",
        "%%{init: {'theme': 'dark'}}%%",
        "</text><script>alert(1)</script>",
        "`markdown **bold**`",
        "a -->|x| b; p0 --> p1",
        "#quot;#35;&quot;",
        "subgraph x[y]",
        "fa:fa-car https://example.invalid",
        "$$x^2$$ {{ }} (( )) [[ ]]",
        "line\\nbreak <br/> \\u0007",
        "Ölwanne 燃料タンク صمام नली",
    ];

    [Theory]
    [MemberData(nameof(HostileNames))]
    public void Lets_no_name_break_out(string name)
    {
        string quoted = name.Replace("'", "''", StringComparison.Ordinal);
        string text = Engine.Replace("tank: {kind: tank}", $"tank:\n    kind: tank\n    name: '{quoted}'", StringComparison.Ordinal);
        foreach (string more in new[] { "", " --failed tank --debris metal,water" })
        {
            CommandSession session = CommandSession.About(text, file => $"draw {file} --format mermaid{more}");
            Assert.Equal(0, session.Exit);
            Assert.Equal(more.Length == 0 ? 0 : 1, session.Error.Count(letter => letter == '\n'));
            string[] lines = session.Out.TrimEnd('\n').Split('\n');
            Assert.All(lines, line => Assert.Matches(Sound(), line));
            Assert.Equal(6, lines.Count(line => line.StartsWith("    p", StringComparison.Ordinal)));
            Assert.Equal(5, lines.Count(line => Joint().IsMatch(line)));
            string label = Label().Match(lines.Single(line => line.StartsWith("    p0", StringComparison.Ordinal))).Groups["text"].Value;
            Assert.StartsWith(name, Decoded(label), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("harbour-diesel-i4")]
    [InlineData("quay-diesel-v8")]
    [InlineData("estuary-v6-outboard")]
    public void Is_sound_for_the_shipped_families(string name)
    {
        CommandSession session = CommandSession.Of($"draw systems/families/{name}.yaml --format mermaid");
        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.All(session.Out.TrimEnd('\n').Split('\n'), line => Assert.Matches(Sound(), line));
    }

    [Fact]
    public void Marks_nothing_where_nothing_has_failed()
    {
        CommandSession session = CommandSession.Of("draw systems/families/harbour-diesel-i4.yaml --format mermaid --debris metal");
        Assert.Equal(
            (2, "", "contam: nothing has failed and nothing was found, so there is nothing to mark. Add --failed PART, or leave --debris and --clean out.\n"),
            (session.Exit, session.Out, session.Error));
    }

    // What the reader of a chart shows: a decimal code is its character.
    private static string Decoded(string label) => Code().Replace(label, code => new Rune(int.Parse(code.Groups[1].Value, CultureInfo.InvariantCulture)).ToString());

    // The whole grammar that we write; a label holds letters, marks, digits, spaces, four signs and codes.
    [GeneratedRegex("""^(flowchart LR|  subgraph (c[0-9]+|loose)\["(?<l>([\p{L}\p{N}\p{M} ,.-]|#[0-9]+;)*)"\]|  end|    p[0-9]+(\{\{|\[\[|\(\[|\(|\[)"([\p{L}\p{N}\p{M} ,.-]|#[0-9]+;)*"(\}\}|\]\]|\]\)|\)|\])|  p[0-9]+ (-->|-\.->)(\|"([\p{L}\p{N}\p{M} ,.-]|#[0-9]+;)*"\|)? p[0-9]+|  classDef [a-z]+ [a-z0-9:#, -]+|  class p[0-9]+(,p[0-9]+)* [a-z]+)$""")]
    private static partial Regex Sound();

    [GeneratedRegex("^  p[0-9]+ -")]
    private static partial Regex Joint();

    [GeneratedRegex("\"(?<text>[^\"]*)\"")]
    private static partial Regex Label();

    [GeneratedRegex("#([0-9]+);")]
    private static partial Regex Code();
}
