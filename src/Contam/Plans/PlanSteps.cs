using System.Collections.Immutable;
using Contam.Families;
using Contam.Procedure;

namespace Contam.Plans;

/// <summary>The steps of a plan: the jobs of a procedure, scheduled, numbered and worded.</summary>
internal sealed class PlanSteps
{
    // Times are sums of minutes that people wrote; less than this is rounding.
    private const double Rounding = 1e-6;

    private readonly ImmutableArray<ImmutableArray<int>> nearest;

    public PlanSteps(ProcedureRequest request, ProcedureDraft draft, Bearing bearing, PlanRequest asked, Branching? branching)
    {
        Schedule schedule;
        double free;
        (Graph, schedule, free) = asked.Sequence == PlanSequence.Bench
            ? BenchSchedule.Of(request, draft, bearing, asked.Technicians, asked.TakesFirstSchedule)
            : Free(request, draft, asked);
        double[] slack = Slack.Of(Graph, schedule);
        var writer = new StepWriter(request, draft, bearing);
        nearest = branching is null ? [.. Graph.Jobs.Select(job => Nearest(job.Id))] : NearestInEveryHistory(branching);
        Steps = [.. schedule.Jobs.OrderBy(scheduled => scheduled.Job).Select(scheduled => StepOf(scheduled, slack[scheduled.Job], writer))];
        Methods = [.. writer.Methods.Select(method => new PlanMethod(method.Number, method.Title, method.Text, method.Tools, method.Supplies))];
        Before = new PlanBefore(Hands(asked.Technicians, writer.Needs.ForTwo), writer.Needs.Tools, [.. writer.Needs.Supplies.Select(line => new PlanSupply(line.Item, line.Quantity, line.Unit))]);
        double bench = Graph.Jobs.Where(job => job.NeedsHands).Sum(job => job.Minutes);
        if (branching is not null)
        {
            LookJobs = [.. Graph.Jobs.Where(job => job.DecidingLook is not null).OrderBy(job => job.DecidingLook).Select(job => job.Id)];
            Hours = HoursOf(branching, schedule, asked.Technicians, LowerBounds.Of(draft.Graph, asked.Technicians), free);
            return;
        }

        Hours = new PlanHours(InHours(bench), InHours(schedule.Elapsed), asked.Technicians, InHours(LowerBounds.Of(draft.Graph, asked.Technicians)), InHours(free));
    }

    /// <summary>The jobs as the plan numbers them: a step's number is its job's and one more.</summary>
    public JobGraph Graph { get; }

    public ImmutableArray<PlanStep> Steps { get; }

    /// <summary>The methods that the steps use, by number.</summary>
    public ImmutableArray<PlanMethod> Methods { get; }

    /// <summary>What the work takes.</summary>
    public PlanBefore Before { get; }

    public PlanHours Hours { get; }

    /// <summary>The jobs of the deciding looks, by number.</summary>
    public ImmutableArray<int> LookJobs { get; } = [];

    /// <summary>The cautions, each before the first of its steps, by that step, then in the order of the standard.</summary>
    public static ImmutableArray<PlanCaution> Cautions(ImmutableArray<PlacedCaution> cautions) =>
    [
        .. cautions
            .Select(placed => new PlanCaution(
                placed.Rule.Say,
                placed.Rule.Source,
                placed.Jobs.IsEmpty ? 1 : placed.Jobs.Min() + 1)
            {
                Steps = [.. placed.Jobs.Select(job => job + 1).Order()],
            })
            .OrderBy(caution => caution.BeforeStep),
    ];

    /// <summary>The shortest schedule that was found, its jobs numbered by their start.</summary>
    private static (JobGraph Graph, Schedule Schedule, double Free) Free(ProcedureRequest request, ProcedureDraft draft, PlanRequest asked)
    {
        int[] places = BenchSchedule.PlacesOf(request.Family, draft.Graph);
        Schedule found = asked.TakesFirstSchedule ? Scheduling.First(draft.Graph, asked.Technicians, places) : Scheduling.Best(draft.Graph, asked.Technicians, places);
        JobGraph inOrder = StepMerging.Merge(draft.Graph, [.. found.Jobs.Select(scheduled => scheduled.Job)], _ => null, request.Family.IndexOf);
        return (inOrder, found with { Jobs = [.. found.Jobs.Select((scheduled, place) => scheduled with { Job = place })] }, found.Elapsed);
    }

