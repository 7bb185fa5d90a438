using System.Collections.Immutable;
using Contam.Families;
using Contam.Jobs.Entries;
using Contam.Jobs.Reports;
using Contam.Jobs.Work;
using Contam.Measurement.Gauging;

namespace Contam.Jobs;

/// <summary>What may be written into a job, each by its rules: accepted or refused, with the reason. There is no other way in.</summary>
public sealed partial class JobBook
{
    /// <summary>A step is done.</summary>
    public JobAnswer Tick(string id, int number, Signature signature, TickWords? words = null)
    {
        words ??= new TickWords();
        return FaultIn(("note", words.Note), ("reason", words.Anyway)) is { } fault
            ? JobAnswer.Refused(fault)
            : Write(id, signature, (job, by) => WorkRules.Tick(job.State, SystemOf(job), number, words with { Note = KeptOrNone(words.Note), Anyway = KeptOrNone(words.Anyway) }, signature.At, by));
    }

    /// <summary>A step is open again.</summary>
    public JobAnswer Untick(string id, int number, string because, Signature signature) => FaultIn(("reason", because)) is { } fault
        ? JobAnswer.Refused(fault)
        : Write(id, signature, (job, by) => WorkRules.Untick(job.State, SystemOf(job), number, RecordText.Kept(because), signature.At, by));

    /// <summary>A part goes to an outside workshop.</summary>
    public JobAnswer Send(string id, string part, Signature signature) => Write(id, signature, (job, by) => WorkRules.Send(job.State, SystemOf(job), part, signature.At, by));

    /// <summary>A part is back from an outside workshop.</summary>
    public JobAnswer Return(string id, string part, Signature signature) => Write(id, signature, (job, by) => WorkRules.Return(job.State, part, signature.At, by));

    /// <summary>Something on the order list was ordered, or has come.</summary>
    public JobAnswer Supply(string id, string item, bool hasArrived, Signature signature) => Write(id, signature, (job, by) => WorkRules.Supply(job.State, item, hasArrived, signature.At, by));

    /// <summary>Readings were held against a limit of the family that the job keeps.</summary>
    /// <param name="id">The job.</param>
    /// <param name="gauged">What the sums say of them.</param>
    /// <param name="readings">The readings as they were typed.</param>
    /// <param name="signature">Who measured, and when.</param>
    public JobAnswer Measure(string id, GaugeAnswer gauged, ImmutableArray<string> readings, Signature signature)
    {
        ArgumentNullException.ThrowIfNull(gauged);
        return Write(id, signature, (job, by) =>
        {
            Family family = SystemOf(job).Family;
            return family.Limits.FirstOrDefault(limit => limit.Id == gauged.Limit.Id) is { } limit && limit.Part == gauged.Limit.Part
                ? Ruling.Take(new Measured
                {
                    At = signature.At,
                    By = by,
                    Limit = limit.Id,
                    Part = limit.Part.Value,
                    Readings = readings,
                    Verdict = gauged.Judgement.Verdict.ToString().ToLowerInvariant(),
                    Because = gauged.Judgement.Because,
                })
                : Ruling.Refuse(new NoSuchThing(NamedThing.Limit, gauged.Limit.Id, [.. family.Limits.Select(one => one.Id)]));
        });
    }

    /// <summary>Something is written down. Changes nothing, and so asks for no state of the job.</summary>
    public JobAnswer Note(string id, string text, Signature signature) => FaultIn(("note", text)) is { } fault
        ? JobAnswer.Refused(fault)
        : WriteDown(id, signature, by => new Noted { At = signature.At, By = by, Text = RecordText.Kept(text) });

    /// <summary>A photo was taken.</summary>
    public JobAnswer Photo(string id, Picture picture, Signature signature)
    {
        ArgumentNullException.ThrowIfNull(picture);
        return FaultIn(("file", picture.Name), ("note", picture.Note)) is { } fault
            ? JobAnswer.Refused(fault)
            : WriteDown(id, signature, by => new Photographed { At = signature.At, By = by, Name = RecordText.Kept(picture.Name), Sha256 = picture.Sha256, Bytes = picture.Bytes, Note = KeptOrNone(picture.Note) });
    }

