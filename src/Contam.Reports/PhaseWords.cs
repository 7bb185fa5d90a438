namespace Contam.Reports;

/// <summary>The phases in words.</summary>
internal static class PhaseWords
{
    public static string Of(Phase phase) => phase switch
    {
        Phase.MakeSafe => "Make safe",
        Phase.CleanOut => "Clean out",
        _ => phase.ToString(),
    };
}
