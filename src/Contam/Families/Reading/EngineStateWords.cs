using System.Collections.Immutable;
using Contam.Families.Reading.Shapes;

namespace Contam.Families.Reading;

/// <summary>Engine states as words.</summary>
internal static class EngineStateWords
{
    /// <summary>All of these states.</summary>
    public static EngineStates Union(ImmutableArray<Located<EngineStates>> states)
    {
        EngineStates all = EngineStates.None;
        foreach (Located<EngineStates> state in states)
            all |= state.Value;
        return all;
    }

    /// <summary>The words of these states.</summary>
    public static IEnumerable<string> Of(EngineStates states)
    {
        if (states.HasFlag(EngineStates.Running))
            yield return "running";
        if (states.HasFlag(EngineStates.Cranking))
            yield return "cranking";
        if (states.HasFlag(EngineStates.Stopped))
            yield return "stopped";
    }
}
