using System.Globalization;
using Contam.Families;
using Contam.Jobs.Entries;
using Contam.Jobs.Reports;
using Contam.Jobs.Work;
using Contam.Plans;
using Contam.Treatment.Reading;

namespace Contam.Jobs.Documents;

/// <summary>
/// Whether a record could have come about: every entry is asked for once more by the rules, given how the job stood before it, and every plan is made again.
/// A chain of hashes shows that entries hang together; it does not show that anybody would have been allowed to write them.
/// Not judged, because the record has nothing to judge it by: whether somebody really did what he ticked, saw what he says, and read the gauge right.
/// Cost: a fold step and a play of the steps for each tick, a plan for each plan.
/// </summary>
internal static class JobReplay
{
    /// <summary>The first entry that the rules do not give, as a clause; <c>null</c> where they give every one.</summary>
    /// <param name="id">The job's id.</param>
    /// <param name="bodies">What the entries say, in order; the first opens the job.</param>
    /// <param name="text">A kept text by its SHA-256.</param>
    /// <exception cref="Stores.ShopException">A kept text is not understood.</exception>
    public static string? FirstWrong(string id, IReadOnlyList<EntryBody> bodies, Func<string, string> text)
    {
        if (bodies.Count == 0 || bodies[0] is not Opened opened)
            return "it does not begin with an entry that opens a job";
        KeptSystem kept = KeptSystem.Of(text, opened);
        if (OpeningWrong(opened, kept, text) is { } wrong)
            return $"entry 1: {wrong}";
        var fold = new JobFold(sha256 => PlanJson.Read(text(sha256)));
        bool mustTakeBack = false;
        for (int index = 0; index < bodies.Count; index++)
        {
            string entry = $"entry {(index + 1).ToString(CultureInfo.InvariantCulture)}";
            EntryBody body = bodies[index];
            if (mustTakeBack && body is not Withdrawn)
                return $"{entry}: what is written before it shuts the gate, and the release was not taken back";
            mustTakeBack = false;
            JobState? before = index > 0 && body is not (Noted or Photographed) ? fold.State() : null;
            bool wasReleased = before is { IsReleased: true };
            if (before is not null && WrongIn(id, before, body, kept, text) is { } what)
                return $"{entry}: {what}";
            fold.Take(index + 1, body);
            // Looks and the plan that is made with them are written in one change, and the gate is asked when it is over.
            if (wasReleased && body is not (Withdrawn or Released) && !(body is Looked && index + 1 < bodies.Count && bodies[index + 1] is Looked or Replanned))
                mustTakeBack = !ReleaseGate.Missing(fold.State(), kept).IsEmpty;
        }

        return mustTakeBack ? "its last entry shuts the gate, and the release was not taken back" : null;
    }

    /// <summary>The first release among the entries that the gate would not have let through, as a clause; <c>null</c> for none. Makes no plan again.</summary>
    public static string? FirstRelease(string id, IReadOnlyList<EntryBody> bodies, Func<string, string> text, KeptSystem kept)
    {
        if (!bodies.Any(body => body is Released))
            return null;
        var plans = new Dictionary<string, PlanDocument>(StringComparer.Ordinal);
        var fold = new JobFold(sha256 => plans.TryGetValue(sha256, out PlanDocument? known) ? known : plans[sha256] = PlanJson.Read(text(sha256)));
        for (int index = 0; index < bodies.Count; index++)
        {
            if (bodies[index] is Released released && ReleaseWrong(id, fold.State(), released, kept, text) is { } wrong)
                return $"entry {(index + 1).ToString(CultureInfo.InvariantCulture)}: {wrong}";
            fold.Take(index + 1, bodies[index]);
        }

        return null;
    }

    private static string? OpeningWrong(Opened opened, KeptSystem kept, Func<string, string> text)
    {
        if (opened.Question is null)
            return "it does not say what the plan was asked for";
        if (Planned.Of(kept, opened.Question, opened.Looks) is not { } plan)
            return "no plan follows from what was asked";
        return Planned.Difference(text(opened.Plan), PlanJson.Write(plan)) is { } difference ? $"its plan is not the one that follows from what was asked: {difference}" : Planned.WhyNot(plan, kept);
    }

