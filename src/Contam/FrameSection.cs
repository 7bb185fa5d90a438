namespace Contam;

/// <summary>Where a step of the frame stands.</summary>
public enum FrameSection
{
    /// <summary>Before anything is opened.</summary>
    MakeSafe,

    /// <summary>Before the strip.</summary>
    Confirm,

    /// <summary>Among the refits.</summary>
    Refit,

    /// <summary>After everything is back.</summary>
    Prove,

    /// <summary>A sentence that stands with a step on a part.</summary>
    WithStep,
}
