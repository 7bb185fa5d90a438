using System.Diagnostics;
using System.Globalization;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Jobs.Tests.Stores;
using Contam.Plans;

namespace Contam.Jobs.Tests;

/// <summary>
/// Real processes of the command that write to one job at once, and that are killed while they write.
/// <c>CONTAM_NOTES=1000</c> writes as many notes and ticks in each of the eight processes; 60 and 40 otherwise.
/// </summary>
public abstract class SeveralAtOnce
{
    private static int Notes => int.TryParse(Environment.GetEnvironmentVariable("CONTAM_NOTES"), NumberStyles.None, CultureInfo.InvariantCulture, out int notes) ? notes : 60;

    private static DateTimeOffset Noon { get; } = new(2026, 5, 4, 12, 0, 0, TimeSpan.Zero);

    private static int Ticks => int.TryParse(Environment.GetEnvironmentVariable("CONTAM_NOTES"), NumberStyles.None, CultureInfo.InvariantCulture, out int ticks) ? ticks : 40;

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

    [Fact]
    public async Task Tick_and_lose_no_tick()
    {
        using JobBench bench = WithJob();
        int each = Ticks;
        // A plan of steps that wait for nothing, so that everybody's ticks are in turn; they are shared out like cards.
        string id = OpenWithSteps(bench, 8 * each);
        string[][] said = await Task.WhenAll(Enumerable.Range(0, 8).Select(who => Call(bench, who, Enumerable.Range(0, each).Select(tick => JobBench.Number((8 * tick) + who + 1)), "tick", "-", "--job", id)));
        Assert.All(said, lines => Assert.Equal(each, lines.Length));
        using IJobStore store = Shops.Open(bench.Shop, mayCreate: false);
        JobRecord job = new JobBook(store).Read(id);
        Assert.Equal((8 * each) + 1, job.Entries.Length);
        Assert.All(job.State.Steps.All, step => Assert.True(job.State.IsDone(step)));
        for (int who = 0; who < 8; who++)
            Assert.Equal(Enumerable.Range(0, each).Select(tick => (8 * tick) + who + 1), job.Bodies.OfType<Ticked>().Where(one => one.By == $"worker {who}").Select(one => one.Step.Number));
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
        Task feeding = Feed(writer, Enumerable.Range(0, 500).Select(note => $"0-{note}"));
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

    [Fact]
    public void Come_to_their_turn_though_others_are_quicker_every_time()
    {
        using JobBench bench = WithJob();
        using var race = new Race(bench);
        var seen = new List<int>();
        JobRecord? after = race.Slower.Add(race.Job, job =>
        {
            seen.Add(job.Entries.Length);
            return Decision.Of(new Noted { At = Noon, By = "the slower one", Text = $"after {job.Entries.Length}" });
        });
        JobRecord job = bench.Read();
        Assert.Equal(job.Entries, after!.Entries);
        Assert.Equal($"after {job.Entries.Length - 1}", Assert.Single(job.Bodies.OfType<Noted>(), one => one.By == "the slower one").Text);
        Assert.Equal(seen.Distinct(), seen);
        // What it has read is what the next one builds on, and who decides that there is nothing to add adds nothing.
        Assert.Null(race.Slower.Add(race.Job, _ => null));
        Assert.Equal(job.Entries.Length, bench.Read().Entries.Length);
    }

    [Fact]
    public void Add_nothing_where_what_was_to_be_done_is_done_by_then()
    {
        using JobBench bench = WithJob();
        using var race = new Race(bench);
        Assert.Null(race.Slower.Add(race.Job, job => job.Entries.Length > 4 ? null : Decision.Of(new Noted { At = Noon, By = "Al", Text = "late" })));
        Assert.Equal((5, 5L, 0), (bench.Read().Entries.Length, race.LastOfQuicker, bench.Read().Bodies.OfType<Noted>().Count(one => one.By == "Al")));
    }

    private static string OpenWithSteps(JobBench bench, int steps)
    {
        using IJobStore store = Shops.Open(bench.Shop, mayCreate: false);
        var book = new JobBook(store);
        JobRecord made = book.Read(store.List()[0].Id);
        string plan = PlanJson.Write(made.State.Plan with
        {
            Steps = [.. Enumerable.Range(1, steps).Select(number => new PlanStep { Number = number, Phase = Phase.CleanOut, Action = StepAction.Note, Text = $"Step {number}." })],
        });
        return book.Open(made.State.Opened with { Customer = "Quay 9", Plan = EntryChain.Sha256(plan) }, [plan]).Id;
    }

    private static Task<string[]> Write(JobBench bench, int who, int notes) => Call(bench, who, Enumerable.Range(0, notes).Select(note => $"{who}-{note}"));

    private static async Task<string[]> Call(JobBench bench, int who, IEnumerable<string> typed, params string[] words)
    {
        using Process process = Start(bench, who, words);
        Task feeding = Feed(process, typed);
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

    private static async Task Feed(Process process, IEnumerable<string> lines)
    {
        try
        {
            foreach (string line in lines)
                await process.StandardInput.WriteLineAsync(line);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // The reader was killed.
        }
    }

    private static long SequenceOf(string line) => long.Parse(line["Entry ".Length..^1], CultureInfo.InvariantCulture);

    /// <summary>Two who write to one job, of whom the slower finds a note of the quicker one before whatever it wants to add.</summary>
    private sealed class Race : IDisposable
    {
        private readonly IJobStore quicker;
        private readonly IJobStore store;

        public Race(JobBench bench)
        {
            quicker = Shops.Open(bench.Shop, mayCreate: false);
            store = Shops.Open(bench.Shop, mayCreate: false);
            Job = store.List()[0].Id;
            var book = new JobBook(quicker);
            Slower = new JobBook(new WatchedStore(store) { BeforeAppend = () => LastOfQuicker = book.AddToRecord(Job, new Noted { At = Noon, By = "the quicker one", Text = "quick" }) });
        }

        public string Job { get; }

        public JobBook Slower { get; }

        public long LastOfQuicker { get; private set; }

        public void Dispose()
        {
            quicker.Dispose();
            store.Dispose();
        }
    }
}
