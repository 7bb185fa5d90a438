using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Jobs.Work;

namespace Contam.Jobs.History;

/// <summary>What a look of the past says of how surely a look at that place shows debris.</summary>
public enum PastLookWorth
{
    /// <summary>It counts: the first look at a place where the failed part could send its debris at full size.</summary>
    Counts,

    /// <summary>The job was about a find whose source was never named, or no failed part sheds this debris: whether any should have come here is not known.</summary>
    SourceUnknown,

    /// <summary>The debris could not have come here from the failed part at full size, so that clean says nothing of the look.</summary>
    NotExposed,

    /// <summary>The part itself has failed: that there is debris at it was known.</summary>
    FailedItself,

    /// <summary>The part had been worked on in this job. Then only finds are written down, and they would count for too much.</summary>
    AfterWork,

    /// <summary>The place was looked at before in this job. Two looks at one engine are not two engines, and the second is mostly one with the part open.</summary>
    Again,

    /// <summary>The family that the job keeps cannot be read.</summary>
    Unreadable,
}

/// <summary>A look in some job.</summary>
/// <param name="Job">The job.</param>
/// <param name="Seen">What was seen.</param>
/// <param name="Failed">The failed parts of the job, in its order.</param>
/// <param name="Worth">What it says.</param>
internal sealed record PastLook(JobSummary Job, SeenAt Seen, ImmutableArray<string> Failed, PastLookWorth Worth);
