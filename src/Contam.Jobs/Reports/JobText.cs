using System.Globalization;
using Contam.Jobs.Work;
using Contam.Plans;
using Contam.Reports.Text;

namespace Contam.Jobs.Reports;

/// <summary>Jobs for people: the list, how one stands, and what can be done next.</summary>
public static class JobText
{
    private const int NumberWidth = 4;
    private const int MarginWidth = 8;

    /// <summary>Every job, a line or two each.</summary>
    /// <param name="jobs">The jobs.</param>
    /// <param name="place">Which shop they are of, in words.</param>
    /// <param name="writer">Takes the text.</param>
    /// <param name="look">How text looks.</param>
    /// <param name="isNarrowed">Whether only some jobs were asked for.</param>
    public static void WriteList(IReadOnlyList<JobSummary> jobs, string place, TextWriter writer, TextLook look, bool isNarrowed = false)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        var page = new TextPage(writer, look);
        if (jobs.Count == 0)
            page.Paragraph(isNarrowed ? $"No job in {place} is like that." : $"No job yet in {place}. contam job open makes one.");
        foreach (JobSummary job in jobs)
            page.Row(0, (job.Id, 8), (job.State, 8), ($"{Count(job.Done)}/{Count(job.Steps)}", 7), ($"{job.Customer}, {job.Engine}: {(job.Failed.Length > 0 ? job.Failed : "a find")}, {job.Debris}{(job.Unanswered > 0 ? $"; {Count(job.Unanswered)} finds to plan with" : "")}", 0));
    }

    /// <summary>How a job stands: its steps, what was seen and measured, and what stands between the engine and its first start.</summary>
    public static void WriteJob(JobRecord job, IReadOnlyList<Missing> missing, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(missing);
        var page = new TextPage(writer, look);
        JobState state = job.State;
        page.Subheading($"Job {job.Id}: {state.Opened.Customer}, {state.Opened.Engine}");
        page.Paragraph($"{state.Plan.Family.Title}; {Failure(state)}. In charge: {state.Opened.Technician}. {(state.IsReleased ? "Released." : "Open: the engine may not be run.")}");
        if (!state.IsReleased && state.Withdrawn is { } back)
            page.Paragraph($"The release was taken back ({back.By}, {Day(back.At)}): {string.Join("; ", back.Because.Take(5))}{(back.Because.Length > 5 ? $"; and {Count(back.Because.Length - 5)} more" : "")}.");
        WriteLooks(page, state);
        page.Heading("Steps");
        bool hasLooks = !state.Plan.Looks.IsEmpty;
        foreach (WorkStep step in state.Steps.All)
        {
            bool isDone = state.TickOf.TryGetValue(step.Key, out Tick? tick);
            string by = isDone ? $"({tick!.Entry.By}, {Day(tick.Entry.At)}) " : state.ReopenedBecause.TryGetValue(step.Key, out string? why) ? $"(open again: {why}) " : "";
            string mark = isDone ? "[x]" : state.IsStruck(step) ? "[-]" : state.ConditionOf(step) == StepCondition.Waits ? "[?]" : "[ ]";
            if (hasLooks)
                page.Row(0, (mark, 3), (Count(step.Number), NumberWidth), (LookWords.Margin(step), MarginWidth), (by + step.Text, 0));
            else
                page.Row(0, (mark, 3), (Count(step.Number), NumberWidth), (by + step.Text, 0));
        }

        WriteSeen(page, state);
        page.Heading("Before the first start");
        if (missing.Count == 0)
            page.Paragraph(state.IsReleased ? "Nothing is open. The job is released." : "Nothing is open. contam job release.");
        WriteMissing(page, missing);
    }

    /// <summary>What is missing, each with what to do.</summary>
    public static void WriteMissing(TextPage page, IReadOnlyList<Missing> missing)
    {
        ArgumentNullException.ThrowIfNull(page);
        foreach (Missing one in missing)
            page.Paragraph($"{char.ToUpperInvariant(one.Text[0])}{one.Text[1..]}. {one.Mend}", 2, "-");
    }

    /// <summary>What can be done now, what is away or on its way, and what waits for what.</summary>
    public static void WriteNext(JobRecord job, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(job);
        var page = new TextPage(writer, look);
        JobState state = job.State;
        page.Subheading($"Job {job.Id}: {state.Opened.Customer}, {state.Opened.Engine}");
        foreach (Plans.PlanLook due in state.Plan.Looks.Where(due => state.StandingOf(due.Id) == LookStanding.Due))
            page.Paragraph($"Look {due.Id} decides: {LookWords.Places(due)}, for {string.Join(" and ", due.Debris)}, in step {Count(due.Step)}. When it is made: {LookWords.Ask(due)}.");
        page.Heading("Now");
        foreach (WorkStep step in TickOrder.Now(state))
            page.Row(0, (Count(step.Number), NumberWidth), (step.Technician is { } who ? $"technician {Count(who)}" : "no hands", 12), (step.Text, 0));
        page.Heading("Away and on the way");
        foreach (string part in state.Away)
            page.Paragraph($"{part} is at the outside workshop.");
        foreach (string item in state.Ordered.Where(item => !state.Arrived.Contains(item)))
            page.Paragraph($"{item} is ordered and has not come.");
        page.Heading("Waits");
        foreach ((WorkStep step, var waitsFor) in TickOrder.Waiting(state))
            page.Row(0, (Count(step.Number), NumberWidth), ($"waits for {string.Join(", ", waitsFor.Select(one => Count(one.Number)))}", 0));
    }

    private static void WriteLooks(TextPage page, JobState state)
    {
        if (state.Plan.Looks.IsEmpty)
            return;
        page.Heading("Looks");
        foreach (Plans.PlanLook look in state.Plan.Looks)
            page.Paragraph(LookWords.Sentence(state, look));
        int struck = state.Steps.All.Count(step => !state.IsDone(step) && state.IsStruck(step));
        int waits = state.Open.Count(step => state.ConditionOf(step) == StepCondition.Waits);
        page.Paragraph($"[-] struck by a look: {Count(struck)}. [?] a look decides: {Count(waits)}. The letters name the looks that a step hangs on.");
    }

    private static void WriteSeen(TextPage page, JobState state)
    {
        page.Heading("Seen");
        foreach (LookTaken look in state.Looks)
            page.Paragraph(Sentence(look) + (look.IsAnswered ? "" : " No plan has been made with it yet."));
        foreach (string sentence in ContradictionWords.Sentences(state.Plan, id => id))
            page.Paragraph(sentence);
        page.Heading("Measured");
        foreach (ReadingTaken reading in state.Readings)
            page.Paragraph($"{reading.Entry.Limit} at {reading.Entry.Part}: {reading.Entry.Verdict}, {reading.Entry.Because} ({reading.Entry.By}).{(reading.IsStale ? " Before the part was last worked on." : "")}");
    }

    /// <summary>A look as a sentence.</summary>
    internal static string Sentence(LookTaken look) =>
        $"{look.Seen.Part}: {(look.Seen.Found ? $"{look.Seen.Debris} found{Looks(look.Seen)}" : $"clean of {look.Seen.Debris}")}{(look.Seen.Failed ? ", and it has failed" : "")} ({look.By}).";

    internal static string Looks(Entries.SeenAt seen)
    {
        string[] said =
        [
            .. seen.SizeUm is { } size ? [string.Create(CultureInfo.InvariantCulture, $"{size:0.###} µm")] : Array.Empty<string>(),
            .. seen.Form is { } form ? [form] : Array.Empty<string>(),
            .. seen.Magnetic is { } magnetic ? [magnetic ? "magnetic" : "not magnetic"] : Array.Empty<string>(),
        ];
        return said.Length == 0 ? "" : $" ({string.Join(", ", said)})";
    }

    /// <summary>What has failed, and with what, as a clause.</summary>
    internal static string Failure(JobState state) =>
        $"{(state.Plan.Failed.IsEmpty ? "a find" : FailedOf(state.Plan))}{(state.Plan.Debris.IsEmpty ? "" : $", {string.Join(", ", state.Plan.Debris)}")}";

    private static string FailedOf(PlanDocument plan) =>
        $"{string.Join(", ", PlanFailures.AllShedTheSame(plan.Failed, plan.Debris) ? plan.FailedParts() : plan.Failed.Select(PlanFailures.Written))} failed";

    internal static string Day(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    internal static string Count(long number) => number.ToString(CultureInfo.InvariantCulture);
}
