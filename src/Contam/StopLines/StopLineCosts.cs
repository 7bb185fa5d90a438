using System.Collections.Immutable;
using Contam.Families;
using Contam.Procedure;
using Contam.Treatment;

namespace Contam.StopLines;

/// <summary>
/// What each look and each treatment costs, in whole tenths of a technician's minute.
/// <para>
/// A treatment: the work at the part itself, as the plan has it today — taking it off and refitting it where it comes off, and each of its treatments, but for those
/// that an outside workshop does. What is in its way is not counted, because several parts may share it.
/// </para>
/// <para>
/// A look: its minutes, and taking off and refitting whatever is in its way, but for what comes off in any case, because a part that is treated in any case, or is in
/// the way of one, comes off. What two looks share is counted with both. So looks are counted at the most that they take and treatments at the least, and what looking is said to save is
/// not more than what it does save.
/// </para>
/// </summary>
internal sealed class StopLineCosts
{
    // Ten million minutes are 19 years; a part that takes longer is a slip, and sums of such costs must still fit.
    private const double MostMinutes = 1e7;

    private readonly Family family;
    private readonly WorkTimes times;
    private readonly WorkItem?[] always;

    private StopLineCosts(Family family, WorkTimes times, WorkItem?[] work, WorkItem?[] always)
    {
        this.family = family;
        this.times = times;
        this.always = always;
        Treatment = [.. work.Select(item => item is null ? 0 : Tenths(MinutesOf(item)))];
    }

    /// <summary>The cost of the treatment of each part, by its place in the family; 0 for one that is not treated.</summary>
    public ImmutableArray<long> Treatment { get; }

    public static StopLineCosts Of(StopLineQuestion question, StopLineToday today)
    {
        Family family = question.Family;
        bool IsAlways(PartTreatment treated) => today.IsTreatedAnyway(family.IndexOf(treated.Part.Id));
        return new StopLineCosts(
            family,
            new WorkTimes(question.Standard),
            WorkList.Of(family, today.Treatments),
            WorkList.WithAccess(family, WorkList.Of(family, [.. today.Treatments.Where(IsAlways)])));
    }

    /// <summary>What a look at this part costs.</summary>
    public long Look(int vertex) => Tenths(times.Of(family.Parts[vertex], StepAction.Inspect) + InTheWayOf(vertex).Sum(OffAndOn));

    /// <summary>What is in the way of a look at this part, and what is in the way of that, and does not come off anyway; rising.</summary>
    public SortedSet<int> InTheWayOf(int vertex)
    {
        var off = new SortedSet<int>();
        var waiting = new Queue<PartId>(family.Parts[vertex].Inspect?.Access ?? family.Parts[vertex].Access);
        while (waiting.TryDequeue(out PartId next))
        {
            int other = family.IndexOf(next);
            if (always[other] is { ComesOff: true } || !off.Add(other))
                continue;
            foreach (PartId behind in family.Parts[other].Access)
                waiting.Enqueue(behind);
        }

        return off;
    }

    /// <summary>Minutes of this many tenths.</summary>
    public static double Minutes(long tenths) => Math.Round(tenths / 10.0, 1);

    private double MinutesOf(WorkItem item)
    {
        double minutes = item.ComesOff ? OffAndOn(family.IndexOf(item.Part.Id)) : 0;
        return item.GoesOut ? minutes : minutes + item.Treatments.Sum(treatment => times.Of(item.Part, ActionOf(treatment)));
    }

    private double OffAndOn(int vertex) => times.Of(family.Parts[vertex], StepAction.Remove) + times.Of(family.Parts[vertex], StepAction.Refit);

    private static StepAction ActionOf(TreatmentKind treatment) => treatment switch
    {
        TreatmentKind.Inspect => StepAction.Inspect,
        TreatmentKind.Flush => StepAction.Flush,
        TreatmentKind.Clean => StepAction.Clean,
        TreatmentKind.Test => StepAction.Test,
        _ => StepAction.Replace,
    };

    private static long Tenths(double minutes) => (long)Math.Round(Math.Clamp(minutes, 0, MostMinutes) * 10, MidpointRounding.AwayFromZero);
}
