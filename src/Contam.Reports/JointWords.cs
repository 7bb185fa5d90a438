using Contam.Families;

namespace Contam.Reports;

/// <summary>When a joint is open, in words; one wording for every picture.</summary>
internal static class JointWords
{
    /// <summary>What it waits for; nothing for a joint that is always open.</summary>
    /// <param name="ifFailed">What must have failed, as the picture calls it; <c>null</c> for nothing.</param>
    /// <param name="when">The states in which the joint is open.</param>
    /// <param name="all">The states that the engine has.</param>
    public static IEnumerable<string> Waits(string? ifFailed, EngineStates when, EngineStates all)
    {
        if (ifFailed is not null)
            yield return $"if {ifFailed} has failed";
        if (when == EngineStates.None)
            yield return "never open";
        else if (when != all)
            yield return "when " + string.Join(" or ", Json.FamilyJson.StatesOf(when));
    }

    /// <summary>The largest hard piece that it lets on, for instance <c>hard pieces up to 300 µm</c>; nothing where it has no passage of its own.</summary>
    public static IEnumerable<string> LetsOn(Joint joint, Text.TextLook look)
    {
        if (joint.Passage is { } passage)
            yield return "hard pieces up to " + Text.UnitText.Size(passage.Micrometres, look);
    }
}
