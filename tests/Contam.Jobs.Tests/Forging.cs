using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
using Contam.Jobs.Reports;
using Contam.Jobs.Stores;
using Contam.Jobs.Work;
using Contam.Plans;

namespace Contam.Jobs.Tests;

/// <summary>Exports as somebody would make them who can work out hashes and knows the form, but was not allowed to do what they say.</summary>
internal static class Forging
{
    /// <summary>The export of a bench's job, three steps of which are done, forged in this way.</summary>
    public static string Of(JobBench bench, string forgery)
    {
        JobRecord job = bench.Read();
        using JobBook book = JobBook.Open(bench.Shop, ShopUse.Write);
        JsonNode export = JsonNode.Parse(JobJson.Export(book, job, book.Missing(job)))!;
        switch (forgery)
        {
            case "its last entries cut off":
                Cut(export, 2);
                break;
            case "its last entries and the count cut off":
                Cut(export, 2);
                export["record"]!["count"] = 2;
                break;
            case "its end made to fit":
                Cut(export, 2);
                export["record"]!["count"] = 2;
                export["record"]!["end"] = job.Entries[1].Hash;
                break;
            case "its state edited":
                export["state"] = "released";
                break;
            case "what is missing edited":
                export["missing"] = new JsonArray();
                break;
            case "a release made up":
                return With(book, job, [], new Released { At = At, By = "Eve", Sheet = EntryChain.Sha256("run it") }, "run it");
            case "a refit made up":
                return With(book, job, [], Tick(job, job.Steps.First(step => step.Action == StepAction.Refit)) with { Anyway = "quick" });
            case "a tick out of turn made to look in turn":
                return With(book, job, [], Tick(job, job.Steps.First(step => step.Action == StepAction.Remove && TickOrder.OpenBefore(job.State, step).Length > 0)));
            case "a find taken back":
                return With(book, job, [Look(found: true)], Look(found: false));
            case "a plan with a step less":
                return WithAnotherPlan(book, job);
            default:
                throw new ArgumentOutOfRangeException(nameof(forgery), forgery, "not known");
        }

        return export.ToJsonString();
    }

    private static DateTimeOffset At { get; } = new(2026, 5, 4, 12, 0, 0, TimeSpan.Zero);

    private static Ticked Tick(JobRecord job, WorkStep step) => new()
    {
        At = At, By = "Eve", Step = step.Stamp,
        Skipped = [], SkippedSteps = [],
    };

    private static Looked Look(bool found) => new() { At = At, By = "Eve", Seen = new SeenAt("lower-plug", "metal", found) };

    private static void Cut(JsonNode export, int left)
    {
        JsonArray entries = export["record"]!["entries"]!.AsArray();
        while (entries.Count > left)
            entries.RemoveAt(entries.Count - 1);
    }

    private static string WithAnotherPlan(JobBook book, JobRecord job)
    {
        PlanDocument plan = job.Plan;
        string less = PlanJson.Write(plan with { Steps = plan.Steps.RemoveAt(plan.Steps.Length - 1) });
        Opened opened = job.State.Opened with { Plan = EntryChain.Sha256(less) };
        return Export(book, [opened], [less, .. opened.Family.Concat(opened.Standard).Select(file => book.Text(file.Sha256))]);
    }

    private static string With(JobBook book, JobRecord job, ImmutableArray<EntryBody> before, EntryBody last, params string[] texts) =>
        Export(book, [.. job.Bodies, .. before, last], [book.Text(job.State.PlanSha256), .. job.State.Opened.Family.Concat(job.State.Opened.Standard).Select(file => book.Text(file.Sha256)), .. texts]);

    /// <summary>An export with a chain of its own, and standing that goes with it.</summary>
    private static string Export(JobBook book, ImmutableArray<EntryBody> bodies, string[] texts)
    {
        var textOf = texts.DistinctBy(EntryChain.Sha256).ToDictionary(EntryChain.Sha256, StringComparer.Ordinal);
        var entries = ImmutableArray.CreateBuilder<JobEntry>();
        foreach (EntryBody body in bodies)
            entries.Add(EntryChain.Link(entries.Count, entries.Count == 0 ? EntryChain.Beginning : entries[^1].Hash, EntryJson.Write(body)));
        JobState state = JobFold.Fold(bodies, sha256 => PlanJson.Read(textOf[sha256]));
        var job = new JobRecord(JobSummary.Of(entries[0].Hash[..8], state, entries[^1], bodies[^1]), entries.ToImmutable(), bodies, state);
        return JobJson.Export(job, book.Missing(job), sha256 => textOf[sha256]);
    }
}
