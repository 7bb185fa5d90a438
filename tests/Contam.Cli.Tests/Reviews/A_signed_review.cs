using System.Text.Json;
using Contam.Reports.Text;
using Contam.Support;

namespace Contam.Cli.Tests.Reviews;

/// <summary><c>contam review --sign</c>: who has held a family against the machine, and what a plan says of it.</summary>
public sealed class A_signed_review : IDisposable
{
    private const string Winch = """
        format: 1
        family: winch
        fluids: {hydraulic-oil: {}}
        parts:
          oil-tank: {kind: tank}
          winch-pump: {kind: pump, sheds: {metal: common}}
          winch-motor: {kind: hydraulic-motor}
          return-hose: {kind: hose}
        circuits:
          hydraulic: {fluid: hydraulic-oil, runs: [[oil-tank, winch-pump, winch-motor, return-hose, oil-tank]]}
        """;

    private readonly DirectoryInfo here = Directory.CreateTempSubdirectory("contam");

    public A_signed_review() => File.WriteAllText(At("winch.yaml"), Winch);

    public void Dispose() => here.Delete(recursive: true);

    [Fact]
    public void Is_asked_for_where_nobody_has_signed() => Assert.Contains("Nobody has signed that this family was held against the machine", Plan(), StringComparison.Ordinal);

