namespace Contam.Authoring;

/// <summary>The person stops, or takes an answer back; everything that was answered is kept.</summary>
internal sealed class InterviewStop(bool goesOn) : Exception
{
    /// <summary>Whether the interview begins again with what is kept.</summary>
    public bool GoesOn { get; } = goesOn;
}
