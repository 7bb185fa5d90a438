using System.Diagnostics;
using System.Globalization;
using Contam.Jobs.Entries;

namespace Contam.Jobs.Tests;

/// <summary>
/// Real processes of the command that write to one job at once, and that are killed while they write.
/// <c>CONTAM_NOTES=1000</c> writes as many notes in each of the eight processes; 250 otherwise.
/// </summary>
public abstract class SeveralAtOnce
{
    private static int Notes => int.TryParse(Environment.GetEnvironmentVariable("CONTAM_NOTES"), NumberStyles.None, CultureInfo.InvariantCulture, out int notes) ? notes : 250;

    /// <summary>A bench with a job, in a shop of its own.</summary>
    private protected abstract JobBench WithJob();

    [Fact]
    public async Task Lose_nothing_and_keep_each_ones_order()
    {
        using JobBench bench = WithJob();
        int notes = Notes;
        string[][] acknowledged = await Task.WhenAll(Enumerable.Range(0, 8).Select(who => Write(bench, who, notes)));
        Assert.All(acknowledged, lines => Assert.Equal(notes, lines.Length));
        JobRecord job = bench.Read();
        Assert.Equal((8 * notes) + 1, job.Entries.Length);
        for (int who = 0; who < 8; who++)
        {
            string name = $"worker {who}";
            Assert.Equal(Enumerable.Range(0, notes).Select(note => $"{who}-{note}"), job.Bodies.OfType<Noted>().Where(one => one.By == name).Select(one => one.Text));
        }

        Assert.Equal(0, bench.Job("check").Exit);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(37)]
    [InlineData(120)]
    [InlineData(333)]
    public async Task Killed_while_they_write_lose_no_acknowledged_entry(int after)
    {
        using JobBench bench = WithJob();
        using Process writer = Start(bench, 0);
        Task feeding = Feed(writer, 0, 500);
        var acknowledged = new List<long>();
        while (acknowledged.Count < after && await writer.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken) is { } line)
            acknowledged.Add(SequenceOf(line));
        // In the middle of whatever it is doing; on this system that is signal 9.
        writer.Kill();
        while (await writer.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken) is { } line)
            acknowledged.Add(SequenceOf(line));
        await writer.WaitForExitAsync(TestContext.Current.CancellationToken);
        await feeding;
        JobRecord job = bench.Read();
        Assert.True(acknowledged.Count >= after);
        Assert.Equal(acknowledged, Enumerable.Range(2, acknowledged.Count).Select(one => (long)one));
        Assert.InRange(job.Entries.Length, acknowledged.Count + 1, acknowledged.Count + 2);
        Assert.Equal((0, 0), (bench.Job("check").Exit, bench.Job("tick", "1").Exit));
    }

    [Fact]
    public async Task Tick_a_step_once_whoever_is_first()
    {
        using JobBench bench = WithJob();
        int[] exits = await Task.WhenAll(Enumerable.Range(0, 6).Select(async who =>
        {
            using Process process = Start(bench, who, "tick", "1");
            process.StandardInput.Close();
            await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            return process.ExitCode;
        }));
        Assert.Equal([0, 1, 1, 1, 1, 1], exits.Order());
        Assert.Single(bench.Read().Bodies.OfType<Ticked>());
    }

    private static async Task<string[]> Write(JobBench bench, int who, int notes)
    {
        using Process process = Start(bench, who);
        Task feeding = Feed(process, who, notes);
        string said = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await feeding;
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, process.ExitCode);
        return said.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    private static Process Start(JobBench bench, int who, params string[] words)
    {
        string[] all = words.Length > 0 ? words : ["note", "-"];
        return Process.Start(new ProcessStartInfo("dotnet", ["exec", Path.Combine(AppContext.BaseDirectory, "Contam.Cli.dll"), "job", .. all, "--by", $"worker {who}", "--shop", bench.Shop])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        })!;
    }

    private static async Task Feed(Process process, int who, int notes)
    {
        try
        {
            for (int note = 0; note < notes; note++)
                await process.StandardInput.WriteLineAsync($"{who}-{note}");
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // The reader was killed.
        }
    }

    private static long SequenceOf(string line) => long.Parse(line["Entry ".Length..^1], CultureInfo.InvariantCulture);
}
