using System.Collections.Immutable;
using System.Diagnostics;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Jobs;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
using Contam.Jobs.History;
using Contam.Jobs.Reports;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;
using Contam.Plans;
using Contam.Reports.Text;
using Contam.Treatment.Reading;

namespace Contam.Bench;

/// <summary>
/// A shop with many jobs: how long a list takes, and opening one job. The wanted: 10,000 jobs of 200 entries, a list under 200 ms and a job under 100 ms,
/// both after the start of the process. All jobs are of one plan; ticks, notes and looks differ. The file goes again afterwards.
/// </summary>
internal static class JobsBench
{
    private const string GearcaseFile = "systems/families/outboard-gearcase.yaml";

    public static void Run(int jobs, int entries, Func<int, Action, double> median)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("contam-bench");
        try
        {
            string place = Path.Combine(folder.FullName, "shop.db");
            long start = Stopwatch.GetTimestamp();
            Fill(place, jobs, entries);
            Console.WriteLine($"jobs, {jobs:N0} of {entries:N0} entries: written in {Stopwatch.GetElapsedTime(start).TotalSeconds:0} s, {new FileInfo(place).Length / 1_000_000:N0} MB");
            using IJobStore store = Shops.Open(place, mayCreate: false);
            ImmutableArray<JobSummary> list = store.List();
            string some = list[list.Length / 2].Id;
            // Nothing is kept from one run to the next: each opens the file anew.
            double rows = median(9, () => With(place, book => book.Store.List()));
            double listed = median(9, () => With(place, book => JobText.WriteList(book.Store.List(), place, TextWriter.Null, TextLook.Plain)));
            double open = median(9, () => With(place, book => JobText.WriteList([.. book.Store.List().Where(job => job.State == "open")], place, TextWriter.Null, TextLook.Plain)));
            double read = median(9, () => With(place, book => book.Read(some)));
            double shown = median(9, () => With(place, book =>
            {
                JobRecord job = book.Read(some);
                JobText.WriteJob(job, ReleaseGate.Missing(job.State, KeptSystem.Of(book, job.State.Opened)), TextWriter.Null, TextLook.Plain);
            }));
            double ticked = median(9, () => With(place, book => book.AddToRecord(some, new Noted { At = DateTimeOffset.UnixEpoch, By = "Ada", Text = "one more" })));
            double history = median(3, () => With(place, book => HistoryAnswer.Of(book, "lower-plug", null, null, null)));
            double alone = median(3, () => With(place, book => ShopHistory.Of(book, (_, seen) => seen.Part == "lower-plug", atOnce: 1)));
            double both = median(3, () => With(place, book => ShopHistory.Of(book, (_, seen) => seen.Part == "lower-plug")));
            double entriesRead = median(3, () => With(place, book => _ = book.Store.EntriesOfKind("opened", "looked").ToList()));
            AsProcess(place, median);
            Console.WriteLine($"  list {listed:0} ms (rows alone {rows:0} ms; open ones alone {open:0} ms), open a job {read:0} ms, show it {shown:0} ms, add a note {ticked:0} ms, history of a part {history:0} ms");
            Console.WriteLine($"  looks of the history: on one core {alone:0} ms, on {Environment.ProcessorCount} {both:0} ms, of which the database {entriesRead:0} ms: {alone / both:0.00} times as fast");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>The command itself, as a person calls it: what it takes for this shop beyond what it takes for one without a job, cold code and all.</summary>
    private static void AsProcess(string place, Func<int, Action, double> median)
    {
        const string command = "src/Contam.Cli/bin/Release/net10.0/Contam.Cli.dll";
        if (!File.Exists(command))
        {
            Console.WriteLine($"  the command as a process: not measured, for {command} is not built");
            return;
        }

        string empty = place + "-empty";
        Shops.Open(empty, mayCreate: true).Dispose();
        string some;
        using (IJobStore store = Shops.Open(place, mayCreate: false))
            some = store.List()[0].Id;
        double start = median(7, () => Call("job", "list", "--shop", empty));
        double list = median(7, () => Call("job", "list", "--shop", place));
        double show = median(7, () => Call("job", "show", "--job", some, "--shop", place));
        Console.WriteLine($"  as a process, after the {start:0} ms that a list of no job takes: list {list - start:0} ms, show {show - start:0} ms");

        static void Call(params string[] words)
        {
            using Process process = Process.Start(new ProcessStartInfo("dotnet", ["exec", command, .. words]) { RedirectStandardOutput = true })!;
            process.StandardOutput.ReadToEnd();
            process.WaitForExit();
        }
    }

    private static void With(string place, Action<JobBook> work)
    {
        using IJobStore store = Shops.Open(place, mayCreate: false);
        work(new JobBook(store));
    }

    private static void Fill(string place, int jobs, int entries)
    {
        var standard = BuiltInStandards.HouseOverKinds;
        Family family = FamilyReader.ReadFile(GearcaseFile, standard.CatalogueOf()).Value!;
        PlanDocument plan = Planner.Plan(new PlanRequest(family, standard, [new PartId("pinion")], [Debris.Metal]));
        var question = new JobQuestion(family, standard, BuiltInStandards.Sources, [new PartId("pinion")], [Debris.Metal]);
        WorkSteps steps = WorkSteps.Of(plan, []);
        WorkStep[] before = [.. steps.All.Where(step => step.IsBeforeRelease)];
        using IJobStore store = Shops.Open(place, mayCreate: true);
        var first = new DateTimeOffset(2026, 5, 4, 9, 0, 0, TimeSpan.Zero);
        for (int number = 0; number < jobs; number++)
        {
            (Opened opened, ImmutableArray<string> texts) = JobBook.Opening(question, new JobHead($"Quay {number}", $"port gearcase {number}", "Ada"), new Signature(first.AddHours(number)), plan);
            var bodies = new List<EntryBody> { opened };
            // Every second job is at some place on its way; the others have every step done.
            int done = number % 2 == 0 ? before.Length : number % before.Length;
            if (number % 3 == 0)
                bodies.Add(new Looked { At = opened.At, By = "Ada", Seen = new SeenAt("lower-plug", "metal", number % 2 == 0) });
            bodies.AddRange(before.Take(Math.Min(done, entries - bodies.Count)).Select((step, index) => new Ticked { At = opened.At.AddMinutes(index), By = "Ada", Step = step.Stamp, Minutes = 12.5 }));
            while (bodies.Count < entries)
                bodies.Add(new Noted { At = opened.At.AddMinutes(bodies.Count), By = "Bo", Text = $"note {bodies.Count}: the boat is on the slip until Friday" });
            var linked = ImmutableArray.CreateBuilder<JobEntry>(bodies.Count);
            foreach (EntryBody body in bodies)
                linked.Add(EntryChain.Link(linked.Count, linked.Count == 0 ? EntryChain.Beginning : linked[^1].Hash, EntryJson.Write(body)));
            string id = linked[0].Hash[..8];
            store.Create(new JobAddition(linked.ToImmutable(), JobSummary.Of(id, JobFold.Fold(bodies, _ => plan), linked[^1], bodies[^1])) { Texts = texts });
        }
    }
}
