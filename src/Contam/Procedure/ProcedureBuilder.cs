using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>
/// Makes the jobs of a clean-out and says what must be finished before what, so that no cleaned part is ever joined to a dirty one.
/// <para>
/// Why the order never goes round in a circle, whatever the family, as long as access does not: removals wait only for removals of what is in the way;
/// looks for debris wait for removals; treatments wait for looks, removals and, along the flow, for treatments of parts that stay in place (loops of which are
/// one job); a new part waits for nothing but its arrival; refits wait for treatments, new parts and for refits of what lies behind. Nothing that comes earlier
/// in this list waits for anything later in it.
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
    private readonly Opening opening;
    private readonly int[] benchOf;
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
        benchOf = Carriers.BenchOf(family, items);
        opening = new Opening(request, items);
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
        builder.OrderCarriers();
        builder.OrderAlongTheFlow();
        builder.OrderFiltersLast();
        builder.AddFrameAfter();
        ImmutableArray<PartTreatment> treatments =
        [
            .. request.Treatments.Select(treated => builder.items[request.Family.IndexOf(treated.Part.Id)] is { } item && !treated.Treatments.IsEmpty
                ? treated with { Treatments = item.Treatments }
                : treated),
        ];
        ImmutableArray<Part> renewed = [.. builder.items.OfType<WorkItem>().Where(item => item.Has(TreatmentKind.Replace) && !item.ComesInside).Select(item => item.Part)];
        return new ProcedureDraft(builder.graph, treatments, builder.opening.Circuits, renewed);
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
            InPlaceLoops found = InPlaceLoops.Find(asked, openJoints, Carriers.BenchOf(family, asked));
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
                jobsOf[index] = item.ComesInside ? new PartJobs() : AddJobsOf(item, loops.Of(index) is var loop and >= 0 ? loopFlush[loop] : null);
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
        ImmutableArray<Part> inside = isRenewed ? [.. items.OfType<WorkItem>().Where(other => other.ComesInside && WholeOf(other.Part) == part).Select(other => other.Part)] : [];
        // A new part that has a way to come is checked, and tried, when it is there: right before it is fitted.
        Phase whenRenewed = isRenewed && part.Lead is not null ? Phase.Refit : Phase.CleanOut;
        Job? look = item.Has(TreatmentKind.Inspect) ? AddDebrisLook(item) : null;

        Job Make(Phase phase, StepAction action, bool isTreatment = true, LookAbout? about = null, FrameStep? frameStep = null) => graph.Add(id => new Job(id, phase, action)
        {
            Part = part,
            With = action == StepAction.Replace ? inside : [],
            About = about,
            Frame = frameStep,
            Minutes = isTreatment && item.GoesOut ? 0 : frameStep?.Minutes ?? times.Of(part, action),
            IsWait = isTreatment && item.GoesOut,
            IsOutside = isTreatment && item.GoesOut,
            ForAccess = item.IsOnlyInTheWay,
            Seals = action == StepAction.Refit || (loopFlush is null || action != StepAction.Flush) && ClosesInPlace(item, action, about) ? part.Seals : [],
        });

        return new PartJobs
        {
            Remove = item.ComesOff ? Make(LookRules.IsTakenOffBeforeStripping(item) && !IsHeldInPlace(part) ? Phase.Confirm : Phase.Strip, StepAction.Remove, isTreatment: false) : null,
            Look = look,
            SendOut = item.GoesOut
                ? graph.Add(id => new Job(id, Phase.Strip, StepAction.SendOut) { Part = part, Minutes = times.Away(part.SendOut!), IsWait = true })
                : null,
            Clean = item.Has(TreatmentKind.Clean) ? Make(Phase.CleanOut, StepAction.Clean) : null,
            Flush = loopFlush ?? (item.Has(TreatmentKind.Flush) ? Make(Phase.CleanOut, StepAction.Flush) : null),
            Condition = ConditionOf(item) is { } wear ? Make(Phase.CleanOut, StepAction.Inspect, about: LookAbout.Condition, frameStep: wear) : null,
            Arrival = isRenewed && part.Lead is { } lead
                ? graph.Add(id => new Job(id, Phase.Refit, StepAction.Note)
                {
                    Part = part,
                    Topic = FrameNames.Arrival,
                    Frame = frame.Find(FrameSection.MakeSafe, FrameNames.Arrival, [], [part]),
                    Minutes = lead.TotalDays * times.WorkingDayMinutes,
                    IsWait = true,
                })
                : null,
            Replace = isRenewed ? Make(whenRenewed, StepAction.Replace) : null,
            Test = item.Has(TreatmentKind.Test) ? Make(PhaseOfTest(item, whenRenewed), StepAction.Test) : null,
            Refit = item.ComesOff ? Make(Phase.Refit, StepAction.Refit, isTreatment: false) : null,
        };
    }

    /// <summary>
    /// When a part is tested: before anything is cleaned where the test stands in for a look; with everything back on, or built up, where its kind says so and
    /// it does not count as done by the test alone; else when it is clean.
    /// </summary>
    private Phase PhaseOfTest(WorkItem item, Phase whenRenewed)
    {
        if (item.IsOnlyTriedInPlace)
            return Phase.Strip;
        if (whenRenewed == Phase.Refit)
            return item.Part.TestAt == TestAt.Fitted ? Phase.Prove : Phase.Refit;
        if (item.Treatments is [TreatmentKind.Test] && benchOf.Count(bench => bench == family.IndexOf(item.Part.Id)) > 1)
            return item.GoesOut ? Phase.CleanOut : Phase.Strip; // What stays on it is cleaned after it.
        if (item.GoesOut || item.Treatments is [TreatmentKind.Test])
            return Phase.Test;
        return item.Part.TestAt switch
        {
            TestAt.Fitted => Phase.Prove,
            TestAt.BuiltUp when items.Any(other => other is { ComesOff: true } && other.Part.RidesOn == item.Part.Id) => Phase.Refit,
            _ => Phase.Test,
        };
    }

    /// <summary>What is looked at when a part is clean, where the standard says so for its kind; else <c>null</c>.</summary>
    private FrameStep? ConditionOf(WorkItem item) => LookRules.MayNeedConditionLook(item) ? frame.Find(FrameSection.WithStep, FrameNames.Condition, [], [item.Part]) : null;

    /// <summary>Whether it takes more than its own fastening to take a part off: it rides on another, or another stands on it, or it has failed and is looked at first.</summary>
    private bool IsHeldInPlace(Part part) =>
        part.RidesOn is not null || request.Failed.Contains(part.Id) || family.Parts.Any(other => other.StandsOn.Contains(part.Id));

    /// <summary>The outermost part that is renewed whole with this one inside.</summary>
    private Part WholeOf(Part part)
    {
        Part whole = part;
        while (whole.Assembly is { } outer && items[family.IndexOf(outer)] is { } item && item.Has(TreatmentKind.Replace))
            whole = item.Part;
        return whole;
    }

    /// <summary>The look at a part before anybody cleans it, always our own; the one that confirms the failure where it is the same.</summary>
    private Job AddDebrisLook(WorkItem item)
    {
        if (confirmed.TryGetValue(item.Part.Id, out Job? look) && look.About is not null)
            return look;
        Phase phase = LookRules.IsBeforeStripping(item) ? Phase.Confirm : Phase.Strip;
        return graph.Add(id => new Job(id, phase, StepAction.Inspect)
        {
            Part = item.Part,
            About = LookAbout.Debris,
            Minutes = times.Of(item.Part, StepAction.Inspect),
            Drains = phase == Phase.Confirm && IsDrained(item.Part) ? [item.Part] : [],
            Seals = ClosesInPlace(item, StepAction.Inspect, LookAbout.Debris) ? item.Part.Seals : [],
        });
    }

    private bool IsDrained(Part part) => part.Kind.IsReservoir && opening.Drained.Any(drained => drained.Contains(part));

    /// <summary>Whether a part that is opened where it stands is closed after this: its last treatment, or the flush of its loop.</summary>
    private bool ClosesInPlace(WorkItem item, StepAction action, LookAbout? about)
    {
        if (item.ComesOff || item.IsOnlyInTheWay)
            return false;
        if (ConditionOf(item) is not null)
            return about == LookAbout.Condition;
        // With everything back on it is closed.
        bool isTestedOpen = item.Has(TreatmentKind.Test) && (item.Part.TestAt != TestAt.Fitted || item.IsOnlyTriedInPlace);
        StepAction last = isTestedOpen ? StepAction.Test
            : item.Has(TreatmentKind.Flush) ? StepAction.Flush
            : item.Has(TreatmentKind.Clean) ? StepAction.Clean
            : StepAction.Inspect;
        return action == last;
    }

    private ImmutableArray<string> SealsOpenedInPlace(WorkItem item) => ClosesInPlace(item, StepAction.Flush, about: null) ? item.Part.Seals : [];
}
