using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.Proof;

namespace Contam.Jobs.Work;

/// <summary>
/// The work of a job as it was really done, played by the step simulator: the ticks that count, in the order in which they were made, and behind them what is
/// still open. So a part is clean only when the last of its cleanings is done, whichever that is.
/// Cost: that of the simulator, once for each question.
/// </summary>
internal static class BenchPlay
{
    /// <summary>What goes wrong when this step is done next, as a clause; <c>null</c> for nothing.</summary>
    public static string? HarmOf(JobState state, Family family, WorkStep next)
    {
        ImmutableArray<PlanStep> before = [.. TakenOffBefore(state), .. Done(state).Where(step => step.Key != next.Key).Select(step => PlanStepOf(state, family, step))];
        ImmutableArray<PlanStep> after = [.. state.Open.Where(step => step.Key != next.Key).Select(step => PlanStepOf(state, family, step))];
        Simulation play = StepSimulator.PlayInOrder(family, AtFirst(state), [.. before, PlanStepOf(state, family, next), .. after]);
        return play.Faults.FirstOrDefault(fault => fault.Step == before.Length + 1)?.What;
    }

    /// <summary>What is wrong on the engine when nothing more is done than what is done: dirty, off, or never looked at; each as a clause.</summary>
    public static IEnumerable<string> LeftWrong(JobState state, Family family)
    {
        Simulation play = StepSimulator.PlayInOrder(family, AtFirst(state), [.. TakenOffBefore(state), .. Done(state).Select(step => PlanStepOf(state, family, step))]);
        return play.Faults.Where(fault => fault.Step is null).Select(fault => fault.What);
    }

    /// <summary>
    /// Parts with no treatment open that are unclean all the same, when what is done is played in the order in which it was: something that is open again has
    /// come in between. In the order of the family, each with the flushes that carried debris into it.
    /// </summary>
    public static ImmutableArray<(string Part, ImmutableArray<WorkStep> Flushes)> Soiled(JobState state, Family family)
    {
        var open = state.Open.Where(IsTreatment).SelectMany(step => step.Parts).ToHashSet(StringComparer.Ordinal);
        PlanStep[] before = [.. TakenOffBefore(state)];
        WorkStep[] done = [.. Done(state)];
        Simulation play = StepSimulator.PlayInOrder(family, AtFirst(state), [.. before, .. done.Select(step => PlanStepOf(state, family, step))]);
        return
        [
            .. play.Faults.Where(fault => fault.IsUncleanAtEnd && fault.Part is not null && !open.Contains(fault.Part)).Select(fault => fault.Part!).Distinct(StringComparer.Ordinal)
                .Select(part => (part, play.Faults.Where(fault => fault.Part == part && fault.Step > before.Length).Select(fault => done[fault.Step!.Value - before.Length - 1]).Where(step => step.Action == StepAction.Flush).ToImmutableArray())),
        ];
    }

    /// <summary>
    /// The plan as the play begins: what the looks leave alone is clean, and what is treated, by a step that is due or was done, is not. Without looks the plan as
    /// it is.
    /// </summary>
    private static PlanDocument AtFirst(JobState state)
    {
        if (state.Plan.Looks.IsEmpty)
            return state.Plan;
        ILookup<string, TreatmentKind> given = state.Steps.All.Where(step => TreatmentOf(step) is not null && (state.IsDone(step) || !state.IsStruck(step)))
            .SelectMany(step => step.Parts.Select(part => (Part: part, Kind: TreatmentOf(step)!.Value))).ToLookup(one => one.Part, one => one.Kind, StringComparer.Ordinal);
        return state.Plan with
        {
            Parts =
            [
                .. state.Plan.Parts.Where(part => given.Contains(part.Id)).Select(part => part with
                {
                    // A part that is cleared by what was seen before may be treated because a find speaks against that.
                    Exposure = [new PlanExposure(state.Plan.Debris[0], Grade.Exposed, null, part.Id, null)],
                    Treatment = [.. given[part.Id].Distinct().Order()],
                }),
            ],
        };
    }

    /// <summary>The treatment that a step gives its parts; <c>null</c> for none.</summary>
    internal static TreatmentKind? TreatmentOf(WorkStep step) => step.Action switch
    {
        StepAction.Inspect when step.About == LookAbout.Debris => TreatmentKind.Inspect,
        StepAction.Flush when step.Phase == Phase.CleanOut => TreatmentKind.Flush,
        StepAction.Clean when step.Phase == Phase.CleanOut => TreatmentKind.Clean,
        StepAction.Replace when step.Phase is Phase.CleanOut or Phase.Refit => TreatmentKind.Replace,
        StepAction.Test when step.IsBeforeRelease && step.Phase is not (Phase.MakeSafe or Phase.Confirm) => TreatmentKind.Test,
        _ => null,
    };

    /// <summary>Whether a step treats its parts.</summary>
    public static bool IsTreatment(WorkStep step) => step.Phase is Phase.CleanOut or Phase.Test && step.Action is StepAction.Flush or StepAction.Clean or StepAction.Replace or StepAction.Inspect or StepAction.Test;

    /// <summary>Whether a step fills, turns or runs the engine, which must be whole for it.</summary>
    public static bool TriesTheEngine(WorkStep step) => step is { Phase: Phase.Prove, Action: not StepAction.Note };

    private static IEnumerable<WorkStep> Done(JobState state) => state.Steps.All.Where(state.IsDone).OrderBy(step => state.TickOf[step.Key].Sequence);

    /// <summary>Parts that an earlier plan took off, and that this one only puts back: it has no step that takes them off.</summary>
    private static IEnumerable<PlanStep> TakenOffBefore(JobState state) => state.Steps.All
        .Where(step => step.IsCarried && !state.Steps.All.Any(one => one.Action == StepAction.Remove && one.Parts.Any(step.Parts.Contains)))
        .Select(step => new PlanStep { Phase = Phase.Strip, Action = StepAction.Remove, Part = step.Parts[0] });

    private static PlanStep PlanStepOf(JobState state, Family family, WorkStep step) => step.IsCarried
        ? new PlanStep { Phase = step.Phase, Action = step.Action, Part = step.Parts[0], Seals = family.Find(new PartId(step.Parts[0]))?.Seals ?? [] }
        : state.Plan.Steps[step.Number - 1];
}
