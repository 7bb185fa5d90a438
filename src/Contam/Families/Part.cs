using System.Collections.Immutable;

namespace Contam.Families;

/// <summary>How likely a part is to shed debris.</summary>
public enum Likelihood
{
    /// <summary>Seldom seen.</summary>
    Rare,

    /// <summary>Now and then.</summary>
    Occasional,

    /// <summary>The usual suspect.</summary>
    Common,
}

/// <summary>How surely a look at a part shows debris that is there.</summary>
public enum Shows
{
    /// <summary>Debris is easily missed.</summary>
    Poor,

    /// <summary>Debris is seen more often than not.</summary>
    Fair,

    /// <summary>Debris that is there is seen; a clean finding counts.</summary>
    Good,
}

/// <summary>What shed metal looks like.</summary>
public enum DebrisForm
{
    /// <summary>Flakes.</summary>
    Flakes,

    /// <summary>Slivers.</summary>
    Slivers,

    /// <summary>Grains.</summary>
    Grains,

    /// <summary>Fuzz.</summary>
    Fuzz,
}

/// <summary>A part sheds debris when it fails.</summary>
/// <param name="Debris">What it sheds.</param>
/// <param name="Likely">How likely.</param>
/// <param name="UpTo">The largest particle it sheds; unlimited where nothing is said or the debris has no size.</param>
public sealed record Shed(Debris Debris, Likelihood Likely, ParticleSize UpTo)
{
    /// <summary>Whether what it sheds is magnetic; <c>null</c> for not said.</summary>
    public bool? Magnetic { get; init; }

    /// <summary>What it looks like; <c>null</c> for not said.</summary>
    public DebrisForm? Form { get; init; }

    /// <summary>Where it is written.</summary>
    public SourceSpan? Place { get; init; }
}

/// <summary>A part holds debris back above a size.</summary>
/// <param name="Debris">What it holds back.</param>
/// <param name="Above">The largest particle that still gets on; 0 for <c>all</c> held back.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Hold(Debris Debris, ParticleSize Above, SourceSpan? Place);

/// <summary>A look at a part: how long, how sure, how done.</summary>
/// <param name="Minutes">Minutes of a technician's time; <c>null</c> for not said.</param>
/// <param name="Shows">How surely the look shows debris.</param>
/// <param name="How">How it is done, in words; empty for not said.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Inspection(double? Minutes, Shows Shows, string How, SourceSpan? Place)
{
    /// <summary>Whether the look uses the part up; <c>null</c> for as its kind says. <see cref="Part.LookUsesUp"/> answers for the part.</summary>
    public bool? UsesUp { get; init; }

    /// <summary>Whether the look takes the part off its place. <see cref="Part.LookTakesOff"/> answers for the part.</summary>
    public bool TakesOff { get; init; }

    /// <summary>What must be off for the look alone; <c>null</c> for what must be off for any work at the part.</summary>
    public ImmutableArray<PartId>? Access { get; init; }
}

/// <summary>The part leaves the shop to be treated.</summary>
/// <param name="Days">Working days away; <c>null</c> for not said.</param>
/// <param name="Who">Who does it, in words.</param>
/// <param name="Place">Where it is written.</param>
public sealed record SendOut(double? Days, string Who, SourceSpan? Place);

/// <summary>What a check warns of is meant so in one place.</summary>
/// <param name="Code">The code of the lint.</param>
/// <param name="Why">The reason, in words; never empty.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Meant(string Code, string Why, SourceSpan Place);

/// <summary>
/// Anything that debris can reach. Immutable; parts of a family are told apart by <see cref="Id"/>.
/// </summary>
/// <param name="Id">The id, unique in the family.</param>
/// <param name="Kind">What sort of part it is.</param>
/// <param name="Place">Where it is described.</param>
public sealed record Part(PartId Id, Kind Kind, SourceSpan Place)
{
    /// <summary>The name that a person reads.</summary>
    public string Name { get; init; } = Id.Value;

    /// <summary>For a repeated part the id without its number (<c>injector</c> of <c>injector-3</c>), else <c>null</c>.</summary>
    public string? RepeatOf { get; init; }

    /// <summary>For a repeated part its number from 1, else 0.</summary>
    public int RepeatIndex { get; init; }

    /// <summary>What it sheds, each debris once.</summary>
    public ImmutableArray<Shed> Sheds { get; init; } = [];

    /// <summary>What it holds back, each debris once.</summary>
    public ImmutableArray<Hold> Holds { get; init; } = [];

