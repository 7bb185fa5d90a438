using System.Globalization;
using Contam.Families;
using Contam.Spread;
using Contam.Measurement.Wording;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>
/// Which jobs are the same work at like parts, so that one step can name them all: same phase, action and condition, and parts that repeat one description or
/// are of one kind, stand in the same circuits, and of which a step would say the same. Work that is only worded alike shares a step where it comes one after
/// the other anyway.
/// </summary>
internal sealed class LikeWork
{
    private readonly ProcedureRequest request;
    private readonly Bearing bearing;
    private readonly FlushFigures flushes;
    private readonly WordingBook wordings;
    private readonly string?[] keys;
    private readonly string?[] wordedKeys;

    public LikeWork(ProcedureRequest request, ProcedureDraft draft, Bearing bearing)
    {
        this.request = request;
        this.bearing = bearing;
        flushes = new FlushFigures(request.Family);
        wordings = new WordingBook(request.Standard, bearing);
        var comesOff = draft.Graph.Jobs.Where(job => job.Action == StepAction.Remove).Select(job => job.Part!.Id).ToHashSet();
        keys = [.. draft.Graph.Jobs.Select(job => KeyOf(job, comesOff))];
        wordedKeys = [.. draft.Graph.Jobs.Select(job => keys[job.Id] is null ? null : WordedKeyOf(job))];
    }

    /// <summary>The same text for jobs that are the same work; <c>null</c> for one that stays by itself.</summary>
    public string? KeyOf(int job) => keys[job];

    /// <summary>The same text for jobs that one line can say: the text, the method and all figures in it are the same, whatever the kinds of the parts. <c>null</c> for one that stays by itself.</summary>
    public string? WordedKeyOf(int job) => wordedKeys[job];

    private string? WordedKeyOf(Job job)
    {
        if (wordings.TextFor(job) is not { } text || job.Frame is not null)
            return keys[job.Id];
        Method? method = text.Method is { } id ? wordings.MethodFor(id, job) : null;
        return Key(
            job,
            text.Say,
            text.Until,
            text.StopIf,
            method is null ? "" : $"{method.Say} {method.Until} {method.StopIf}",
            // A flush is by what flows; for other work every caution bears on all parts of the step.
            job.Action is StepAction.Flush or StepAction.Clean ? string.Join(' ', bearing.CircuitsOf(job.Part!).Select(circuit => circuit.Fluid)) : "");
    }

    private string? KeyOf(Job job, HashSet<PartId> comesOff) =>
        job.Part is not { } part || job.DecidingLook is not null || !job.With.IsEmpty || !MayBeShared(job, part, comesOff)
            ? null
            : Key(job, job.Topic, part.RepeatOf is { } repeat ? "# " + repeat : part.Kind.Name, string.Join(' ', bearing.CircuitsOf(part).Select(circuit => circuit.Name)));

    /// <summary>What must be the same in all work that shares a step, and in work that shares it for this reason.</summary>
    private string Key(Job job, params ReadOnlySpan<string> reason)
    {
        Part part = job.Part!;
        string[] facts =
        [
            job.Phase.ToString(),
            job.Action.ToString(),
            job.About?.ToString() ?? "",
            .. reason,
            job.ForAccess ? "access" : "",
            job.IsOutside || job.Action == StepAction.SendOut ? string.Create(CultureInfo.InvariantCulture, $"{part.SendOut?.Who} {part.SendOut?.Days}") : "",
            string.Create(CultureInfo.InvariantCulture, $"{part.Lead?.TotalDays}"),
            string.Join(' ', job.Condition.OnlyIf) + "/" + string.Join(' ', job.Condition.Unless),
            job.Action == StepAction.Inspect ? part.Inspect?.How ?? "" : "",
            job.Action == StepAction.Flush ? flushes.For([part]) ?? "" : "",
            job.Action == StepAction.Test ? LimitFigures.For(request.Family, part) ?? "" : "",
            string.Join(' ', request.Spreads.Select(spread => ReachOf(spread, part))),
        ];
        return string.Join('\n', facts);
    }

    /// <summary>A flush of several parts that are fitted is one flow through all of them; only parts off the engine are flushed in a row.</summary>
    private static bool MayBeShared(Job job, Part part, HashSet<PartId> comesOff) => job.Action switch
    {
        StepAction.Flush => comesOff.Contains(part.Id) && job.Blank.IsEmpty,
        StepAction.Inspect => job.Drains.IsEmpty && (job.About is not null || job.Phase != Phase.Confirm),
        StepAction.Remove or StepAction.Clean or StepAction.Test or StepAction.Replace or StepAction.Refit or StepAction.SendOut => true,
        StepAction.Note => job.IsWait,
        _ => false,
    };

    private static string ReachOf(DebrisSpread spread, Part part) =>
        spread.Find(part.Id) is { } reached ? reached.Grade.ToString() : "";
}
