using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>A step of a plan with its parts found in the family. Parts are meant by their place in the family.</summary>
/// <param name="Step">The step.</param>
/// <param name="Parts">The parts it is done at, each once, in the order of the step; those that the family has.</param>
/// <param name="Blank">The parts it blanks off; those that the family has.</param>
internal sealed record PlayedStep(PlanStep Step, ImmutableArray<int> Parts, ImmutableArray<int> Blank)
{
    /// <summary>
    /// Whether it is done at a part so that the part is treated. A look that confirms the failure treats nothing, nor does anything in the proving run.
    /// </summary>
    internal bool IsTreatment => Step.Action == StepAction.SendOut || IsConditionLook(Step) || IsTreatmentOf(Step);

    /// <summary>Whether it looks for debris, which it may do only before anything of the part is wiped away.</summary>
    internal static bool IsDebrisLook(PlanStep step) => step is { Action: StepAction.Inspect, About: LookAbout.Debris, Phase: Phase.Confirm or Phase.Strip };

    /// <summary>Whether it looks at the condition of a clean part.</summary>
    internal static bool IsConditionLook(PlanStep step) => step is { Action: StepAction.Inspect, About: LookAbout.Condition, Phase: Phase.CleanOut or Phase.Test };

    /// <summary>
    /// Whether it does a treatment that a part is given: a look for debris in confirm or strip, cleaning in the clean-out, a test wherever something is open or, of what must be in its place for it, before the first start,
    /// and a new part in the clean-out or, where it has to come first, before its refit.
    /// </summary>
    internal static bool IsTreatmentOf(PlanStep step) => step.Action switch
    {
        StepAction.Inspect => IsDebrisLook(step),
        StepAction.Flush or StepAction.Clean => step.Phase == Phase.CleanOut,
        StepAction.Replace => step.Phase is Phase.CleanOut or Phase.Refit,
        StepAction.Test => step.Phase is Phase.Strip or Phase.CleanOut or Phase.Test or Phase.Refit || step is { Phase: Phase.Prove, DueAfterRunningHours: null },
        _ => false,
    };

    /// <summary>Whether it takes no time.</summary>
    internal bool IsMomentary => Step.Start == Step.Finish;

    /// <summary>Whether its times are times: from 0, and not ending before they begin.</summary>
    internal bool HasTimes => double.IsFinite(Step.Finish) && Step.Start >= 0 && Step.Finish >= Step.Start;

    /// <summary>The ids of the parts that a step is done at, each once: its part, and its parts where they are several.</summary>
    internal static IEnumerable<string> PartsOf(PlanStep step) =>
        (step.Part is null ? [] : new[] { step.Part }).Concat(step.Parts.OrEmpty()).Distinct(StringComparer.Ordinal);

    /// <summary>The step as the one of this place in a row of steps that are done one after the other.</summary>
    internal PlayedStep At(int place) => this with { Step = Step with { Start = 2 * place, Finish = (2 * place) + 1 } };

    /// <summary>The same steps, one after the other by their numbers, as somebody does who works down the sheet.</summary>
    internal static ImmutableArray<PlayedStep> ByNumber(ImmutableArray<PlayedStep> steps) => [.. steps.Select(step => step.At(step.Step.Number))];

    internal static PlayedStep Of(PlanStep step, Family family) => new(
        step,
        [.. PartsOf(step).Select(id => family.IndexOf(new PartId(id))).Where(part => part >= 0)],
        [.. step.Blank.OrEmpty().Select(id => family.IndexOf(new PartId(id))).Where(part => part >= 0)]);
}
