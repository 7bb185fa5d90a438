namespace Contam.Cli.Tests.Audits;

/// <summary>Whether what takes minutes is asked for: <c>CONTAM_EVERY_FAILURE=1</c>.</summary>
internal static class LongRun
{
    public static bool IsAsked => Environment.GetEnvironmentVariable("CONTAM_EVERY_FAILURE") == "1";
}
