using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Contam.Jobs.Entries;

/// <summary>What an entry says. Each kind of entry is a record of its own; <c>kind</c> in the JSON tells which.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(Opened), "opened")]
[JsonDerivedType(typeof(Ticked), "ticked")]
[JsonDerivedType(typeof(Unticked), "unticked")]
[JsonDerivedType(typeof(Noted), "noted")]
[JsonDerivedType(typeof(Measured), "measured")]
[JsonDerivedType(typeof(Photographed), "photographed")]
[JsonDerivedType(typeof(Supplied), "supplied")]
[JsonDerivedType(typeof(Moved), "moved")]
[JsonDerivedType(typeof(Looked), "looked")]
[JsonDerivedType(typeof(Decided), "decided")]
[JsonDerivedType(typeof(Replanned), "replanned")]
[JsonDerivedType(typeof(Released), "released")]
[JsonDerivedType(typeof(Withdrawn), "withdrawn")]
internal abstract record EntryBody
{
    /// <summary>When, with the offset of the place.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Who.</summary>
    public required string By { get; init; }
}

/// <summary>The job was opened. Texts are kept beside the entries, each by its hash.</summary>
internal sealed record Opened : EntryBody
{
    /// <summary>Whose engine it is.</summary>
    public required string Customer { get; init; }

    /// <summary>Which engine: boat, number, side.</summary>
    public required string Engine { get; init; }

    /// <summary>Who is in charge of it.</summary>
    public required string Technician { get; init; }

    /// <summary>The hash of the plan's JSON.</summary>
    public required string Plan { get; init; }

    /// <summary>The family's files, the family file first.</summary>
    public required ImmutableArray<KeptFile> Family { get; init; }

    /// <summary>The texts of the standard, each laid over those before it.</summary>
    public required ImmutableArray<KeptFile> Standard { get; init; }

    /// <summary>How much was taken in of the family's and standard's files, where that was more than usual; <c>null</c> for the usual.</summary>
    public KeptLimits? Limits { get; init; }

    /// <summary>Whether what the plan takes for failed was only suspected, as it was made from finds alone; <c>null</c> for no.</summary>
    public bool? OnlySuspected { get; init; }

    /// <summary>What was asked: the plan follows from it and from the looks, and from nothing else. <c>null</c> in a job that was opened before this was kept.</summary>
    public KeptQuestion? Question { get; init; }

    /// <summary>What the plan was made with: looks before the job was opened.</summary>
    public ImmutableArray<SeenAt> Looks { get; init; } = [];
}

/// <summary>A step was done.</summary>
internal sealed record Ticked : EntryBody
{
    /// <summary>The step, as it stood in the plan of that time.</summary>
    public required StepStamp Step { get; init; }

    /// <summary>Minutes worked, or <c>null</c> for not said.</summary>
    public double? Minutes { get; init; }

    /// <summary>What was said about it, or <c>null</c>.</summary>
    public string? Note { get; init; }

    /// <summary>Why it was done although another step came first; <c>null</c> where it was its turn.</summary>
    public string? Anyway { get; init; }

    /// <summary>The numbers of the steps that came first and were open; empty where it was its turn.</summary>
    public ImmutableArray<int> Skipped { get; init; } = [];

    /// <summary>The same steps as they stood then, so that a later plan with other numbers can still name them.</summary>
    public ImmutableArray<StepStamp> SkippedSteps { get; init; } = [];
}

/// <summary>A tick was taken back.</summary>
internal sealed record Unticked : EntryBody
{
    /// <summary>The step.</summary>
    public required StepStamp Step { get; init; }

    /// <summary>Why.</summary>
    public required string Because { get; init; }

    /// <summary>Steps that were done on the strength of it, and are open again with it.</summary>
    public ImmutableArray<OpenAgain> Reopened { get; init; } = [];

    /// <summary>How the deciding looks stand after it, in order; <c>null</c> where that does not change.</summary>
    public ImmutableArray<LookStands>? Looks { get; init; }
}

/// <summary>Something was written down.</summary>
internal sealed record Noted : EntryBody
{
    /// <summary>The note.</summary>
    public required string Text { get; init; }
}

/// <summary>Readings were held against a limit.</summary>
internal sealed record Measured : EntryBody
{
    /// <summary>The limit's id.</summary>
    public required string Limit { get; init; }

