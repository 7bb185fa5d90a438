namespace Contam.Jobs.Work;

/// <summary>Phases and actions as the plan's JSON writes them.</summary>
internal static class PlanWords
{
    public static string Of(Phase phase) => phase switch
    {
        Phase.MakeSafe => "make safe",
        Phase.Confirm => "confirm",
        Phase.Strip => "strip",
        Phase.CleanOut => "clean out",
        Phase.Test => "test",
        Phase.Refit => "refit",
        _ => "prove",
    };

    public static string Of(StepAction action) => action switch
    {
        StepAction.MakeSafe => "make-safe",
        StepAction.Inspect => "inspect",
        StepAction.Remove => "remove",
        StepAction.Flush => "flush",
        StepAction.Clean => "clean",
        StepAction.Test => "test",
        StepAction.Replace => "replace",
        StepAction.Refit => "refit",
        StepAction.Prove => "prove",
        StepAction.SendOut => "send-out",
        _ => "note",
    };
}
