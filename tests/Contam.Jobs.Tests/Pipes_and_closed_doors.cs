using System.Diagnostics;
using Contam.Jobs.Tests.Stores;
using Contam.Support;

namespace Contam.Jobs.Tests;

/// <summary>Real processes of the command, given a pipe that nobody writes to, or with nowhere to put their answer: they end, and say what it is.</summary>
[System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
public class Pipes_and_closed_doors
{
    private const string Family = JobBench.Gearcase;

    [Theory]
    [InlineData("verify PIPE FAMILY")]
    [InlineData("audit FAMILY --baseline PIPE")]
    [InlineData("job open FAMILY --plan PIPE --customer x --engine x --technician x")]
    [InlineData("job import PIPE")]
    [InlineData("job photo PIPE")]
    public void A_pipe_that_nobody_writes_to_is_no_file(string call)
    {
        using JobBench bench = JobBench.WithJob();
        string pipe = bench.At("pipe");
        using (Process made = Process.Start("mkfifo", pipe))
            made.WaitForExit();
        string[] words = [.. call.Split(' ').Select(word => word switch { "PIPE" => pipe, "FAMILY" => RepositoryFiles.At(Family), _ => word })];
        // What waits for the pipe is ended, with a status of its own.
        Answer answer = RealDisk.Run(["timeout", "120", .. RealDisk.AsUsual([.. words, .. words[0] == "job" ? ["--shop", bench.Shop] : Array.Empty<string>()])]);
        Assert.Equal((2, "", $"contam: {pipe} is a pipe or a device. Give a file.\n"), (answer.Exit, answer.Out, answer.Error));
        Assert.Single(bench.Read().Entries);
    }

    [Theory]
    [InlineData(">/dev/full")]
    [InlineData(">&-")]
    public void An_answer_that_goes_nowhere_is_told_with_the_entry_that_is_recorded(string to)
    {
        using JobBench bench = JobBench.WithJob();
        Answer answer = Into(to, "job", "note", "on the slip", "--shop", bench.Shop);
        Assert.Equal((2, ""), (answer.Exit, answer.Out));
        Assert.StartsWith("contam: recorded as entry 2, but could not be printed: ", answer.Error, StringComparison.Ordinal);
        Assert.EndsWith(". Do not do it again; contam job show says what is there.\n", answer.Error, StringComparison.Ordinal);
        Assert.Equal((2, 0), (bench.Read().Entries.Length, bench.Job("check").Exit));
    }

    [Theory]
    [InlineData(">/dev/full")]
    [InlineData(">&-")]
    public void An_answer_that_goes_nowhere_and_records_nothing_is_said_so(string to)
    {
        Answer answer = Into(to, "plan", RepositoryFiles.At(Family), "--failed", "pinion", "--debris", "metal");
        Assert.Equal(2, answer.Exit);
        Assert.StartsWith("contam: the answer could not be printed: ", answer.Error, StringComparison.Ordinal);
    }

    private static Answer Into(string to, params string[] words) => RealDisk.Run(["timeout", "120", "bash", "-c", $"exec \"$@\" {to}", "into", .. RealDisk.AsUsual(words)]);
}
