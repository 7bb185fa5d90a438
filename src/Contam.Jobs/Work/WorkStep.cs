using System.Collections.Immutable;
using Contam.Jobs.Entries;

namespace Contam.Jobs.Work;

/// <summary>A step of a job: a step of its plan, or one that an earlier plan left due.</summary>
public sealed record WorkStep
{
    /// <summary>Its number, from 1; carried steps stand behind those of the plan.</summary>
    public required int Number { get; init; }

    /// <summary>What makes it the same step in another plan.</summary>
    public required string Key { get; init; }

    /// <summary>Its phase.</summary>
    public required Phase Phase { get; init; }

    /// <summary>What it does.</summary>
    public required StepAction Action { get; init; }

    /// <summary>What a look is for; <c>null</c> for other work.</summary>
    public LookAbout? About { get; init; }

    /// <summary>The parts it is done at; may be empty.</summary>
    public required ImmutableArray<string> Parts { get; init; }

    /// <summary>What the technician reads.</summary>
    public required string Text { get; init; }

    /// <summary>A technician's minutes.</summary>
    public required double Minutes { get; init; }

    /// <summary>Numbers of the steps that must be done first; the nearest only, rising.</summary>
    public required ImmutableArray<int> After { get; init; }

    /// <summary>Running hours after which it is due; <c>null</c> where it must be done before the engine is started.</summary>
    public double? DueAfterRunningHours { get; init; }

    /// <summary>The technician whom the plan gives it to, from 1; <c>null</c> where no hands are needed.</summary>
    public int? Technician { get; init; }

    /// <summary>Letters of looks: it is done when debris was found at any of them; empty for whatever is seen.</summary>
    public ImmutableArray<string> OnlyIf { get; init; } = [];

    /// <summary>Letters of looks: it is struck when debris was found at any of them.</summary>
    public ImmutableArray<string> Unless { get; init; } = [];

    /// <summary>Letters of the deciding looks that are made in it; mostly none.</summary>
    public ImmutableArray<string> Looks { get; init; } = [];

    /// <summary>Whether an earlier plan left it due.</summary>
    public bool IsCarried { get; init; }

    /// <summary>Whether the engine may not be released before it is done.</summary>
    public bool IsBeforeRelease => DueAfterRunningHours is null;

    /// <summary>The step as it goes into an entry.</summary>
    internal StepStamp Stamp => new(Number, Key, Text);
}
