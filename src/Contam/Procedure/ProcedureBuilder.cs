using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>
/// Makes the jobs of a clean-out and says what must be finished before what, so that no cleaned part is ever joined to a dirty one.
/// <para>
/// Why the order never goes round in a circle, whatever the family, as long as access does not: removals wait only for removals of what is in the way;
/// treatments wait for removals and, along the flow, for treatments of parts that stay in place (loops of which are one job); refits wait for treatments
/// and for refits of what lies behind. Nothing that comes earlier in this list waits for anything later in it.
/// </para>
/// </summary>
internal sealed partial class ProcedureBuilder
{
    private readonly ProcedureRequest request;
    private readonly Family family;
    private readonly WorkTimes times;
    private readonly FrameBook frame;
    private readonly WorkItem?[] items;
    private readonly InPlaceLoops loops;
    private readonly List<(int From, int To)> openJoints;
    private readonly PartJobs?[] jobsOf;
    private readonly JobGraph graph = new();

    private ProcedureBuilder(ProcedureRequest request)
    {
        this.request = request;
        family = request.Family;
        times = new WorkTimes(request.Standard);
        frame = new FrameBook(request);
        var failed = request.Failed.ToHashSet();
        openJoints = [.. family.Joints
            .Where(joint => joint.From != joint.To && SpreadGraph.IsOpen(family, joint, failed))
            .Select(joint => (family.IndexOf(joint.From), family.IndexOf(joint.To)))];
        (items, loops) = WorkWithLoops();
        jobsOf = new PartJobs?[items.Length];
    }

    /// <summary>The jobs and their order.</summary>
    /// <exception cref="OrderCycleException">The access of parts goes round in a circle.</exception>
    public static ProcedureDraft Build(ProcedureRequest request)
    {
        var builder = new ProcedureBuilder(request);
        builder.AddFrameBefore();
        builder.AddPartJobs();
        builder.OrderWithinParts();
        builder.OrderAccess();
        builder.OrderAlongTheFlow();
        builder.OrderFiltersLast();
        builder.AddFrameAfter();
        ImmutableArray<PartTreatment> treatments =
        [
            .. request.Treatments.Select(treated => builder.items[request.Family.IndexOf(treated.Part.Id)] is { } item && !treated.Treatments.IsEmpty
                ? treated with { Treatments = item.Treatments }
                : treated),
        ];
        return new ProcedureDraft(builder.graph, treatments);
    }

    /// <summary>
    /// What comes off breaks loops, and the flush of a loop may need something off that is in its way: taken in turns until nothing more comes off.
    /// Each turn takes at least one more part off, so there are no more turns than parts.
    /// </summary>
    private (WorkItem?[] Items, InPlaceLoops Loops) WorkWithLoops()
    {
        WorkItem?[] asked = WorkList.WithAccess(family, WorkList.Of(family, request.Treatments));
        while (true)
        {
            InPlaceLoops found = InPlaceLoops.Find(asked, openJoints);
            WorkItem?[] flushed = found.WithFlush(asked);
            WorkItem?[] grown = WorkList.WithAccess(family, flushed);
            bool isSettled = true;
            for (int index = 0; index < grown.Length; index++)
            {
                if (grown[index] is { ComesOff: true } && asked[index] is not { ComesOff: true })
                {
                    asked[index] = asked[index] is { } item ? item with { ComesOff = true } : grown[index];
                    isSettled = false;
                }
            }

            if (isSettled)
                return (flushed, found);
        }
    }

    private void AddPartJobs()
    {
        Job[] loopFlush = [.. loops.Loops.Select(AddLoopFlush)];
        for (int index = 0; index < items.Length; index++)
        {
            if (items[index] is { } item)
                jobsOf[index] = AddJobsOf(item, loops.Of(index) is var loop and >= 0 ? loopFlush[loop] : null);
        }
    }

    private Job AddLoopFlush(ImmutableArray<int> loop) => graph.Add(id => new Job(id, Phase.CleanOut, StepAction.Flush)
    {
        Parts = [.. loop.Select(index => family.Parts[index])],
        // One fluid goes through all of it at once, so the slowest part sets the time.
        Minutes = loop.Max(index => times.Of(family.Parts[index], StepAction.Flush)),
        Seals = [.. loop.SelectMany(index => SealsOpenedInPlace(items[index]!))],
    });

    private PartJobs AddJobsOf(WorkItem item, Job? loopFlush)
    {
        Part part = item.Part;
        bool isRenewed = item.Has(TreatmentKind.Replace);
        Job? last = null;

        Job Make(Phase phase, StepAction action, bool isTreatment = true) => last = graph.Add(id => new Job(id, phase, action)
        {
            Part = part,
            Minutes = isTreatment && item.GoesOut ? 0 : times.Of(part, action),
            IsWait = isTreatment && item.GoesOut,
            IsOutside = isTreatment && item.GoesOut,
            ForAccess = item.IsOnlyInTheWay,
            Seals = action == StepAction.Refit || IsLastInPlaceWithoutLoop(item, action) ? part.Seals : [],
        });

        return new PartJobs
        {
            Remove = item.ComesOff ? Make(Phase.Strip, StepAction.Remove, isTreatment: false) : null,
            SendOut = item.GoesOut
                ? graph.Add(id => new Job(id, Phase.Strip, StepAction.SendOut) { Part = part, Minutes = times.Away(part.SendOut!), IsWait = true })
                : null,
            Clean = item.Has(TreatmentKind.Clean) ? Make(Phase.CleanOut, StepAction.Clean) : null,
            Flush = loopFlush ?? (item.Has(TreatmentKind.Flush) ? Make(Phase.CleanOut, StepAction.Flush) : null),
            Inspect = item.Has(TreatmentKind.Inspect) ? Make(Phase.CleanOut, StepAction.Inspect) : null,
            Arrival = isRenewed && part.Lead is { } lead
                ? graph.Add(id => new Job(id, Phase.MakeSafe, StepAction.Note)
                {
                    Part = part,
                    Topic = FrameNames.Arrival,
                    Frame = frame.Find(FrameSection.MakeSafe, FrameNames.Arrival, [], [part]),
                    Minutes = lead.TotalDays * times.WorkingDayMinutes,
                    IsWait = true,
                })
                : null,
            Replace = isRenewed ? Make(Phase.CleanOut, StepAction.Replace) : null,
            Test = item.Has(TreatmentKind.Test) ? Make(Phase.Test, StepAction.Test) : null,
            Refit = item.ComesOff ? Make(Phase.Refit, StepAction.Refit, isTreatment: false) : null,
        };
    }

    /// <summary>A part that is opened where it stands gets its new seals in its last treatment; one in a loop, in the flush of the loop or after it.</summary>
    private static bool IsLastInPlaceWithoutLoop(WorkItem item, StepAction action)
    {
        if (item.ComesOff || item.IsOnlyInTheWay)
            return false;
        TreatmentKind last = item.Treatments.Contains(TreatmentKind.Test) ? TreatmentKind.Test
            : item.Treatments.Contains(TreatmentKind.Inspect) ? TreatmentKind.Inspect
            : item.Treatments.Contains(TreatmentKind.Flush) ? TreatmentKind.Flush
            : TreatmentKind.Clean;
        return action.ToString() == last.ToString();
    }

    private static ImmutableArray<string> SealsOpenedInPlace(WorkItem item) =>
        item.Treatments.Any(one => one is TreatmentKind.Test or TreatmentKind.Inspect) ? [] : item.Part.Seals;
}
