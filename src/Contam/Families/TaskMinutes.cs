namespace Contam.Families;

/// <summary>
/// Minutes of a technician's time for each task at a part. <c>null</c> means: not said here.
/// Each is at least 0.
/// </summary>
public sealed record TaskMinutes
{
    /// <summary>Nothing said.</summary>
    public static TaskMinutes None { get; } = new();

    /// <summary>Looking at it.</summary>
    public double? Inspect { get; init; }

    /// <summary>Taking it off.</summary>
    public double? Remove { get; init; }

    /// <summary>Flushing it.</summary>
    public double? Flush { get; init; }

    /// <summary>Cleaning it by hand.</summary>
    public double? Clean { get; init; }

    /// <summary>Testing it.</summary>
    public double? Test { get; init; }

    /// <summary>Checking the new one against the old one and making it ready.</summary>
    public double? Replace { get; init; }

    /// <summary>Putting it back.</summary>
    public double? Refit { get; init; }

    /// <summary>What is said here, and where nothing is said, what <paramref name="other"/> says.</summary>
    public TaskMinutes Over(TaskMinutes other) => new()
    {
        Inspect = Inspect ?? other.Inspect,
        Remove = Remove ?? other.Remove,
        Flush = Flush ?? other.Flush,
        Clean = Clean ?? other.Clean,
        Test = Test ?? other.Test,
        Replace = Replace ?? other.Replace,
        Refit = Refit ?? other.Refit,
    };
}
