using System.Globalization;
using System.Text;
using Contam.Jobs.Work;
using Contam.Reports.Text;

namespace Contam.Jobs.Reports;

/// <summary>The sheet that goes with a released engine: who, what was found, what was done, readings, and what is due after the first run.</summary>
public static class ReleaseSheet
{
    private const string Red = "\u001b[31m";
    private const string Plain = "\u001b[0m";

    /// <summary>The sheet as Markdown.</summary>
    /// <param name="id">The job's id.</param>
    /// <param name="state">How it stands; nothing stands in the way of it.</param>
    /// <param name="by">Who releases it.</param>
    /// <param name="at">When.</param>
    internal static string Write(string id, JobState state, string by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(state);
        var sheet = new StringBuilder();
        Line(sheet, $"# Release of job {id}");
        Line(sheet, "");
        Line(sheet, $"{Safe(state.Opened.Customer)}, {Safe(state.Opened.Engine)}. {Safe(state.Plan.Family.Title)}.");
        Line(sheet, $"Failure: {Safe(JobText.Failure(state))}. In charge: {Safe(state.Opened.Technician)}. Released by {Safe(by)}, {JobText.Day(at)}. The engine may be run.");
        Section(sheet, "Done out of turn", state.OutOfTurn.Select(tick =>
            $"**OUT OF TURN**: step {JobText.Count(tick.Entry.Step.Number)}, by {Safe(tick.Entry.By)}, before step {string.Join(", ", tick.Entry.Skipped.Select(one => JobText.Count(one)))}. Reason given: {Safe(tick.Entry.Anyway!)}"));
        Section(sheet, "Passed over, and done afterwards", state.OutOfTurn.SelectMany(tick => tick.Entry.SkippedSteps.Select(step =>
            $"**PASSED OVER**: {Safe(step.Text)} {Since(state, step)} (for step {JobText.Count(tick.Entry.Step.Number)}, {Safe(tick.Entry.By)})")));
        Section(sheet, "Found", state.Looks.Select(look => Safe(JobText.Sentence(look))).Concat(ContradictionWords.Sentences(state.Plan, id => id).Select(Safe)));
        Section(sheet, "Looks", LookWords.OnSheet(state).Select(Safe));
        Section(sheet, "Done", state.Steps.All.Where(state.IsDone).Select(step => Done(state.TickOf[step.Key])));
        Section(sheet, "Readings", state.Readings.Where(reading => !reading.IsStale).Select(reading =>
            Safe($"{reading.Entry.Limit} at {reading.Entry.Part}: {string.Join(' ', reading.Entry.Readings)}: {reading.Entry.Verdict}; {reading.Entry.Because} ({reading.Entry.By}, {JobText.Day(reading.Entry.At)})")));
        Section(sheet, "Due", state.Steps.All.Where(step => !step.IsBeforeRelease).Select(step =>
            $"{(step.DueAfterRunningHours == 0 ? "At the first run" : FormattableString.Invariant($"After {step.DueAfterRunningHours:0.#} running hours"))}, step {JobText.Count(step.Number)}: {Safe(step.Text)}"));
        return sheet.ToString();
    }

    /// <summary>The sheet as it is shown: on a terminal with colour what was done out of turn stands in red.</summary>
    public static string Shown(string sheet, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(look);
        return !look.HasColour ? sheet : string.Join('\n', sheet.Split('\n').Select(line => line.StartsWith("- **OUT OF TURN**", StringComparison.Ordinal) || line.StartsWith("- **PASSED OVER**", StringComparison.Ordinal) ? Red + line + Plain : line));
    }

    private static string Since(JobState state, Entries.StepStamp step) =>
        state.TickOf.TryGetValue(step.Key, out Tick? done) ? $"Done by {Safe(done.Entry.By)}, {JobText.Day(done.Entry.At)}" : state.Steps.Find(step.Key) is null ? "No longer in the plan" : "Open";

    private static string Done(Tick tick) =>
        $"{JobText.Count(tick.Entry.Step.Number)}. {Safe(tick.Entry.Step.Text)} ({Safe(tick.Entry.By)}, {JobText.Day(tick.Entry.At)}{(tick.Entry.Minutes is { } minutes ? string.Create(CultureInfo.InvariantCulture, $", {minutes:0.#} min") : "")}{(tick.Entry.Note is { } note ? $"; {Safe(note)}" : "")})";

    private static void Section(StringBuilder sheet, string title, IEnumerable<string> lines)
    {
        string[] all = [.. lines];
        if (all.Length == 0)
            return;
        Line(sheet, "");
        Line(sheet, $"## {title}");
        Line(sheet, "");
        foreach (string line in all)
            Line(sheet, $"- {line}");
    }

    // What people wrote is no markup: the signs that would begin some are escaped.
    private static string Safe(string text)
    {
        var safe = new StringBuilder();
        foreach (char one in TextPage.Harmless(text))
            safe.Append(one is '*' or '_' or '`' or '[' or ']' or '<' or '>' or '|' or '#' or '\\' ? "\\" + one : one.ToString());
        return safe.ToString();
    }

    private static void Line(StringBuilder sheet, string line) => sheet.Append(line).Append('\n');
}
