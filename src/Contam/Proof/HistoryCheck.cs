using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// Whether a plan holds in one history of its looks: what every part needs stands in a step that is done, and the steps that are done, played with the dirt of
/// that history, end with nothing dirty and everything back.
/// </summary>
internal sealed class HistoryCheck
{
    private const int Cleaning = (1 << (int)TreatmentKind.Flush) | (1 << (int)TreatmentKind.Clean);

    private readonly PlanReading reading;
    private readonly PlanLooks looks;
    private readonly HistoryNeeds needs;
    private readonly PlayGround ground;
    private readonly ImmutableArray<PlayedStep> byTime;
    private readonly ImmutableArray<PlayedStep> byNumber;
    private readonly int[] treats;
    private readonly Lazy<AfterOrder> after;
    private readonly int[] wholeOf;

    internal HistoryCheck(PlanReading reading, PlanLooks looks, HistoryNeeds needs, PlayGround ground)
    {
        this.reading = reading;
        this.looks = looks;
        this.needs = needs;
        this.ground = ground;
        byTime = [.. reading.Plan.Steps.OrEmpty().Select(step => PlayedStep.Of(step, reading.Family))];
        byNumber = PlayedStep.ByNumber(byTime);
        treats = [.. byTime.Select(TreatmentOf)];
        after = new Lazy<AfterOrder>(() => new AfterOrder(byTime, looks));
        wholeOf = [.. reading.Family.Parts.Select(part => part.Assembly is { } whole ? reading.Family.IndexOf(whole) : -1)];
    }

    /// <summary>The first fault of each claim that is asked about, or <c>null</c>.</summary>
    internal (string? Closed, string? Treated, string? Ordered) FirstFaults(PlayedHistory history, (bool Treated, bool Ordered) asked)
    {
        bool[] isDone = [.. looks.Steps.Select(step => step.IsMet(history.CountsAsFound))];
        int[] needed = needs.In(history, out string? unasked);
        int[] done = Done(isDone);
        return (unasked, asked.Treated ? Treated(history, needed, done) ?? PutBack(isDone, done) : null, asked.Ordered ? Ordered(history, isDone, needed, done) : null);
    }

    private int[] Done(bool[] isDone)
    {
        var done = new int[reading.Family.Parts.Length];
        for (int step = 0; step < isDone.Length; step++)
        {
            foreach (int part in isDone[step] && treats[step] != 0 ? byTime[step].Parts : [])
                done[part] |= treats[step];
        }

        return done;
    }

    private string? Treated(PlayedHistory history, int[] needed, int[] done)
    {
        ImmutableArray<PlanPart> listed = reading.Plan.Parts.OrEmpty();
        for (int i = 0; i < listed.Length; i++)
        {
            int part = reading.Family.IndexOf(new PartId(listed[i].Id));
            bool isSaid = looks.Parts[i].IsMet(history.CountsAsFound);
            // A look may be made as it comes off for another.
            if (!isSaid && (done[part] & ~HistoryNeeds.Bit(TreatmentKind.Inspect)) != 0)
                return $"{listed[i].Id} is said to be left alone, but a step that is done treats it: its list and its steps tell two things";
            if (needed[part] == 0)
                continue;
            if (!isSaid)
                return $"{listed[i].Id} is said to be left alone, but debris can have come to it: it would go back as dirty as it is";
            int missing = Missing(part, needed[part], done);
            foreach (TreatmentKind kind in Enum.GetValues<TreatmentKind>())
            {
                if ((missing & HistoryNeeds.Bit(kind)) != 0)
                    return $"{listed[i].Id} needs {TreatedCheck.Word(kind)}, but no step that is done does so: it would go back without";
            }

            if (missing != 0)
                return $"{listed[i].Id} needs a treatment that nobody knows: it would go back without";
        }

        return TreatedCheck.RenewedByHalf(reading.Family, part => (done[reading.Family.IndexOf(part)] & HistoryNeeds.Bit(TreatmentKind.Replace)) != 0);
    }