    private PlanStep StepOf(ScheduledJob scheduled, double slack, StepWriter writer)
    {
        Job job = Graph.Jobs[scheduled.Job];
        StepWords words = writer.Write(job);
        return new PlanStep
        {
            Number = job.Id + 1,
            Phase = job.Phase,
            Action = job.Action,
            Part = job.With.IsEmpty ? job.Part?.Id.Value : null,
            Parts = job.With.IsEmpty ? [.. job.Parts.Select(part => part.Id.Value)] : [.. job.At.Select(part => part.Id.Value)],
            Text = words.Text,
            Method = words.Method,
            OnlyIf = Branching.Letters(job.Condition.OnlyIf),
            Unless = Branching.Letters(job.Condition.Unless),
            After = nearest[job.Id],
            Minutes = job.Minutes,
            Start = scheduled.Start,
            Finish = scheduled.Finish,
            Technician = scheduled.Technician == 0 ? null : scheduled.Technician,
            Critical = slack < Rounding,
            Seals = job.Seals,
            ForAccess = job.ForAccess,
            Blank = [.. job.Blank.Select(part => part.Id.Value)],
            DueAfterRunningHours = job.DueAfterRunningHours,
            About = job.About,
            Circuit = job.Circuit,
            Frame = job.Frame?.Step,
            Drains = job.Drains.IsEmpty ? null : [.. job.Drains.Select(part => part.Id.Value)],
            Fills = FrameNames.IsFill(job.Frame?.Step) && !job.Circuits.IsEmpty ? [.. job.Circuits.Select(circuit => circuit.Name)] : null,
        };
    }

    /// <summary>What a job waits for, without what one of these waits for directly anyway.</summary>
    private ImmutableArray<int> Nearest(int job)
    {
        ImmutableArray<int> before = Graph.Before(job);
        // A look at every pair is worth it only for lists that a person reads.
        IEnumerable<int> nearest = before.Length > 64 ? before : before.Where(first => !before.Any(other => other != first && Graph.HasBefore(other, first)));
        return [.. nearest.Select(first => first + 1)];
    }

    /// <summary>
    /// For each job what it waits for, in whatever history both are done, without what one of these waits for and that is done then too. A job that is not done
    /// hands on what it waits for itself. Worked out over every history.
    /// </summary>
    private ImmutableArray<ImmutableArray<int>> NearestInEveryHistory(Branching branching)
    {
        var all = new SortedSet<int>[Graph.Jobs.Count];
        var nearestOf = new ImmutableArray<int>[all.Length];
        foreach (int job in Graph.InOrder())
        {
            LookCondition own = Graph.Jobs[job].Condition;
            all[job] = [.. Graph.Before(job)];
            // What is handed on may not be done either, and hands on in turn.
            var handing = new Queue<int>(all[job]);
            while (handing.TryDequeue(out int first))
            {
                if (branching.IsDoneWhere(Graph.Jobs[first].Condition, own, LookCondition.Always))
                    continue;
                foreach (int earlier in all[first].Where(all[job].Add))
                    handing.Enqueue(earlier);
            }

            int[] before = [.. all[job]];
            nearestOf[job] = [.. before.Where(first => !before.Any(other => other != first && all[other].Contains(first)
                && branching.IsDoneWhere(Graph.Jobs[other].Condition, own, Graph.Jobs[first].Condition))).Select(first => first + 1)];
        }

        return [.. nearestOf];
    }

    private PlanHours HoursOf(Branching branching, Schedule schedule, int technicians, double bound, double free)
    {
        double most = 0, clean = 0, expected = 0;
        bool isFirst = true;
        foreach ((Looks.LookHistory history, double likely) in branching.Histories)
        {
            double bench = Graph.Jobs.Where(job => job.NeedsHands && history.Meets(job.Condition)).Sum(job => job.Minutes);
            most = Math.Max(most, bench);
            clean = isFirst ? bench : clean;
            expected += likely * bench;
            isFirst = false;
        }

        return new PlanHours(InHours(most), InHours(schedule.Elapsed), technicians, InHours(bound), InHours(free))
        {
            BenchAllClean = InHours(clean),
            BenchExpected = InHours(expected),
            ElapsedAllClean = InHours(ElapsedWhere(branching.Histories.First().History, technicians)),
        };
    }

    /// <summary>How long the steps of one history take, worked in the order of the plan.</summary>
    private double ElapsedWhere(Looks.LookHistory history, int technicians)
    {
        var met = new JobGraph();
        var newOf = new Dictionary<int, Job>();
        foreach (Job job in Graph.Jobs.Where(job => history.Meets(job.Condition)))
            newOf.Add(job.Id, met.Add(job.Renumbered));
        foreach ((int id, Job job) in newOf)
        {
            foreach (int first in nearest[id])
                met.Order(newOf.GetValueOrDefault(first - 1), job);
        }

        var scheduler = new SerialScheduler(met, technicians);
        return scheduler.EndOf(scheduler.Forward([.. met.Jobs.Select(job => (double)-job.Id)]));
    }

    // The technicians, then what takes a second pair of hands.
    private static ImmutableArray<string> Hands(int technicians, ImmutableArray<Part> forTwo) =>
    [
        technicians == 1 ? "one technician" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{technicians} technicians"),
        .. forTwo.IsEmpty || technicians > 1 ? [] : new[] { "a second for " + Sentences.Names(forTwo) },
    ];

    private static double InHours(double minutes) => Math.Round(minutes / 60, 2, MidpointRounding.AwayFromZero);
}