    [Fact]
    public void Stands_on_the_plan_with_name_day_and_note()
    {
        CommandSession signed = Sign("Ada Quay", "port winch");
        Assert.Equal((0, ""), (signed.Exit, signed.Error));
        Assert.Equal($"Ada Quay has signed that winch was held against the machine, as its files stand now. Kept in {At("winch.reviews/0001.json")}.\n", signed.Out);
        Assert.Contains("Family reviewed by Ada Quay on 2026-11-28 (port winch); unchanged since.", Plan(), StringComparison.Ordinal);
        foreach (string format in new[] { "html", "markdown" })
            Assert.Contains("Family reviewed by Ada Quay on 2026-11-28 (port winch); unchanged since.", Plan("--format", format), StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(Plan("--format", "json"));
        JsonElement review = json.RootElement.GetProperty("review");
        Assert.Equal(("Ada Quay", "2026-11-28", true), (review.GetProperty("by").GetString(), review.GetProperty("on").GetString(), review.GetProperty("isCurrent").GetBoolean()));
    }

    [Fact]
    public void Tells_what_has_changed_since_in_parts_and_joints()
    {
        Sign("Ada");
        File.WriteAllText(At("winch.yaml"), Winch.Replace("return-hose: {kind: hose}", "return-hose: {kind: hose}\n  drain: {kind: hose}", StringComparison.Ordinal).Replace("oil-tank]]", "oil-tank], [winch-motor, drain, oil-tank]]", StringComparison.Ordinal));
        Assert.Contains(
            "Family reviewed by Ada on 2026-11-28. Changed since, and not reviewed: part added: drain; joint added: winch motor > drain (hydraulic); joint added: drain > oil tank (hydraulic).",
            Plan().Replace('\n', ' '),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Tells_where_only_words_have_changed()
    {
        Sign("Ada");
        File.AppendAllText(At("winch.yaml"), "\n# seen again\n");
        Assert.Contains("since then no part and no joint has changed, only words or order of the files.", Plan().Replace('\n', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void Tells_of_a_change_in_a_module_too()
    {
        Directory.CreateDirectory(At("modules"));
        File.WriteAllText(At("modules/drain.yaml"), "format: 1\nparts:\n  drain: {kind: hose}\n");
        File.WriteAllText(At("winch.yaml"), Winch.Replace("parts:", "use:\n  - module: modules/drain.yaml\nparts:", StringComparison.Ordinal).Replace("oil-tank]]", "oil-tank], [winch-motor, drain, oil-tank]]", StringComparison.Ordinal));
        Sign("Ada");
        Assert.Contains("unchanged since.", Plan(), StringComparison.Ordinal);
        File.WriteAllText(At("modules/drain.yaml"), "format: 1\nparts:\n  drain: {kind: hose, passage: 2 mm}\n");
        Assert.Contains("Changed since, and not reviewed: drain: passage not said, now \u201c2000 um\u201d.", Plan().Replace('\n', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void Is_never_written_over_and_counts_again_when_the_file_is_as_it_was()
    {
        Sign("Ada");
        string first = File.ReadAllText(At("winch.reviews/0001.json"));
        File.AppendAllText(At("winch.yaml"), "\n# more\n");
        Sign("Ben");
        Assert.Contains("reviewed by Ben", Plan(), StringComparison.Ordinal);
        Assert.Equal(first, File.ReadAllText(At("winch.reviews/0001.json")));
        File.WriteAllText(At("winch.yaml"), Winch);
        Assert.Contains("reviewed by Ada on 2026-11-28; unchanged since.", Plan(), StringComparison.Ordinal);
        Assert.Equal(["0001.json", "0002.json"], Directory.EnumerateFiles(At("winch.reviews")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void That_cannot_be_read_is_told_and_not_counted()
    {
        Sign("Ada");
        File.WriteAllText(At("winch.reviews/0002.json"), "{}");
        CommandSession session = Call("plan", At("winch.yaml"), "--failed", "winch-pump");
        Assert.Contains("0002.json is no signed review and is not counted", session.Error, StringComparison.Ordinal);
        Assert.Contains("reviewed by Ada", session.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Changes_nothing_in_the_work()
    {
        using JsonDocument before = JsonDocument.Parse(Plan("--format", "json"));
        Sign("Ada");
        using JsonDocument after = JsonDocument.Parse(Plan("--format", "json"));
        foreach (JsonProperty key in before.RootElement.EnumerateObject().Where(key => key.Name != "review"))
            Assert.Equal(key.Value.GetRawText(), after.RootElement.GetProperty(key.Name).GetRawText());
        File.WriteAllText(At("plan.json"), Plan("--format", "json"));
        Assert.Equal(0, Call("verify", At("plan.json"), At("winch.yaml")).Exit);
    }

    [Theory]
    [InlineData("", "a signature needs a name")]
    [InlineData("A\u001b[2J", "--sign takes one line of at most 100 characters that can be seen.")]
    public void Needs_a_name_that_can_be_read(string name, string told)
    {
        CommandSession session = Sign(name);
        Assert.Equal(2, session.Exit);
        Assert.Contains(told, session.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(At("winch.reviews")));
    }

    [Fact]
    public void Of_an_invented_family_is_refused_and_not_asked_for()
    {
        Assert.Equal(2, Call("review", "outboard-gearcase", "--sign", "Ada").Exit);
        Assert.DoesNotContain("review", Call("plan", "systems/families/outboard-gearcase.yaml", "--failed", "pinion").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("text", "\n[ ] Winch motor > return hose (hydraulic): 1 plan, 2 parts missed\n")]
    [InlineData("markdown", "\n- [ ] Winch motor &gt; return hose (hydraulic): 1 plan, 2 parts missed\n")]
    [InlineData("html", "<li>Winch motor &gt; return hose (hydraulic): 1 plan, 2 parts missed</li>")]
    public void Begins_with_a_sheet_that_puts_the_weightiest_joints_first(string format, string line)
    {
        CommandSession session = Call("review", At("winch.yaml"), "--format", format);
        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.Contains(line, session.Out, StringComparison.Ordinal);
        Assert.Equal(session, Call("review", At("winch.yaml"), "--format", format));
        Assert.True(session.Out.IndexOf("on which most hangs", StringComparison.OrdinalIgnoreCase) < session.Out.IndexOf("Walk: ", StringComparison.OrdinalIgnoreCase));
    }

    private string At(string name) => Path.Combine(here.FullName, name);

    private string Plan(params string[] more) => Call(["plan", At("winch.yaml"), "--failed", "winch-pump", .. more]).Out;

    private CommandSession Sign(string name, string? note = null) => Call(["review", At("winch.yaml"), "--sign", name, .. note is null ? Array.Empty<string>() : ["--note", note]]);

    private static CommandSession Call(params string[] words)
    {
        Environment.CurrentDirectory = RepositoryFiles.At("");
        using var answers = new StringWriter { NewLine = "\n" };
        using var rest = new StringWriter { NewLine = "\n" };
        int exit = ContamCommand.Run(words, new Shell(answers, rest, TextLook.Plain) { Clock = new StoppedClock() });
        return new CommandSession(exit, answers.ToString(), rest.ToString());
    }

    private sealed class StoppedClock : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(2026, 11, 28, 12, 0, 0, TimeSpan.Zero);
    }
}
