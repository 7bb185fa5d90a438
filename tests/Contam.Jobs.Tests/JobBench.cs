using Contam.Cli;
using Contam.Jobs.Stores;
using Contam.Reports.Text;
using Contam.Support;

namespace Contam.Jobs.Tests;

/// <summary>What a call of the command came to.</summary>
internal sealed record Answer(int Exit, string Out, string Error);

/// <summary>A shop of its own, in a folder that goes again, with a clock that goes on a minute at every look.</summary>
internal sealed class JobBench : IDisposable
{
    public const string Gearcase = "tests/Support/Systems/gearcase.yaml";

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");
    private readonly Clock clock = new();

    private readonly string? place;

    /// <summary>A bench without a job yet.</summary>
    /// <param name="place">Where its shop is; <c>null</c> for a file in the bench's folder.</param>
    public JobBench(string? place = null)
    {
        this.place = place;
    }

    /// <summary>The shop's place; a file where nothing else was said.</summary>
    public string Shop => place ?? At("shop.db");

    public string At(string name) => Path.Combine(folder.FullName, name);

    /// <summary>A bench with a job for a gearcase whose pinion shed metal.</summary>
    public static JobBench WithJob(string plan = $"plan {Gearcase} --failed pinion --debris metal --looks 0 --format json", string family = Gearcase, string? place = null)
    {
        var bench = new JobBench(place);
        bench.WritePlan(plan);
        Answer opened = bench.Open(family);
        Assert.Equal((0, ""), (opened.Exit, opened.Error));
        return bench;
    }

    /// <summary>The words that open a job with the plan of this bench.</summary>
    public string[] OpenWords => OpenWordsFor(Gearcase);

    /// <summary>Writes a plan into the bench's folder.</summary>
    public void WritePlan(string plan = $"plan {Gearcase} --failed pinion --debris metal --looks 0 --format json") => File.WriteAllText(At("plan.json"), Call(plan.Split(' ')).Out);

    /// <summary>Opens a job with that plan.</summary>
    public Answer Open(string family = Gearcase) => Job(OpenWordsFor(family));

    /// <summary>Calls <c>contam job</c> with these words on this shop.</summary>
    public Answer Job(params string[] words) => Call(["job", .. words, "--shop", Shop]);

    /// <summary>Calls the command with colour, at a terminal where a person answers this.</summary>
    public Answer JobAtTerminal(string typed, params string[] words) => Call(["job", .. words, "--shop", Shop], TextLook.Plain with { HasColour = true }, typed);

    /// <summary>Calls any command where a person answers this.</summary>
    public Answer CallAtTerminal(string typed, params string[] words) => Call(words, TextLook.Plain, typed);

    public Answer Call(params string[] words) => Call(words, TextLook.Plain, null);

    /// <summary>Ticks every step before the first start whose number is not left out, each in its turn.</summary>
    public void TickAll(params int[] leftOut)
    {
        foreach (Work.WorkStep step in Read().State.Open.Where(step => step.IsBeforeRelease && !leftOut.Contains(step.Number)).ToArray())
            Assert.Equal((0, ""), Job("tick", Number(step.Number)) is var answer ? (answer.Exit, answer.Error) : default);
    }

    /// <summary>Ticks the steps up to and with this one.</summary>
    public void TickTo(int last)
    {
        for (int number = 1; number <= last; number++)
            Assert.Equal(0, Job("tick", Number(number)).Exit);
    }

    public System.Collections.Immutable.ImmutableArray<Work.JobSummary> List() => ListOf(Shop);

    public static System.Collections.Immutable.ImmutableArray<Work.JobSummary> ListOf(string shop)
    {
        using IJobStore store = Shops.Open(shop, mayCreate: false);
        return store.List();
    }

    public JobRecord Read()
    {
        using IJobStore store = Shops.Open(Shop, mayCreate: false);
        var book = new JobBook(store);
        return book.Read(book.Store.List()[0].Id);
    }

    /// <summary>The number of the only step of this action at this part.</summary>
    public int StepAt(StepAction action, string part, Phase phase) => Read().State.Steps.All.Single(step => step.Action == action && step.Phase == phase && step.Parts.Contains(part)).Number;

    public void Dispose() => folder.Delete(recursive: true);

    public static string Number(long number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private string[] OpenWordsFor(string family) => ["open", RepositoryFiles.At(family), "--plan", At("plan.json"), "--customer", "Quay 4", "--engine", "port gearcase", "--technician", "Ada"];

    private Answer Call(string[] words, TextLook look, string? typed)
    {
        Environment.CurrentDirectory = RepositoryFiles.At("");
        using var answers = new StringWriter { NewLine = "\n" };
        using var rest = new StringWriter { NewLine = "\n" };
        int exit = ContamCommand.Run(words, new Shell(answers, rest, look) { Clock = clock, CanAsk = typed is not null, In = new StringReader(typed ?? "") });
        return new Answer(exit, answers.ToString(), rest.ToString().Replace(folder.FullName, "FOLDER", StringComparison.Ordinal));
    }

    private sealed class Clock : TimeProvider
    {
        private DateTimeOffset now = new(2026, 5, 4, 9, 0, 0, TimeSpan.Zero);

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => now = now.AddMinutes(1);
    }
}
