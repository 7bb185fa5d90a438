using System.Text.Json;
using Contam.Reports.Text;
using Contam.Support;

namespace Contam.Cli.Tests.Audits;

/// <summary>The audit as a shop calls it.</summary>
public sealed class An_audit
{
    private const string Gearcase = "systems/families/outboard-gearcase.yaml";

    private const string Winch =
        """
        format: 1
        family: winch
        title: "<b>Winch</b> & co"
        parts:
          sump: {kind: sump}
          pump: {kind: pump, sheds: {metal: common}}
          motor: {kind: hydraulic-motor, inspect: {minutes: 5, shows: good}}
          return-hose: {kind: hose}
        circuits: {oil: {runs: [[sump, pump, motor, sump], [return-hose, sump]]}}
        """;

    private static string Mended => Winch.Replace("pump, motor, sump], [return-hose, sump]", "pump, motor, return-hose, sump]", StringComparison.Ordinal);

    // An audit plans every failure with looks and without and plays every history, so the larger families are left to the long run.
    public static TheoryData<string> Families => [.. new DirectoryInfo(RepositoryFiles.At("systems/families")).GetFiles("*.yaml").OrderBy(file => file.Length).ThenBy(file => file.Name, StringComparer.Ordinal).Take(LongRun.IsAsked ? int.MaxValue : 4).Select(file => file.Name)];

    [Theory]
    [MemberData(nameof(Families))]
    public void Of_a_shipped_family_finds_nothing_that_must_be_mended(string family)
    {
        CommandSession session = CommandSession.Of($"audit systems/families/{family}");
        Assert.Contains("Nothing must be mended;", session.Out, StringComparison.Ordinal);
        Assert.Equal(0, session.Exit);
    }

    [Fact]
    public void In_parallel_is_the_audit_of_one_core_to_the_byte()
    {
        string[] answers = [.. new[] { 1, 2, 7 }.Select(jobs => CommandSession.Of($"audit {Gearcase} systems/families/stern-trim-unit.yaml --jobs {jobs} --format json").Out)];
        Assert.NotEqual("", answers[0]);
        Assert.Equal(answers[0], answers[1]);
        Assert.Equal(answers[0], answers[2]);
    }

    [Fact]
    public void Ends_with_1_where_something_must_be_mended()
    {
        CommandSession session = CommandSession.About(Winch, file => $"audit {file}", width: 200);
        Assert.Equal(1, session.Exit);
        string whole = session.Out;
        Assert.Equal(
            """
            Audit
            1 family, 4 parts, 1 failure, each planned and played. Standard: house.
            1 thing must be mended; 1 thing to read.

            MUST BE MENDED
            No way in [no-way-in] (1)
              - engine.yaml:8:3: nothing leads into `return-hose`, and nothing ever reaches it.
                Write the run or link by which fluid comes to it.

            TO READ
            Reaches most of the engine [reaches-most] (1)
              - winch: pump metal

            """,
            whole[..(whole.IndexOf("pump metal", StringComparison.Ordinal) + "pump metal\n".Length)]);
        Assert.Equal(0, CommandSession.About(Mended, file => $"audit {file}").Exit);
    }

    [Fact]
    public void Goes_through_a_folder_and_leaves_its_modules_to_the_families()
    {
        using var folder = new Folder();
        Directory.CreateDirectory(folder.At("deep/modules"));
        File.WriteAllText(folder.At("deep/winch.yaml"), Mended);
        File.WriteAllText(folder.At("crane.yaml"), Mended.Replace("family: winch", "family: crane", StringComparison.Ordinal));
        File.WriteAllText(folder.At("deep/modules/side.yaml"), "format: 1\nparts: {hose: {kind: hose}}\n");
        using JsonDocument audit = JsonDocument.Parse(CommandSession.Of($"audit {folder.Path} --format json").Out);
        Assert.Equal(["crane", "winch"], audit.RootElement.GetProperty("families").EnumerateArray().Select(family => family.GetProperty("id").GetString()));
    }