    private static string? WrongIn(string id, JobState before, EntryBody body, KeptSystem kept, Func<string, string> text) => body switch
    {
        Ticked one => Same(one, WorkRules.Tick(before, kept, one.Step.Number, new TickWords { Minutes = one.Minutes, Note = one.Note, Anyway = one.Anyway }, one.At, one.By)),
        Unticked one => Same(one, WorkRules.Untick(before, kept, one.Step.Number, one.Because, one.At, one.By)),
        Moved one => Same(one, one.Back ? WorkRules.Return(before, one.Part, one.At, one.By) : WorkRules.Send(before, kept, one.Part, one.At, one.By)),
        Supplied one => Same(one, WorkRules.Supply(before, one.Item, one.Arrived, one.At, one.By)),
        Looked one => kept.Family.Find(new PartId(one.Seen.Part)) is null ? "it names a part that the family does not have" : Same(one, WorkRules.Look(before, one.Seen, one.At, one.By)),
        Decided one => DecidedWrong(before, one, kept),
        Measured one => kept.Family.Limits.Any(limit => limit.Id == one.Limit && limit.Part.Value == one.Part) && one.Verdict is "good" or "marginal" or "reject" or "undecided" ? null : "it measures what the family has no limit for",
        Replanned one => ReplanWrong(before, one, kept, text),
        Released one => ReleaseWrong(id, before, one, kept, text),
        Withdrawn one => ReleaseGate.Missing(before, kept) is { IsEmpty: false } missing && one.Because.SequenceEqual(missing.Select(piece => piece.Text)) ? null : "it takes a release back for another reason than there was",
        _ => null,
    };

    private static string? DecidedWrong(JobState before, Decided entry, KeptSystem kept)
    {
        Catalogue catalogue = kept.Standard.CatalogueOf();
        return LookRules.OutcomeOf(entry.Outcome) is not { } outcome ? "it names an outcome that a look does not have"
            : entry.Seen.Any(seen => kept.Family.Find(new PartId(seen.Part)) is null || catalogue.FindDebris(seen.Debris) is null) ? "it names a part or debris that there is not"
            : (outcome == LookOutcome.Found) != entry.Seen.Any(seen => seen.Found) ? "what it says was seen does not go with its outcome"
            : Same(entry, LookRules.Decide(before, kept, entry.Look, outcome, outcome == LookOutcome.Found ? entry.Seen : [], entry.Again == true, entry.At, entry.By));
    }

    private static string? ReplanWrong(JobState before, Replanned entry, KeptSystem kept, Func<string, string> text)
    {
        PlanChange change = Rework.Of(before, kept.Family, kept.Standard, []);
        string due = PlanJson.Write(change.Plan);
        return Planned.Difference(text(entry.Plan), due) is { } difference
            ? $"its plan is not the one that planning again gives: {difference}"
            : SameLine(entry, Rework.Entry(change, text(entry.Plan), entry.At, entry.By)) ? null : "it does not open again what the rules do";
    }

    private static string? ReleaseWrong(string id, JobState before, Released entry, KeptSystem kept, Func<string, string> text) =>
        before.IsReleased ? "it releases a job that is released"
        : ReleaseGate.Missing(before, kept) is [var missing, ..] ? $"it releases the engine although {missing.Text}"
        : text(entry.Sheet) != ReleaseSheet.Write(id, before, entry.By, entry.At) ? "its release sheet does not say what the record says"
        : null;

    private static string? Same(EntryBody entry, Ruling ruling) => ruling.Body is not { } due
        ? $"the rules refuse it ({Why(ruling.Refusal!)})"
        : SameLine(entry, due) ? null : "the rules give another";

    private static bool SameLine(EntryBody one, EntryBody other) => EntryJson.Write(one) == EntryJson.Write(other);

    private static string Why(Refusal refusal) => refusal switch
    {
        NoSuchStep => "there is no such step",
        DoneAlready => "the step is done already",
        OpenAlready => "the step is open",
        NotItsTurn one => FormattableString.Invariant($"step {one.First.Number} comes first"),
        RunsTheEngine => "the engine may not be run",
        WouldHarm one => one.What,
        IsAway one => $"{one.Part} is away",
        WorkedOnBefore one => $"{one.Part} was worked on before the look",
        LookedBefore one => $"look {one.Look} has an outcome",
        LookNotDue one => $"look {one.Look} is not due",
        NoPlaceOfLook one => $"look {one.Look} is not made at {one.Part}",
        NeedsOutcome one => $"it is look {one.Look}, which has no outcome",
        ReleasedBefore => "the job is released",
        FoundBefore one => $"{one.Debris} was found at {one.Part} before",
        _ => "there is no such thing in the job",
    };
}
