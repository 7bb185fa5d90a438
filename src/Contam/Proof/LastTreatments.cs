using Contam.Plans;

namespace Contam.Proof;

/// <summary>Which step is the last that cleans a part, and the last that treats it at all.</summary>
internal sealed class LastTreatments
{
    private readonly PlayedStep?[] cleaning;
    private readonly PlayedStep?[] treatment;

    /// <summary>Linear in steps.</summary>
    /// <param name="parts">How many parts the family has.</param>
    /// <param name="steps">The steps that can be played.</param>
    /// <param name="curedBy">For a part that is only looked at or tested the action that does for it; <c>null</c> for one that is cleaned.</param>
    internal LastTreatments(int parts, IEnumerable<PlayedStep> steps, Func<int, StepAction?> curedBy)
    {
        cleaning = new PlayedStep?[parts];
        treatment = new PlayedStep?[parts];
        foreach (PlayedStep step in steps.Where(step => step.IsTreatment))
        {
            foreach (int part in step.Parts)
            {
                treatment[part] = step.Step.Phase == Phase.Prove ? treatment[part] : Later(treatment[part], step);
                if (Cleans(step.Step, curedBy(part)))
                    cleaning[part] = Later(cleaning[part], step);
            }
        }
    }

    /// <summary>Whether a part is clean once this step is done.</summary>
    internal bool IsLastCleaning(PlayedStep step, int part) => ReferenceEquals(cleaning[part], step);

    /// <summary>Whether nothing more is done to a part after this step, so that it is closed again.</summary>
    internal bool IsLastTreatment(PlayedStep step, int part) => ReferenceEquals(treatment[part], step);

    private static bool Cleans(PlanStep step, StepAction? curedBy) => curedBy is { } cure
        ? step.Action == cure && !PlayedStep.IsConditionLook(step)
        : step.Action is StepAction.Flush or StepAction.Clean or StepAction.Replace;

    private static PlayedStep Later(PlayedStep? before, PlayedStep step) =>
        before is null || (step.Step.Finish, step.Step.Number).CompareTo((before.Step.Finish, before.Step.Number)) >= 0 ? step : before;
}