    /// <summary>May the engine be run? Written only when nothing at all is missing; of a job that is released already the sheet is given again.</summary>
    public JobAnswer Release(string id, Signature signature)
    {
        ArgumentNullException.ThrowIfNull(signature);
        if (FaultIn(("name", signature.By)) is { } fault)
            return JobAnswer.Refused(fault);
        ImmutableArray<Missing> missing = [];
        string sheet = "";
        JobRecord? before = null;
        JobRecord? after = Add(id, job =>
        {
            before = job;
            missing = Missing(job);
            if (!missing.IsEmpty)
                return null;
            if (job.State.ReleasedAt is { } at)
            {
                sheet = Text(((Released)job.Bodies[(int)at - 1]).Sheet);
                return null;
            }

            string by = RecordText.Kept(signature.By ?? job.Technician);
            sheet = ReleaseSheet.Write(job.Id, job.State, by, signature.At);
            return new Decision([new Released { At = signature.At, By = by, Sheet = EntryChain.Sha256(sheet) }], [sheet]);
        });
        if (missing.IsEmpty)
            return JobAnswer.Released(after ?? before!, after?.Summary.Sequence ?? 0, sheet);
        TakeBackIfShut(before!, signature);
        return JobAnswer.Refused(new NotComplete(missing));
    }

    /// <summary>Everything that stands between the engine of a job and its first start; empty where it may be run.</summary>
    public ImmutableArray<Missing> Missing(JobRecord job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return ReleaseGate.Missing(job.State, SystemOf(job));
    }

    private JobAnswer Write(string id, Signature signature, Func<JobRecord, string, Ruling> rule)
    {
        ArgumentNullException.ThrowIfNull(signature);
        if (FaultIn(("name", signature.By)) is { } fault)
            return JobAnswer.Refused(fault);
        return Decide(id, signature, (job, by) =>
        {
            Ruling ruling = rule(job, by);
            return (ruling.Body is { } body ? Decision.Of(body) : null, ruling.Refusal);
        });
    }

    /// <summary>Adds what is decided of the job as it stands when it is written to, for the one who signs. What is refused writes nothing.</summary>
    private JobAnswer Decide(string id, Signature signature, Func<JobRecord, string, (Decision? Decision, Refusal? Why)> decide)
    {
        Refusal? why = null;
        JobRecord? before = null;
        JobRecord? after = Add(id, job =>
        {
            before = job;
            (Decision? decision, why) = decide(job, RecordText.Kept(signature.By ?? job.Technician));
            return why is null ? decision : null;
        });
        if (after is not null)
            return Answer(before!, after);
        if (why is null)
            return JobAnswer.Written(before!, 0, [], []);
        TakeBackIfShut(before!, signature);
        return JobAnswer.Refused(why);
    }

    private JobAnswer WriteDown(string id, Signature signature, Func<string, EntryBody> body)
    {
        ArgumentNullException.ThrowIfNull(signature);
        if (FaultIn(("name", signature.By)) is { } fault)
            return JobAnswer.Refused(fault);
        // Whoever writes a thousand notes names himself, and nothing is read for it.
        long sequence = AddToRecord(id, body(RecordText.Kept(signature.By ?? Read(id).Technician)));
        return JobAnswer.WrittenDown(sequence);
    }

    private JobAnswer Answer(JobRecord before, JobRecord after)
    {
        EntryBody[] added = [.. after.Bodies.Skip(before.Bodies.Length)];
        IEnumerable<OpenAgain> reopened = added.SelectMany(body => body switch
        {
            Unticked one => one.Reopened,
            Moved one => one.Reopened,
            Decided one => one.Reopened,
            Replanned one => one.Reopened,
            _ => Enumerable.Empty<OpenAgain>(),
        });
        return JobAnswer.Written(
            after,
            before.Summary.Sequence + added.Count(body => body is not Withdrawn),
            [.. reopened.Where(one => after.State.Steps.Find(one.Key) is not null).Select(one => new ReopenedStep(after.State.Steps.Find(one.Key)!, one.Because))],
            added.Any(body => body is Withdrawn) ? Missing(after) : []);
    }

    // A record of an earlier version may be released although the gate is shut by now.
    private void TakeBackIfShut(JobRecord job, Signature signature)
    {
        if (job.IsReleased && Missing(job) is { IsEmpty: false } missing)
            TryAdd(job, Decision.Of(new Withdrawn { At = signature.At, By = RecordText.Kept(signature.By ?? job.Technician), Because = [.. missing.Select(one => one.Text)] }));
    }

    private static TextRefused? FaultIn(params ReadOnlySpan<(string Field, string? Text)> texts)
    {
        foreach ((string field, string? text) in texts)
        {
            if (text is not null && RecordText.FaultOf(text) is { } fault)
                return new TextRefused(field, fault);
        }

        return null;
    }

    private static string? KeptOrNone(string? text) => text is null ? null : RecordText.Kept(text);
}
