using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Contam.Jobs.Entries;
using Contam.Plans;

namespace Contam.Jobs.Work;

/// <summary>The steps of a job, and which must come before which.</summary>
internal sealed class WorkSteps
{
    private static readonly ConditionalWeakTable<PlanDocument, WorkSteps> OfPlan = [];

    private readonly Dictionary<string, WorkStep> byKey;

    private WorkSteps(ImmutableArray<WorkStep> all)
    {
        All = all;
        byKey = all.ToDictionary(step => step.Key, StringComparer.Ordinal);
    }

    /// <summary>All of them, by number.</summary>
    public ImmutableArray<WorkStep> All { get; }

    /// <summary>The steps of a plan, and behind them those that an earlier plan left due. The engine is proved only when the latter are done too.</summary>
    public static WorkSteps Of(PlanDocument plan, ImmutableArray<CarriedStep> carried)
    {
        ArgumentNullException.ThrowIfNull(plan);
        // A job is folded anew after every entry, and its plan is the same mostly.
        return carried.IsEmpty ? OfPlan.GetValue(plan, alone => Make(alone, [])) : Make(plan, carried);
    }

    private static WorkSteps Make(PlanDocument plan, ImmutableArray<CarriedStep> carried)
    {
        ImmutableArray<string> keys = StepKey.Of(plan);
        var numberOf = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int index = 0; index < keys.Length; index++)
            numberOf.Add(keys[index], index + 1);
        var behind = new List<WorkStep>();
        foreach (CarriedStep step in carried)
        {
            if (!numberOf.TryAdd(step.Key, plan.Steps.Length + behind.Count + 1))
                continue;
            behind.Add(new WorkStep
            {
                Number = plan.Steps.Length + behind.Count + 1,
                Key = step.Key,
                Phase = Phase.Refit,
                Action = StepAction.Refit,
                Parts = [step.Part],
                Text = step.Text,
                Minutes = step.Minutes,
                After = [.. step.After.Where(numberOf.ContainsKey).Select(key => numberOf[key]).Order()],
                Technician = 1,
                IsCarried = true,
            });
        }

        ILookup<int, string> looksOf = plan.Looks.ToLookup(look => look.Step, look => look.Id);
        ImmutableArray<int> carriedNumbers = [.. behind.Select(step => step.Number)];
        return new WorkSteps([.. plan.Steps.Select((step, index) => StepOf(step, keys[index], carriedNumbers, looksOf)), .. behind]);
    }

    /// <summary>The step of this number, or <c>null</c>.</summary>
    public WorkStep? Find(int number) => number >= 1 && number <= All.Length ? All[number - 1] : null;

    /// <summary>The step of this key, or <c>null</c>.</summary>
    public WorkStep? Find(string key) => byKey.GetValueOrDefault(key);

    /// <summary>Every step that must be done before this one, however far back; by number.</summary>
    public ImmutableArray<WorkStep> Before(WorkStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        var before = new SortedSet<int>();
        var due = new Stack<int>(step.After);
        while (due.TryPop(out int number))
        {
            if (Find(number) is not { } first || !before.Add(number))
                continue;
            foreach (int earlier in first.After)
                due.Push(earlier);
        }

        return [.. before.Select(number => All[number - 1])];
    }

    private static WorkStep StepOf(PlanStep step, string key, ImmutableArray<int> carried, ILookup<int, string> looksOf) => new()
    {
        Number = step.Number,
        Key = key,
        Phase = step.Phase,
        Action = step.Action,
        About = step.About,
        Parts = StepKey.PartsOf(step),
        Text = step.Text,
        Minutes = step.Minutes,
        After = step.Phase == Phase.Prove ? [.. step.After, .. carried] : step.After,
        DueAfterRunningHours = step.DueAfterRunningHours,
        Technician = step.Technician,
        OnlyIf = step.OnlyIf,
        Unless = step.Unless,
        Looks = [.. looksOf[step.Number]],
    };
}
