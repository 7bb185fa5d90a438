using System.Collections.Immutable;
using Contam.Jobs.Work;

namespace Contam.Jobs;

/// <summary>What came of something that was to be written into a job: it is written, or refused with the reason.</summary>
public sealed record JobAnswer
{
    private JobAnswer(JobRecord? after, Refusal? refusal)
    {
        After = after;
        Refusal = refusal;
    }

    /// <summary>The job after it; <c>null</c> where it was refused, and for a note or a photo, which change nothing.</summary>
    public JobRecord? After { get; }

    /// <summary>Why it was refused; <c>null</c> where it was written.</summary>
    public Refusal? Refusal { get; }

    /// <summary>Whether it is written.</summary>
    public bool IsAccepted => Refusal is null;

    /// <summary>The sequence of the entry that says it; 0 where nothing had to be written.</summary>
    public long Sequence { get; private init; }

    /// <summary>Steps that were done and are open again with it, each with why.</summary>
    public ImmutableArray<ReopenedStep> Reopened { get; private init; } = [];

    /// <summary>Why the release that held is taken back by it; empty where none is.</summary>
    public ImmutableArray<Missing> Withdrawn { get; private init; } = [];

    /// <summary>The release sheet, where the answer is a release; else <c>null</c>.</summary>
    public string? Sheet { get; private init; }

    internal static JobAnswer Refused(Refusal why) => new(null, why);

    internal static JobAnswer Written(JobRecord after, long sequence, ImmutableArray<ReopenedStep> reopened, ImmutableArray<Missing> withdrawn) =>
        new(after, null) { Sequence = sequence, Reopened = reopened, Withdrawn = withdrawn };

    internal static JobAnswer WrittenDown(long sequence) => new(null, null) { Sequence = sequence };

    internal static JobAnswer Released(JobRecord after, long sequence, string sheet) => new(after, null) { Sequence = sequence, Sheet = sheet };
}

/// <summary>A step that was done and is open again.</summary>
/// <param name="Step">The step.</param>
/// <param name="Because">Why, as a clause.</param>
public sealed record ReopenedStep(WorkStep Step, string Because);

/// <summary>What a look that decides came to.</summary>
public enum LookOutcome
{
    /// <summary>Every place was seen, and clean of every debris of the look.</summary>
    Clean,

    /// <summary>Debris was found.</summary>
    Found,

    /// <summary>It could not be made, or leaves a doubt: what hangs on it is done.</summary>
    InDoubt,
}

/// <summary>Who writes an entry, and when.</summary>
/// <param name="At">When, with the offset of the place.</param>
/// <param name="By">Who; <c>null</c> for who is in charge of the job.</param>
public sealed record Signature(DateTimeOffset At, string? By = null);

/// <summary>What may be said of a step that is done.</summary>
public sealed record TickWords
{
    /// <summary>Minutes worked, or <c>null</c>.</summary>
    public double? Minutes { get; init; }

    /// <summary>A note, or <c>null</c>.</summary>
    public string? Note { get; init; }

    /// <summary>Why it is done although another step comes first, or <c>null</c>. It excuses waiting and nothing else.</summary>
    public string? Anyway { get; init; }
}

/// <summary>A part that is said to have been looked at and found clean.</summary>
/// <param name="Part">The part.</param>
/// <param name="Debris">The debris that it is clean of.</param>
/// <param name="By">Who is said to have looked, or <c>null</c>.</param>
/// <param name="When">When, or <c>null</c>.</param>
public sealed record CleanFinding(string Part, string Debris, string? By, string? When);

/// <summary>Somebody stands for a clean finding that a file brings.</summary>
/// <param name="Part">The part.</param>
/// <param name="Debris">The debris.</param>
/// <param name="By">Who looked.</param>
public sealed record Confirmation(string Part, string Debris, string By);

/// <summary>The picture that was taken. It stays where it is.</summary>
/// <param name="Name">The name of the file, without its folder.</param>
/// <param name="Sha256">SHA-256 of its bytes, in lower-case hexadecimal.</param>
/// <param name="Bytes">How many bytes.</param>
/// <param name="Note">What it shows, or <c>null</c>.</param>
public sealed record Picture(string Name, string Sha256, long Bytes, string? Note);