    /// <summary>Whether what it holds is an absolute rating. A nominal one is not relied on.</summary>
    public bool HasAbsoluteRating { get; init; }

    /// <summary>Whether the file says any rating at all.</summary>
    public bool RatingIsSaid { get; init; }

    /// <summary>Whether it opens past itself when loaded, so that it is not relied on.</summary>
    public bool HasBypass { get; init; }

    /// <summary>The widest a hard particle may be and still go through to what lies downstream; <c>null</c> for not said.</summary>
    public ParticleSize? Passage { get; init; }

    /// <summary>The running clearance that debris of that size harms; <c>null</c> for not said.</summary>
    public ParticleSize? Clearance { get; init; }

    /// <summary>How many clean looks leave it alone; from its kind unless the file says otherwise.</summary>
    public ClearedBy ClearedBy { get; init; } = Kind.ClearedBy;

    /// <summary>Whether one clean look does not spare it. Where it is reached past a barrier it is treated as one that is exposed.</summary>
    public bool IsCritical => ClearedBy != ClearedBy.OneLook;

    /// <summary>Where it can be tested; from its kind unless the file says otherwise.</summary>
    public TestAt TestAt { get; init; } = Kind.TestAt;

    /// <summary>Whether it comes off to be treated; from its kind unless the file says otherwise.</summary>
    public bool IsRemovable { get; init; } = Kind.IsRemovable;

    /// <summary>What must be off before this part can be got at, each once, in file order.</summary>
    public ImmutableArray<PartId> Access { get; init; } = [];

    /// <summary>What it stands on, each once, in file order: it comes off before any of them comes off, and goes on after all of them are on.</summary>
    public ImmutableArray<PartId> StandsOn { get; init; } = [];

    /// <summary>What it rides on, or <c>null</c>: it comes off with that part or after it, is parted from it on the bench, and is built up before that part goes on.</summary>
    public PartId? RidesOn { get; init; }

    /// <summary>The set that it is renewed with, itself among them, in the order of the family; empty where it is renewed alone. All parts of a set have the same.</summary>
    public ImmutableArray<PartId> Together { get; init; } = [];

    /// <summary>The part that it is inside of and renewed with when that one is renewed whole, or <c>null</c>.</summary>
    public PartId? Assembly { get; init; }

    /// <summary>Single-use seals renewed whenever it is opened, one entry a piece.</summary>
    public ImmutableArray<string> Seals { get; init; } = Kind.Seals;

    /// <summary>A place to look at, or <c>null</c>.</summary>
    public Inspection? Inspect { get; init; }

    /// <summary>Whether a look at it uses it up: a new one is needed whatever is seen.</summary>
    public bool LookUsesUp => Inspect?.UsesUp ?? Kind.LookUsesUp;

    /// <summary>Whether a look at it takes it off its place. What a look uses up it takes off.</summary>
    public bool LookTakesOff => LookUsesUp || Inspect is { TakesOff: true };

    /// <summary>Whether a look at it opens its circuit: it is taken off for the look, or its kind says so and the look's <c>access</c> is not an empty list.</summary>
    public bool LookOpens => LookTakesOff || (Kind.LookOpens && Inspect is not { Access: { IsEmpty: true } });

    /// <summary>It leaves the shop to be treated, or <c>null</c>.</summary>
    public SendOut? SendOut { get; init; }

    /// <summary>Minutes that the file says for this part; the rest comes from its kind and the standard.</summary>
    public TaskMinutes Minutes { get; init; } = TaskMinutes.None;

    /// <summary>How long a new one takes to come, or <c>null</c> for not said.</summary>
    public TimeSpan? Lead { get; init; }

    /// <summary>What it holds when full, or <c>null</c>.</summary>
    public Quantities.Volume? Volume { get; init; }

    /// <summary>Its inner diameter, or <c>null</c>.</summary>
    public Quantities.Length? Bore { get; init; }

    /// <summary>Its length along the flow, or <c>null</c>.</summary>
    public Quantities.Length? Length { get; init; }

    /// <summary>What a check would warn of here and is meant so, each code once.</summary>
    public ImmutableArray<Meant> Meant { get; init; } = [];

    /// <summary>What it sheds of this debris, or <c>null</c>.</summary>
    public Shed? ShedOf(Debris debris) => Sheds.FirstOrDefault(shed => shed.Debris == debris);

    /// <summary>What it holds back of this debris, or <c>null</c>, relied on or not.</summary>
    public Hold? HoldOf(Debris debris) => Holds.FirstOrDefault(hold => hold.Debris == debris);
}