    [Fact]
    public void Refuses_a_folder_without_families_two_of_one_id_and_one_that_is_not_sound()
    {
        using var folder = new Folder();
        Refused($"audit {folder.Path}", $"contam: there is no family in {folder.Path}: no .yaml file in which a line begins with family:.\n");
        File.WriteAllText(folder.At("a.yaml"), Mended);
        File.WriteAllText(folder.At("b.yaml"), Mended);
        Refused($"audit {folder.Path}", $"contam: {folder.At("a.yaml")} and {folder.At("b.yaml")} both describe winch. Give one of the two another id, or leave it out.\n");
        File.WriteAllText(folder.At("b.yaml"), "family: b\n");
        CommandSession broken = CommandSession.Of($"audit {folder.Path}");
        Assert.Equal((2, ""), (broken.Exit, broken.Out));
        Assert.Contains("b.yaml:1:1", broken.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Against_a_baseline_tells_only_the_new()
    {
        using var folder = new Folder();
        File.WriteAllText(folder.At("winch.yaml"), Winch);
        string family = folder.At("winch.yaml"), before = folder.At("before.json");
        File.WriteAllText(before, CommandSession.Of($"audit {family} --format json").Out);
        CommandSession same = CommandSession.Of($"audit {family} --baseline {before}");
        Assert.Equal((0, "Audit: what has changed since the earlier one\n1 family, 4 parts, 1 failure, each planned and played. Standard: house.\nNothing new must be mended; 0 new things to read, 0 messages gone, 0 plans\nchanged.\n"), (same.Exit, same.Out));

        File.WriteAllText(family, Mended.Replace("return-hose, sump]]", "return-hose, sump], [drain, sump]]", StringComparison.Ordinal).Replace("circuits:", "  drain: {kind: pipe}\ncircuits:", StringComparison.Ordinal));
        CommandSession changed = CommandSession.Of($"audit {family} --baseline {before}");
        Assert.Equal(1, changed.Exit);
        Assert.Contains("1 new thing must be mended; 0 new things to read, 1 message gone, 1 plan\nchanged.\n", changed.Out, StringComparison.Ordinal);
        Assert.Contains("nothing leads into `drain`", changed.Out, StringComparison.Ordinal);
        Assert.Contains("NO MORE THERE\n  - winch: nothing leads into `return-hose`, and nothing ever reaches it\n    [no-way-in]\n", changed.Out, StringComparison.Ordinal);
        Assert.Contains("winch, metal from pump: 4 parts reached instead of 3", changed.Out, StringComparison.Ordinal);

        string json = CommandSession.Of($"audit {family} --baseline {before} --format json").Out;
        Answers_in_json.AssertFits("audit", json);
        File.WriteAllText(before, json);
        Refused($"audit {family} --baseline {before}", $"contam: {before} is not a whole audit: it tells only what had changed since another audit. Give a file written by contam audit --format json without --baseline.\n");
    }

    [Theory]
    [InlineData("", "{")]
    [InlineData("null", "null")]
    [InlineData("{\"format\": \"contam-audit/2\"}", "is not a whole audit")]
    [InlineData("{\"format\": \"contam-plan/1\"}", "is not a whole audit")]
    public void Refuses_a_baseline_that_is_none(string text, string _)
    {
        using var folder = new Folder();
        File.WriteAllText(folder.At("b.json"), text);
        CommandSession session = CommandSession.Of($"audit {Gearcase} --baseline {folder.At("b.json")}");
        Assert.Equal((2, ""), (session.Exit, session.Out));
        Assert.Contains("is not a whole audit", session.Error, StringComparison.Ordinal);
        Assert.Equal(2, CommandSession.Of($"audit {Gearcase} --baseline {folder.At("none.json")}").Exit);
    }

    [Fact]
    public void In_json_fits_its_schema()
    {
        Answers_in_json.AssertFits("audit", CommandSession.Of($"audit {Gearcase} --format json").Out);
        Answers_in_json.AssertFits("audit", CommandSession.About(Winch, file => $"audit {file} --format json").Out);
    }

    [Fact]
    public void In_html_stands_by_itself_and_shows_what_was_written_as_text()
    {
        string page = CommandSession.About(Winch, file => $"audit {file} --format html").Out;
        Assert.StartsWith("<!DOCTYPE html>\n<html lang=\"en\">", page, StringComparison.Ordinal);
        Assert.EndsWith("</html>\n", page, StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;Winch&lt;/b&gt; &amp; co", page, StringComparison.Ordinal);
        Assert.Contains("Nothing leads into `return-hose`, and nothing ever reaches it.", page, StringComparison.Ordinal);
        Assert.Contains("@media print", page, StringComparison.Ordinal);
        Assert.All(new[] { "<script", "<b>", "://", "src=", "href=" }, alien => Assert.DoesNotContain(alien, page, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("messages", "severity,code,family,about,file,line,text,mend\r\nerror,no-way-in,winch,return-hose,engine.yaml,8,\"nothing leads into `return-hose`, and nothing ever reaches it\",write the run or link by which fluid comes to it\r\n")]
    [InlineData("matrix", "kind,debris,winch\r\nhydraulic-motor,metal,1\r\npump,metal,1\r\nsump,metal,1\r\n")]
    public void In_csv_is_a_table(string what, string begins) =>
        Assert.StartsWith(begins, CommandSession.About(Winch, file => $"audit {file} --format csv --what {what}").Out, StringComparison.Ordinal);

    [Fact]
    public void In_csv_lists_every_failure() =>
        Assert.Matches("^family,part,debris,reached,steps,bench hours,all clean,expected,looks,on looks\r\nwinch,pump,metal,3,[0-9]+,[0-9.]+,[0-9.]+,[0-9.]+,[0-9]+,[0-9.]+\r\n$", CommandSession.About(Winch, file => $"audit {file} --format csv --what failures").Out);

    [Fact]
    public void Tells_the_three_hours_of_a_failure_as_its_plan_does()
    {
        using JsonDocument audit = JsonDocument.Parse(CommandSession.Of($"audit {Gearcase} --format json").Out);
        JsonElement pinion = audit.RootElement.GetProperty("failures").EnumerateArray().Single(one => (one.GetProperty("part").GetString(), one.GetProperty("debris").GetString()) == ("pinion", "metal"));
        using JsonDocument plan = JsonDocument.Parse(CommandSession.Of($"plan {Gearcase} --failed pinion --debris metal --format json").Out);
        JsonElement hours = plan.RootElement.GetProperty("hours");
        Assert.Equal(
            [hours.GetProperty("bench").GetDouble(), hours.GetProperty("benchAllClean").GetDouble(), hours.GetProperty("benchExpected").GetDouble(), plan.RootElement.GetProperty("looks").GetArrayLength(), plan.RootElement.GetProperty("steps").GetArrayLength()],
            new[] { "benchHours", "benchAllClean", "benchExpected", "looks", "steps" }.Select(name => pinion.GetProperty(name).GetDouble()));
        Assert.True(hours.GetProperty("benchAllClean").GetDouble() < hours.GetProperty("bench").GetDouble(), "the failure has no look that decides, so it shows nothing");
    }

    [Fact]
    public void Says_over_all_failures_how_much_hangs_on_looks()
    {
        using JsonDocument audit = JsonDocument.Parse(CommandSession.Of($"audit {Gearcase} --format json").Out);
        double[] shares = [.. audit.RootElement.GetProperty("failures").EnumerateArray().Select(one => one.GetProperty("onLooks").GetDouble()).Order()];
        JsonElement told = audit.RootElement.GetProperty("onLooks");
        Assert.Equal(shares[^1], told.GetProperty("most").GetDouble());
        Assert.InRange(shares.Count(share => share <= told.GetProperty("median").GetDouble()), (shares.Length + 1) / 2, shares.Length);
        Assert.InRange(shares.Count(share => share < told.GetProperty("median").GetDouble()), 0, shares.Length / 2);
        Assert.Matches("HOW MUCH HANGS ON LOOKS\nOver [0-9]+ failures a median of [0-9]+ % of the bench hours hangs on looks", CommandSession.Of($"audit {Gearcase}", width: 400).Out);
    }

    [Fact]
    public void Says_how_far_it_has_come_only_after_a_second()
    {
        Environment.CurrentDirectory = RepositoryFiles.At("");
        Assert.Equal("", ErrorUnder(new Ticking(TimeSpan.FromMilliseconds(1))));
        string[] lines = ErrorUnder(new Ticking(TimeSpan.FromMilliseconds(400))).TrimEnd('\n').Split('\n');
        Assert.Equal("3 of ", lines[0][..5]);
        Assert.True(lines.Length is > 1 and < 8, string.Join('\n', lines));
    }

    [Fact]
    public void Takes_no_number_of_jobs_below_1() => Assert.Equal(2, CommandSession.Of($"audit {Gearcase} --jobs 0").Exit);

    [Theory]
    [InlineData("many")]
    [InlineData("1025")]
    [InlineData("1.5")]
    public void Says_which_numbers_of_jobs_it_takes(string given)
    {
        CommandSession session = CommandSession.Of($"audit {Gearcase} --jobs {given}");

        Assert.Equal(2, session.Exit);
        Assert.StartsWith($"contam: --jobs takes a whole number from 1 to 1024, got `{given}`.\n", session.Error, StringComparison.Ordinal);
    }

    private static string ErrorUnder(TimeProvider clock)
    {
        using var answers = new StringWriter { NewLine = "\n" };
        using var rest = new StringWriter { NewLine = "\n" };
        ContamCommand.Run(["audit", Gearcase, "--jobs", "1"], new Shell(answers, rest, TextLook.Plain) { Clock = clock });
        return rest.ToString();
    }

    private static void Refused(string words, string error)
    {
        CommandSession session = CommandSession.Of(words);
        Assert.Equal((2, "", error), (session.Exit, session.Out, session.Error));
    }

    /// <summary>A clock that goes on by so much whenever it is read.</summary>
    private sealed class Ticking(TimeSpan step) : TimeProvider
    {
        private long now;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override long GetTimestamp() => now += step.Ticks;
    }
}