    private string? PutBack(bool[] isDone, int[] done)
    {
        for (int step = 0; step < isDone.Length; step++)
        {
            if (!isDone[step] || byTime[step].Step.Action != StepAction.Remove)
                continue;
            foreach (int part in byTime[step].Parts)
            {
                if (reading.Family.Parts[part].Kind.IsRenewedWhenOut && (done[part] & HistoryNeeds.Bit(TreatmentKind.Replace)) == 0)
                    return TreatedCheck.PutBack(reading.Family.Parts[part]);
            }
        }

        return null;
    }

    /// <summary>What a part needs and does not get. A new part is neither flushed nor cleaned, and what comes new inside of another has nothing else done to it.</summary>
    private int Missing(int part, int needed, int[] done)
    {
        int renewed = HistoryNeeds.Bit(TreatmentKind.Replace);
        if (reading.Family.Parts[part].LookUsesUp && (needed & HistoryNeeds.Bit(TreatmentKind.Inspect)) != 0)
            needed |= renewed;
        if (wholeOf[part] is >= 0 and var whole && (done[whole] & renewed) != 0)
            needed = renewed;
        return needed & ~((done[part] & renewed) != 0 ? done[part] | Cleaning : done[part]);
    }

    private string? Ordered(PlayedHistory history, bool[] isDone, int[] needed, int[] done)
    {
        for (int look = 0; look < looks.All.Length; look++)
        {
            if ((history.Made & (1 << look)) != 0 && !isDone[looks.All[look].Step - 1])
                return $"look {looks.All[look].Id} is due, but its step is not done: nobody would know how it comes out";
        }

        ImmutableArray<PlanStep> steps = [.. byTime.Where((_, step) => isDone[step]).Select(played => played.Step)];
        DirtyPart[] dirty = [.. Dirty(needed, done)];
        return FirstOf(Done(byTime, isDone), dirty)
            ?? FirstOf(Done(byNumber, isDone), dirty)
            ?? (FirstOf(after.Value.LastFirst(isDone), dirty) is { } early ? $"done in another order that what the steps wait for allows, {early}" : null)
            ?? OrderedCheck.Phases(steps)
            ?? TreatedCheck.Unconfirmed(reading.Plan.Failed.OrEmpty(), steps)
            ?? OpenedCircuits.Unsafe(steps, reading.Family)
            ?? DrainedFirst.FirstFault(steps, reading.Family)
            ?? FilledAgain.FirstFault(steps, reading.Family)
            ?? FiltersLast.FirstFault(steps, reading.Family);
    }

    // What is treated though this history would not need it is taken as dirty. What no debris has a way to at all is renewed clean, with what it makes a set with.
    private IEnumerable<DirtyPart> Dirty(int[] needed, int[] done) =>
        from part in Enumerable.Range(0, needed.Length)
        where reading.Listed[part] is not null && (needed[part] | done[part]) != 0
        select DirtyPart.Of(part, [.. Enum.GetValues<TreatmentKind>().Where(kind => ((needed[part] | done[part]) & HistoryNeeds.Bit(kind)) != 0)]);

    private string? FirstOf(ImmutableArray<PlayedStep> steps, DirtyPart[] dirty) =>
        new StepPlay(ground, steps, dirty).PlayAlone().Faults is [Fault fault, ..] ? fault.ToString() : null;

    private static ImmutableArray<PlayedStep> Done(ImmutableArray<PlayedStep> steps, bool[] isDone) => [.. steps.Where((_, step) => isDone[step])];

    private static int TreatmentOf(PlayedStep played) => !PlayedStep.IsTreatmentOf(played.Step) ? 0 : HistoryNeeds.Bit(played.Step.Action switch
    {
        StepAction.Inspect => TreatmentKind.Inspect,
        StepAction.Flush => TreatmentKind.Flush,
        StepAction.Clean => TreatmentKind.Clean,
        StepAction.Test => TreatmentKind.Test,
        _ => TreatmentKind.Replace,
    });
}