    /// <summary>The part that was measured.</summary>
    public required string Part { get; init; }

    /// <summary>The readings as typed.</summary>
    public required ImmutableArray<string> Readings { get; init; }

    /// <summary>good, marginal, reject or undecided.</summary>
    public required string Verdict { get; init; }

    /// <summary>Why, as one clause.</summary>
    public required string Because { get; init; }
}

/// <summary>A photo was taken. The picture stays where it is; its hash says later whether it is the same.</summary>
internal sealed record Photographed : EntryBody
{
    /// <summary>The name of the file, without its folder.</summary>
    public required string Name { get; init; }

    /// <summary>SHA-256 of its bytes.</summary>
    public required string Sha256 { get; init; }

    /// <summary>How many bytes.</summary>
    public required long Bytes { get; init; }

    /// <summary>What it shows, or <c>null</c>.</summary>
    public string? Note { get; init; }
}

/// <summary>Something on the order list was ordered, or has come.</summary>
internal sealed record Supplied : EntryBody
{
    /// <summary>The item, as the plan's order list has it.</summary>
    public required string Item { get; init; }

    /// <summary>Whether it has come; else it was ordered.</summary>
    public required bool Arrived { get; init; }
}

/// <summary>A part went to an outside workshop, or came back.</summary>
internal sealed record Moved : EntryBody
{
    /// <summary>The part.</summary>
    public required string Part { get; init; }

    /// <summary>Whether it is back; else it has gone.</summary>
    public required bool Back { get; init; }

    /// <summary>Steps that were done and are open again with it: a part that was on has come off to be sent.</summary>
    public ImmutableArray<OpenAgain> Reopened { get; init; } = [];

    /// <summary>How the deciding looks stand after it, in order; <c>null</c> where that does not change.</summary>
    public ImmutableArray<LookStands>? Looks { get; init; }
}

/// <summary>A part was looked at.</summary>
internal sealed record Looked : EntryBody
{
    /// <summary>What was seen.</summary>
    public required SeenAt Seen { get; init; }
}

/// <summary>A look that decides how far to go was made, or could not be made.</summary>
internal sealed record Decided : EntryBody
{
    /// <summary>Its letter in the plan that holds.</summary>
    public required string Look { get; init; }

    /// <summary><c>clean</c>, <c>found</c>, or <c>in-doubt</c>: not seen, or not seen well enough.</summary>
    public required string Outcome { get; init; }

    /// <summary>What was seen: for a clean look every place clean of every debris of the look, else the finds; nothing where it is in doubt.</summary>
    public required ImmutableArray<SeenAt> Seen { get; init; }

    /// <summary>Whether a find goes beyond what the plan reckons with, so that a plan must be made with it; <c>null</c> for no.</summary>
    public bool? Beyond { get; init; }

    /// <summary>Whether it takes the place of an outcome that was said before; <c>null</c> for no.</summary>
    public bool? Again { get; init; }

    /// <summary>Steps that were done and are open again with it.</summary>
    public ImmutableArray<OpenAgain> Reopened { get; init; } = [];

    /// <summary>How the deciding looks stand after it, in order.</summary>
    public required ImmutableArray<LookStands> Looks { get; init; }
}

/// <summary>The work was planned again.</summary>
internal sealed record Replanned : EntryBody
{
    /// <summary>The hash of the new plan's JSON.</summary>
    public required string Plan { get; init; }

    /// <summary>The entries that it answers.</summary>
    public required ImmutableArray<long> Answers { get; init; }

    /// <summary>Steps that were done and are open again.</summary>
    public required ImmutableArray<OpenAgain> Reopened { get; init; }

    /// <summary>Steps of the plan before that stay due although the new plan does not have them: parts that are off must go back.</summary>
    public ImmutableArray<CarriedStep> Carried { get; init; } = [];
}

/// <summary>The engine may be run again.</summary>
internal sealed record Released : EntryBody
{
    /// <summary>The hash of the release sheet, which is kept.</summary>
    public required string Sheet { get; init; }
}

/// <summary>The release is taken back: what the entry before it says shuts the gate. The engine may not be run.</summary>
internal sealed record Withdrawn : EntryBody
{
    /// <summary>What is missing now, each as a clause.</summary>
    public required ImmutableArray<string> Because { get; init; }
}
