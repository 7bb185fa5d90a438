using System.Collections.Immutable;
using Contam.Families;
using Contam.Measurement.Wording;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>
/// Words a job for the person who does it: what, where, what is special here, until when. All texts come from the standard, the closest that fits; what
/// many steps share stands in a method that is said once. Steps are written in the order of work, so that methods are numbered by first use.
/// </summary>
internal sealed class StepWriter
{
    private readonly ProcedureRequest request;
    private readonly FrameBook frame;
    private readonly PlaceholderText fill;
    private readonly GuardTexts guards;
    private readonly FlushFigures flushes;
    private readonly MethodBook methods;
    private readonly WorkNeeds needs;
    private readonly WordingBook wordings;

    public StepWriter(ProcedureRequest request, ProcedureDraft draft, Bearing bearing)
    {
        this.request = request;
        frame = new FrameBook(request);
        fill = new PlaceholderText(request, draft, bearing, frame);
        guards = new GuardTexts(request, draft);
        flushes = new FlushFigures(request.Family);
        wordings = new WordingBook(request.Standard, bearing);
        methods = new MethodBook(fill);
        needs = new WorkNeeds(request.Family, fill);
    }

    /// <summary>The methods that the steps written so far use, by number.</summary>
    public ImmutableArray<MethodWords> Methods => methods.Used;

    /// <summary>What the steps written so far take.</summary>
    public WorkNeeds Needs => needs;

    public StepWords Write(Job job)
    {
        (string? id, string text) = job.Frame is { } step ? WriteFrame(step, job) : WritePart(job);
        Method? method = id is null ? null : wordings.MethodFor(id, job);
        needs.Add(method?.Needs, job);
        return new StepWords(text, method is null ? null : methods.NumberOf(method, job));
    }

    private (string? Method, string Text) WriteFrame(FrameStep step, Job job)
    {
        needs.Add(step.Needs, job);
        return (step.Method, Joined(step.Say, step.Until, step.StopIf, job));
    }

    private (string? Method, string Text) WritePart(Job job)
    {
        StepWording? wording = wordings.TextFor(job);
        needs.Add(wording?.Needs, job);
        string text = wording is null ? General(job) : Joined(wording.Say, wording.Until, "", job);
        if (!job.Seals.IsEmpty && (wording is null || !wording.Say.Contains("{seals}", StringComparison.Ordinal)))
            text += With(FrameNames.Seals, job);
        text += Figures(job);
        if (job.ForAccess)
            text += With(FrameNames.InTheWay, job);
        if (job.IsOutside)
            text += With(FrameNames.Outside, job);
        if (job.Blank.Length > 0)
            text += With(FrameNames.Blank, job, job.Blank);
        if (wording is { StopIf.Length: > 0 })
            text += " " + StopIf(wording.StopIf, job);
        if (guards.BarrierAt(job) is { } barrier)
            text += With(FrameNames.Barrier, job, [.. barrier]);
        return (wording?.Method, text);
    }

    private string Joined(string say, string until, string stopIf, Job job)
    {
        string text = Sentences.Close(fill.Fill(say, job));
        if (until.Length > 0)
            text += " " + Sentences.Close("until " + Sentences.Clause(fill.Fill(until, job), "until"));
        return stopIf.Length > 0 ? text + " " + StopIf(stopIf, job) : text;
    }

    private string StopIf(string stopIf, Job job) => Sentences.Close("stop if " + Sentences.Clause(fill.Fill(stopIf, job), "stop if"));

    /// <summary>A sentence that the standard has to stand with a step, with a space before it; empty where it has none.</summary>
    private string With(string name, Job job, ImmutableArray<Part> about = default)
    {
        if (frame.Find(FrameSection.WithStep, name, [], [.. job.At]) is not { } sentence)
            return "";
        Job named = about.IsDefault ? job : new Job(job.Id, job.Phase, job.Action) { Parts = about };
        return " " + Joined(sentence.Say, sentence.Until, sentence.StopIf, named);
    }

    /// <summary>What the flow of a flush, or the reading of a test, must come to, where the family gives the figures; else empty.</summary>
    private string Figures(Job job)
    {
        if (job.IsOutside)
            return "";
        if (job.Action == StepAction.Flush && flushes.For(job.IsEach ? [job.At[0]] : job.At) is { } flush)
            return " " + Sentences.Close(flush);
        if (job.Action != StepAction.Test || job.At is not [var part, ..] || LimitFigures.For(request.Family, part) is not { } limit)
            return "";
        return " " + Sentences.Close(limit) + (GasTest.IsTooHigh(request, part) ? With(FrameNames.OnLiquid, job) : "");
    }

    /// <summary>What a standard without texts gets: the action and the parts.</summary>
    private static string General(Job job) => Sentences.Close((job.Action == StepAction.SendOut ? "send out" : job.Action.ToString()) + " " + Sentences.Names(job.At));
}
