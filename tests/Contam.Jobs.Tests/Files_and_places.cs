using Contam.Cli;
using Contam.Cli.Jobs;
using Contam.Reports.Text;

namespace Contam.Jobs.Tests;

/// <summary>Where the shop lies, what is opened, and what happens where an answer cannot be printed.</summary>
public class Files_and_places
{
    [Theory]
    [InlineData("/data", "/home/ada", "/data/contam/shop.db")]
    [InlineData("", "/home/ada", "/home/ada/.local/share/contam/shop.db")]
    [InlineData("data", "/home/ada", "/home/ada/.local/share/contam/shop.db")]
    public void The_shop_lies_where_the_data_of_a_person_lie_and_never_in_the_current_folder(string data, string home, string due)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the rules of Linux");
        Assert.Equal(due, DataFolder.ShopFile(name => name == "XDG_DATA_HOME" ? data : name == "HOME" ? home : null));
    }

    [Theory]
    [InlineData("HOME", "/Users/ada", false, true, "/Users/ada/Library/Application Support")]
    [InlineData("HOME", "ada", false, false, null)]
    [InlineData("LOCALAPPDATA", "here", true, false, null)]
    public void Other_systems_have_rules_of_their_own(string name, string value, bool isWindows, bool isMac, string? due) =>
        Assert.Equal(due, DataFolder.Of(asked => asked == name ? value : null, isWindows, isMac));

    [Fact]
    public void Without_a_home_the_shop_must_be_named() => Assert.Throws<WrongUseException>(() => DataFolder.ShopFile(_ => null));

    [Fact]
    public void An_empty_list_says_which_shop_it_is_of()
    {
        using var bench = new JobBench();
        using (JobBook.Open(bench.Shop, Contam.Jobs.Stores.ShopUse.Create))
        {
            // Made, and nothing in it.
        }

        Assert.Equal($"No job yet in {bench.Shop}. contam job open makes one.\n", bench.Job("list").Out.Replace("\n  ", " ", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("job photo /dev/zero")]
    [InlineData("job import /dev/zero")]
    [InlineData("verify /dev/zero systems/families/outboard-gearcase.yaml")]
    [InlineData("audit systems/families/outboard-gearcase.yaml --baseline /dev/zero")]
    public void A_device_is_no_file(string call)
    {
        Assert.SkipUnless(File.Exists("/dev/zero"), "no such device");
        using JobBench bench = JobBench.WithJob();
        string[] words = call.Split(' ');
        Answer answer = words[0] == "job" ? bench.Job(words[1..]) : bench.Call(words);
        Assert.Equal((2, "contam: /dev/zero is a pipe or a device. Give a file.\n"), (answer.Exit, answer.Error));
    }

    [Theory]
    [InlineData("--customer", "Quay\u200b4")]
    [InlineData("--engine", "\u202eport")]
    [InlineData("--technician", "A\u00adda")]
    [InlineData("--customer", "\u3164")]
    public void A_name_with_a_character_that_nobody_sees_is_refused(string option, string name)
    {
        using var bench = new JobBench();
        string[] words = ["open", JobBench.Gearcase, "--failed", "pinion", "--debris", "metal", "--customer", "Quay 4", "--engine", "port", "--technician", "Ada"];
        words[Array.IndexOf(words, option) + 1] = name;
        Assert.Equal((2, $"contam: {option} has a character that nobody can see, so that two names could look alike. Type it again without.\n"), bench.Job(words) is var answer ? (answer.Exit, answer.Error) : default);
    }

    [Theory]
    [InlineData("Żółć 李 \U0001F6E0")]
    [InlineData("\U0001F468\u200D\U0001F527")]
    public void Names_as_people_write_them_are_kept(string name) => Assert.Null(RecordText.FaultOf(name));

    [Theory]
    [InlineData("""{"format":"contam-plan/2","x":1}""", "line 1, at x: x is not known there")]
    [InlineData("[1", "line 1: ")]
    public void What_is_wrong_with_a_file_of_ours_is_said_without_how_we_are_built(string json, string why)
    {
        using var bench = new JobBench();
        File.WriteAllText(bench.At("plan.json"), json);
        Answer answer = bench.Call("verify", bench.At("plan.json"), JobBench.Gearcase);
        Assert.Equal(2, answer.Exit);
        Assert.StartsWith($"contam: FOLDER/plan.json is not a plan: {why}", answer.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("..", answer.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Contam.Plans", answer.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_written_and_cannot_be_printed_is_told_by_its_number()
    {
        using JobBench bench = JobBench.WithJob();
        using var full = new StreamWriter(new PrintedStream(new FullDisk(), mustPrint: true)) { NewLine = "\n" };
        using var rest = new StringWriter();
        var shell = new Shell(full, rest, TextLook.Plain);
        int exit = Outcomes.Printed(shell, () => ContamCommand.Run(["job", "note", "on the slip", "--shop", bench.Shop], shell));
        Assert.Equal((2, "contam: recorded as entry 2, but could not be printed: no room. Do not do it again; contam job show says what is there.\n"), (exit, rest.ToString()));
        Assert.Equal(2, bench.Read().Entries.Length);
    }

    [Fact]
    public void Messages_that_go_nowhere_are_no_fault()
    {
        using var rest = new StreamWriter(new PrintedStream(new FullDisk(), mustPrint: false)) { AutoFlush = true };
        rest.Write("lost");
    }

    private sealed class FullDisk : MemoryStream
    {
        public override void Write(byte[] buffer, int offset, int count) => throw new IOException("no room.");
    }
}
