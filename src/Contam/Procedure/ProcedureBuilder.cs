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
    private readonly DecidingLookJobs looks;
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
        looks = new DecidingLookJobs(request, items);
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
        builder.OrderFrameBefore();
        builder.OrderByLooks();
        builder.AddFrameAfter();
        builder.SimplifyConditions();
        ImmutableArray<PartTreatment> treatments =
        [
            .. request.Treatments.Select(treated => builder.items[request.Family.IndexOf(treated.Part.Id)] is { } item && !treated.Treatments.IsEmpty
                ? treated with { Treatments = item.Treatments }
                : treated),
        ];
        ImmutableArray<(Part, LookCondition)> renewed = [.. builder.items.OfType<WorkItem>().Where(item => item.Has(TreatmentKind.Replace) && !item.ComesInside).Select(item => (item.Part, builder.Simplest(item.WhenDone(TreatmentKind.Replace))))];
        return new ProcedureDraft(builder.graph, treatments, [.. builder.opening.Circuits.Select(circuit => (circuit, builder.Simplest(builder.WhenMadeSafe(circuit))))], renewed)
        {
            Looks = builder.looks.Jobs,
            TreatedWhen = builder.items.OfType<WorkItem>().Where(item => item.Treated is not null).ToDictionary(item => item.Part.Id, item => builder.Simplest(item.Treated!)),
        };
    }

    /// <summary>
    /// What comes off breaks loops, and the flush of a loop may need something off that is in its way: taken in turns until nothing more comes off.
    /// Each turn takes at least one more part off, or one off more often, so the turns end.
    /// </summary>
    private (WorkItem?[] Items, InPlaceLoops Loops) WorkWithLoops()
    {
        WorkItem?[] asked = WorkList.WithAccess(family, WorkList.Of(family, TreatmentConditions.Of(request), request.Looks), request.Looks);
        while (true)
        {
            InPlaceLoops found = InPlaceLoops.Find(asked, openJoints, Carriers.BenchOf(family, asked));
            WorkItem?[] flushed = found.WithFlush(asked);
            WorkItem?[] grown = WorkList.WithAccess(family, flushed, request.Looks);
            bool isSettled = true;
            for (int index = 0; index < grown.Length; index++)
            {
                if (grown[index] is not { ComesOff: true } off || (asked[index] is { ComesOff: true } known && known.Off.Equals(off.Off) && IsRenewedAsOften(known, off)))
                    continue;
                WorkItem grownItem = asked[index] is { } item ? item with { ComesOff = true, ComesInside = false, Off = off.Off } : off;
                asked[index] = off.Has(TreatmentKind.Replace) ? grownItem.Renewed(off.WhenDone(TreatmentKind.Replace)) : grownItem;
                isSettled = false;
            }

            if (isSettled)
                return (flushed, found);
        }
    }

    private static bool IsRenewedAsOften(WorkItem asked, WorkItem grown) =>
        !grown.Has(TreatmentKind.Replace) || (asked.Has(TreatmentKind.Replace) && asked.WhenDone(TreatmentKind.Replace).Covers(grown.WhenDone(TreatmentKind.Replace)));

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
        Condition = items[loop[0]]!.WhenDone(TreatmentKind.Flush),
    });

    private PartJobs AddJobsOf(WorkItem item, Job? loopFlush)
    {
        Part part = item.Part;
        bool isRenewed = item.Has(TreatmentKind.Replace);
        ImmutableArray<Part> inside = isRenewed ? [.. items.OfType<WorkItem>().Where(other => other.ComesInside && WholeOf(other.Part) == part).Select(other => other.Part)] : [];
        // A new part that has a way to come is checked, and tried, when it is there: right before it is fitted.
        Phase whenRenewed = isRenewed && part.Lead is not null ? Phase.Refit : Phase.CleanOut;
        Job? look = item.Has(TreatmentKind.Inspect) ? AddDebrisLook(item) : null;

        Job Make(Phase phase, StepAction action, LookCondition when, bool isTreatment = true, LookAbout? about = null, FrameStep? frameStep = null) => graph.Add(id => new Job(id, looks.NotBefore(when, phase), action)
        {
            Condition = when,
            Part = part,
            With = action == StepAction.Replace ? inside : [],
            About = about,
            Frame = frameStep,
            Minutes = isTreatment && IsOutside(action) ? 0 : frameStep?.Minutes ?? times.Of(part, action),
            IsWait = isTreatment && IsOutside(action),
            IsOutside = isTreatment && IsOutside(action),
            ForAccess = item.IsOnlyInTheWay,
            Seals = action == StepAction.Refit || (loopFlush is null || action != StepAction.Flush) && ClosesInPlace(item, action, about) ? part.Seals : [],
        });

        bool IsOutside(StepAction action) => item.GoesOut && action != StepAction.Replace;
        LookCondition sentOut = item.GoesOut ? item.Any(one => one is not (TreatmentKind.Inspect or TreatmentKind.Replace))! : LookCondition.Always;

        return new PartJobs
        {
            Remove = item.ComesOff ? Make(LookRules.IsTakenOffBeforeStripping(item) && !DecidingLookJobs.IsHeldInPlace(request, part) ? Phase.Confirm : Phase.Strip, StepAction.Remove, item.Off, isTreatment: false) : null,
            Look = look,
            LooksFirst = item is { ComesOff: true, IsLookedAtInPlace: true } && !looks.IsOffForEarlier(item),
            SendOut = item.GoesOut
                ? graph.Add(id => new Job(id, looks.NotBefore(sentOut, Phase.Strip), StepAction.SendOut) { Part = part, Condition = sentOut, Minutes = times.Away(part.SendOut!), IsWait = true })
                : null,
            Clean = item.Has(TreatmentKind.Clean) ? Make(Phase.CleanOut, StepAction.Clean, item.WhenDone(TreatmentKind.Clean)) : null,
            Flush = loopFlush ?? (item.Has(TreatmentKind.Flush) ? Make(Phase.CleanOut, StepAction.Flush, item.WhenDone(TreatmentKind.Flush)) : null),
            Condition = ConditionOf(item) is { } wear ? Make(Phase.CleanOut, StepAction.Inspect, item.Cleaned, about: LookAbout.Condition, frameStep: wear) : null,
            Arrival = isRenewed && part.Lead is { } lead
                ? graph.Add(id => new Job(id, Phase.Refit, StepAction.Note)
                {
                    Part = part,
                    Topic = FrameNames.Arrival,
                    Frame = frame.Find(FrameSection.MakeSafe, FrameNames.Arrival, [], [part]),
                    Minutes = lead.TotalDays * times.WorkingDayMinutes,
                    IsWait = true,
                    Condition = item.WhenDone(TreatmentKind.Replace),
                })
                : null,
            Replace = isRenewed ? Make(whenRenewed, StepAction.Replace, item.WhenDone(TreatmentKind.Replace)) : null,
            Test = item.Has(TreatmentKind.Test) ? Make(PhaseOfTest(item, whenRenewed), StepAction.Test, item.WhenDone(TreatmentKind.Test)) : null,
            Refit = item.ComesOff ? Make(Phase.Refit, StepAction.Refit, item.Off, isTreatment: false) : null,
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
        if (item.DecidingLook is { } number)
            return looks.Jobs[number] ?? AddDecidingLook(number);
        Phase phase = PhaseOfLook(item);
        return graph.Add(id => new Job(id, phase, StepAction.Inspect)
        {
            Part = item.Part,
            About = LookAbout.Debris,
            Minutes = times.Of(item.Part, StepAction.Inspect),
            Drains = IsDrainedByItsLook(item.Part) ? [item.Part] : [],
            Seals = ClosesInPlace(item, StepAction.Inspect, LookAbout.Debris) ? item.Part.Seals : [],
            Condition = item.WhenDone(TreatmentKind.Inspect),
        });
    }

    private Phase PhaseOfLook(WorkItem item) => item.DecidingLook is { } number ? looks.PhaseOf(number)
        : looks.NotBefore(item.WhenDone(TreatmentKind.Inspect), LookRules.IsBeforeStripping(item) ? Phase.Confirm : Phase.Strip);

    /// <summary>One look at like places, which one outcome settles.</summary>
    private Job AddDecidingLook(int number)
    {
        WorkItem[] places = [.. request.Looks[number].Places.Select(place => items[family.IndexOf(place.Id)]!)];
        LookCondition when = PlannedLooks.KnownBefore(request.Looks, number, places.Select(item => item.WhenDone(TreatmentKind.Inspect)).Aggregate((any, one) => any.Or(one)));
        Job job = graph.Add(id => new Job(id, looks.PhaseOf(number), StepAction.Inspect)
        {
            Part = places is [var only] ? only.Part : null,
            Parts = places is [_] ? [] : [.. places.Select(item => item.Part)],
            IsEach = places.Length > 1,
            About = LookAbout.Debris,
            Minutes = places.Sum(item => times.Of(item.Part, StepAction.Inspect)),
            Drains = [.. places.Select(item => item.Part).Where(IsDrainedByItsLook)],
            Seals = [.. places.Where(item => ClosesInPlace(item, StepAction.Inspect, LookAbout.Debris)).SelectMany(item => item.Part.Seals)],
            Condition = when,
            DecidingLook = number,
        });
        looks.Jobs[number] = job;
        return job;
    }

    /// <summary>When a reservoir is drained; <c>null</c> where it is not.</summary>
    private LookCondition? IsDrained(Part part) => !part.Kind.IsReservoir ? null
        : opening.Drained.SelectMany(drained => drained).Where(one => one.Part == part).Select(one => one.When).Aggregate((LookCondition?)null, (any, one) => any?.Or(one) ?? one);

    /// <summary>
    /// Whether a part that is opened where it stands is closed after this: its last treatment, or the flush of its loop; where a later one hangs on looks that
    /// this does not, this too.
    /// </summary>
    private bool ClosesInPlace(WorkItem item, StepAction action, LookAbout? about)
    {
        // What comes off is closed by its refit, except where it is looked at as it stands and then left there.
        if (item.ComesOff)
            return about == LookAbout.Debris && item.IsLookedAtInPlace;
        if (item.IsOnlyInTheWay)
            return false;
        if (ConditionOf(item) is not null && (about == LookAbout.Condition || action is StepAction.Flush or StepAction.Clean))
            return about == LookAbout.Condition;
        // With everything back on it is closed.
        bool isTestedOpen = item.Has(TreatmentKind.Test) && (item.Part.TestAt != TestAt.Fitted || item.IsOnlyTriedInPlace);
        TreatmentKind[] inTurn = [.. new[] { TreatmentKind.Inspect, TreatmentKind.Clean, TreatmentKind.Flush, TreatmentKind.Test }.Where(one => item.Has(one) && (one != TreatmentKind.Test || isTestedOpen))];
        int place = Array.FindIndex(inTurn, one => ActionOf(one) == action);
        return place < 0 ? inTurn.Length == 0 && action == StepAction.Inspect
            : !inTurn.Skip(place + 1).Any(later => item.WhenDone(later).Covers(item.WhenDone(inTurn[place])));
    }

    private static StepAction ActionOf(TreatmentKind treatment) => treatment switch
    {
        TreatmentKind.Inspect => StepAction.Inspect,
        TreatmentKind.Clean => StepAction.Clean,
        TreatmentKind.Flush => StepAction.Flush,
        _ => StepAction.Test,
    };

    private ImmutableArray<string> SealsOpenedInPlace(WorkItem item) => ClosesInPlace(item, StepAction.Flush, about: null) ? item.Part.Seals : [];
}
