namespace Contam;

/// <summary>When a step of the proof is due.</summary>
public enum FrameDue
{
    /// <summary>Before the first start.</summary>
    BeforeRunning,

    /// <summary>At the first run.</summary>
    FirstRun,

    /// <summary>After the first running hours.</summary>
    RunningHours,
}
