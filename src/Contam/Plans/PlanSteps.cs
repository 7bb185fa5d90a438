using System.Collections.Immutable;
using Contam.Families;
using Contam.Procedure;

namespace Contam.Plans;

/// <summary>The steps of a plan: the jobs of a procedure, scheduled, numbered and worded.</summary>
internal sealed class PlanSteps
{
    // Times are sums of minutes that people wrote; less than this is rounding.
    private const double Rounding = 1e-6;

    private readonly int[] numberOf;

    public PlanSteps(ProcedureRequest request, ProcedureDraft draft, Bearing bearing, int technicians, bool takesFirstSchedule)
    {
        JobGraph graph = draft.Graph;
        int[] places = PlacesOf(request.Family, graph);
        Schedule schedule = takesFirstSchedule ? Scheduling.First(graph, technicians, places) : Scheduling.Best(graph, technicians, places);
        numberOf = new int[graph.Jobs.Count];
        for (int place = 0; place < schedule.Jobs.Length; place++)
            numberOf[schedule.Jobs[place].Job] = place + 1;

        double[] slack = Slack.Of(graph, schedule);
        var writer = new StepWriter(request, draft, bearing);
        Steps = [.. schedule.Jobs.Select(scheduled => StepOf(scheduled, graph, slack[scheduled.Job], writer))];
        Methods = [.. writer.Methods.Select(method => new PlanMethod(method.Number, method.Title, method.Text, method.Tools, method.Supplies))];
        Before = new PlanBefore(Hands(technicians, writer.Needs.ForTwo), writer.Needs.Tools, [.. writer.Needs.Supplies.Select(line => new PlanSupply(line.Item, line.Quantity, line.Unit))]);
        double bench = graph.Jobs.Where(job => job.NeedsHands).Sum(job => job.Minutes);
        Hours = new PlanHours(InHours(bench), InHours(schedule.Elapsed), technicians, InHours(LowerBounds.Of(graph, technicians)));
    }

    public ImmutableArray<PlanStep> Steps { get; }

    /// <summary>The methods that the steps use, by number.</summary>
    public ImmutableArray<PlanMethod> Methods { get; }

    /// <summary>What the work takes.</summary>
    public PlanBefore Before { get; }

    public PlanHours Hours { get; }

    /// <summary>The cautions, each before the first of its steps, by that step, then in the order of the standard.</summary>
    public ImmutableArray<PlanCaution> Cautions(ImmutableArray<PlacedCaution> cautions) =>
    [
        .. cautions
            .Select(placed => new PlanCaution(
                placed.Rule.Say,
                placed.Rule.Source,
                placed.Jobs.IsEmpty ? 1 : placed.Jobs.Min(job => numberOf[job]))
            {
                Steps = [.. placed.Jobs.Select(job => numberOf[job]).Order()],
            })
            .OrderBy(caution => caution.BeforeStep),
    ];

    private PlanStep StepOf(ScheduledJob scheduled, JobGraph graph, double slack, StepWriter writer)
    {
        Job job = graph.Jobs[scheduled.Job];
        StepWords words = writer.Write(job);
        return new PlanStep
        {
            Number = numberOf[job.Id],
            Phase = job.Phase,
            Action = job.Action,
            Part = job.Part?.Id.Value,
            Parts = [.. job.Parts.Select(part => part.Id.Value)],
            Text = words.Text,
            Method = words.Method,
            After = Nearest(graph, job.Id),
            Minutes = job.Minutes,
            Start = scheduled.Start,
            Finish = scheduled.Finish,
            Technician = scheduled.Technician == 0 ? null : scheduled.Technician,
            Critical = slack < Rounding,
            Seals = job.Seals,
            ForAccess = job.ForAccess,
            Blank = [.. job.Blank.Select(part => part.Id.Value)],
            DueAfterRunningHours = job.DueAfterRunningHours,
            Frame = job.Frame?.Step,
        };
    }

    /// <summary>What a job waits for, without what one of these waits for directly anyway.</summary>
    private ImmutableArray<int> Nearest(JobGraph graph, int job)
    {
        ImmutableArray<int> before = graph.Before(job);
        // A look at every pair is worth it only for lists that a person reads.
        IEnumerable<int> nearest = before.Length > 64 ? before : before.Where(first => !before.Any(other => other != first && graph.HasBefore(other, first)));
        return [.. nearest.Select(first => numberOf[first]).Order()];
    }

    // The technicians, then what takes a second pair of hands.
    private static ImmutableArray<string> Hands(int technicians, ImmutableArray<Part> forTwo) =>
    [
        technicians == 1 ? "one technician" : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{technicians} technicians"),
        .. forTwo.IsEmpty || technicians > 1 ? [] : new[] { "a second for " + Sentences.Names(forTwo) },
    ];

    private static double InHours(double minutes) => Math.Round(minutes / 60, 2, MidpointRounding.AwayFromZero);

    /// <summary>For each job a number by which ties are decided: circuit and flow order of its part, then file order.</summary>
    private static int[] PlacesOf(Family family, JobGraph graph)
    {
        var placeOf = new Dictionary<PartId, int>();
        foreach (PartId part in family.Circuits.SelectMany(circuit => circuit.Parts).Concat(family.Parts.Select(part => part.Id)))
            placeOf.TryAdd(part, placeOf.Count);
        // Before anything is opened the failure itself is looked at first, in the order in which the looks were asked for.
        return [.. graph.Jobs.Select(job => job.Phase != Phase.Confirm && job.At is [var first, ..] ? placeOf[first.Id] + 1 : 0)];
    }
}
