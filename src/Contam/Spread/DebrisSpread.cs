using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Spread;

/// <summary>What is asked: how far has this debris gone?</summary>
/// <param name="Family">The engine family.</param>
/// <param name="Failures">The failed parts, each of the family, with what each shed; repeats are ignored. Those that shed this debris are its sources.</param>
/// <param name="Debris">The debris that is followed.</param>
public sealed record SpreadQuestion(Family Family, ImmutableArray<PartFailure> Failures, Debris Debris)
{
    /// <summary>The failed parts, each once, whatever they shed: each opens the joints that wait for its failure and holds nothing back.</summary>
    public ImmutableArray<PartId> Failed => Failures.PartsOf();

    /// <summary>What was seen; findings of other debris are ignored.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>Whether the shop's standard lets a clean finding clear.</summary>
    public bool AcceptsCleanFindings { get; init; } = true;
}

/// <summary>A part that the debris reaches or could have reached.</summary>
/// <param name="Part">The part.</param>
/// <param name="Grade">How far.</param>
/// <param name="Reach">The largest particle that can get here.</param>
/// <param name="From">The source that the hops lead back to.</param>
/// <param name="Via">The part that the debris came through last; <c>null</c> for a source itself.</param>
public sealed record ReachedPart(PartId Part, Grade Grade, ParticleSize Reach, PartId From, PartId? Via);

/// <summary>Parts that only closed conditional joints would reach.</summary>
/// <param name="IfFailed">If this part has failed,</param>
/// <param name="AlsoFailed">and these with it (usually none),</param>
/// <param name="Parts">then these are reached too; family order.</param>
public sealed record ConditionalReach(PartId IfFailed, ImmutableArray<PartId> AlsoFailed, ImmutableArray<PartId> Parts);

/// <summary>How far one debris has gone. Immutable; <see cref="Spreading"/> makes it.</summary>
public sealed class DebrisSpread
{
    private readonly ReachedPart?[] reached;

    /// <summary>The spread in which each place of the family is reached so.</summary>
    internal DebrisSpread(Family family, Debris debris, ReachedPart?[] reached, ImmutableArray<JudgedFinding> findings)
    {
        Family = family;
        Debris = debris;
        this.reached = reached;
        Parts = Those(reached);
        Findings = findings;
    }

    /// <summary>The family.</summary>
    public Family Family { get; }

    /// <summary>The debris.</summary>
    public Debris Debris { get; }

    /// <summary>Every part that the debris reaches or could have reached, in the order of the family.</summary>
    public ImmutableArray<ReachedPart> Parts { get; }

    /// <summary>The findings of this debris, each with whether it counts.</summary>
    public ImmutableArray<JudgedFinding> Findings { get; }

    /// <summary>Every find that disproves a clean look or speaks for a source besides the failed parts, in the order given.</summary>
    public ImmutableArray<Contradiction> Contradictions { get; internal init; } = [];

    /// <summary>Parts that only closed conditional joints would reach; by the part to look at, in the order of the family.</summary>
    public ImmutableArray<ConditionalReach> Conditional { get; internal init; } = [];

    /// <summary>How many parts have no path from the failure at all.</summary>
    public int ClearCount => Family.Parts.Length - Parts.Length;

    /// <summary>Reach and hops with accepted clean findings counted; <c>null</c> where there are none and <see cref="Parts"/> says it all.</summary>
    public ImmutableArray<ReachedPart>? CountingFindings => Worlds is { } worlds ? Those(worlds.Counting) : null;

    /// <summary>Reach and hops as if nobody had found anything clean; <c>null</c> where no clean finding is accepted.</summary>
    public ImmutableArray<ReachedPart>? IgnoringFindings => Worlds is { } worlds ? Those(worlds.Ignoring) : null;

    /// <summary>Both readings of the clean findings, by place in the family; <c>null</c> where none is accepted.</summary>
    internal (ReachedPart?[] Counting, ReachedPart?[] Ignoring)? Worlds { get; init; }

    /// <summary>How this part is reached, or <c>null</c> where it is clear.</summary>
    public ReachedPart? Find(PartId part) => Family.IndexOf(part) is >= 0 and var place ? reached[place] : null;

    /// <summary>
    /// How the debris comes to a listed part: from the source to the part, both named. The narrowest hop of this path is the part's reach.
    /// Empty where the part is clear.
    /// </summary>
    public ImmutableArray<PartId> PathTo(PartId part)
    {
        if (Find(part) is not { } last)
            return [];
        ReachedPart?[] hops = HopsFor(last);
        var path = new List<PartId> { part };
        for (PartId? via = last.Via; via is { } before; via = hops[Family.IndexOf(before)]!.Via)
            path.Add(before);
        path.Reverse();
        return [.. path];
    }

    /// <summary>The hops of a part that clean findings do not spare are those without them, whatever the parts on the way are listed with.</summary>
    private ReachedPart?[] HopsFor(ReachedPart listed) =>
        Worlds is not { } worlds ? reached : ReferenceEquals(worlds.Counting[Family.IndexOf(listed.Part)], listed) ? worlds.Counting : worlds.Ignoring;

    private static ImmutableArray<ReachedPart> Those(ReachedPart?[] reached) => [.. reached.OfType<ReachedPart>()];
}
