namespace Contam.Families;

/// <summary>The states an engine can be in.</summary>
[Flags]
public enum EngineStates
{
    /// <summary>In none.</summary>
    None = 0,

    /// <summary>Running.</summary>
    Running = 1,

    /// <summary>Turned over without running.</summary>
    Cranking = 2,

    /// <summary>Standing still.</summary>
    Stopped = 4,

    /// <summary>In every state.</summary>
    All = Running | Cranking | Stopped,
}

/// <summary>
/// One way from a part to a part: two neighbours on a run, or a link. A link both ways is two joints.
/// </summary>
/// <param name="Id">Its number in the family, from 0, in file order.</param>
/// <param name="From">The part upstream.</param>
/// <param name="To">The part downstream.</param>
/// <param name="Circuit">The name of the circuit it belongs to.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Joint(int Id, PartId From, PartId To, string Circuit, SourceSpan Place)
{
    /// <summary>The engine states in which something can pass; those the engine has.</summary>
    public EngineStates When { get; init; } = EngineStates.All;

    /// <summary>Open only when this part has failed; <c>null</c> for always open.</summary>
    public PartId? OnlyIfFailed { get; init; }

    /// <summary>The widest a hard particle may be and still pass; <c>null</c> for not said.</summary>
    public ParticleSize? Passage { get; init; }

    /// <summary>Whether it was written as a link rather than as neighbours on a run.</summary>
    public bool IsLink { get; init; }
}
