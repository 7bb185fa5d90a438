using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Looks;

/// <summary>Deciding looks held fixed, in order of work, with the ways of every debris that they are for.</summary>
internal sealed class FixedLooks
{
    private readonly int[] lookOf;

    private FixedLooks(LookQuestion question, ImmutableArray<DebrisWays> ways, ImmutableArray<ImmutableArray<int>> places)
    {
        Question = question;
        Ways = ways;
        Places = places;
        lookOf = new int[question.Family.Parts.Length];
        Array.Fill(lookOf, -1);
        for (int look = 0; look < places.Length; look++)
        {
            foreach (int place in places[look])
                lookOf[place] = look;
        }
    }

    public LookQuestion Question { get; }

    public Family Family => Question.Family;

    /// <summary>The ways of every debris asked about.</summary>
    public ImmutableArray<DebrisWays> Ways { get; }

    /// <summary>The places of each look.</summary>
    public ImmutableArray<ImmutableArray<int>> Places { get; }

    public int Count => Places.Length;

    /// <summary>These looks for this question.</summary>
    /// <exception cref="ArgumentException">There are more looks than letters, a look has no place, a place stands in two looks, or a look there decides nothing.</exception>
    public static FixedLooks Of(LookQuestion question, ImmutableArray<ImmutableArray<PartId>> looks) =>
        Of(question, [.. question.Debris.Select(debris => DebrisWays.Of(question, debris))], looks);

    /// <summary>The same, on ways that are known.</summary>
    public static FixedLooks Of(LookQuestion question, ImmutableArray<DebrisWays> ways, ImmutableArray<ImmutableArray<PartId>> looks)
    {
        if (looks.Length > LookMask.Most)
            throw new ArgumentException($"{looks.Length} looks, and {LookMask.Most} letters", nameof(looks));
        var judge = new LookJudge(question, ways);
        var seen = new HashSet<PartId>();
        foreach (ImmutableArray<PartId> look in looks)
        {
            if (look.IsDefaultOrEmpty)
                throw new ArgumentException("a look without a place", nameof(looks));
            foreach (PartId place in look)
            {
                if (!seen.Add(place))
                    throw new ArgumentException($"{place} stands in two looks", nameof(looks));
                if (judge.WhyNot(place) is { } because)
                    throw new ArgumentException($"{place} decides nothing: {because}", nameof(looks));
            }
        }

        return new FixedLooks(question, ways, [.. looks.Select(look => look.Select(question.Family.IndexOf).Order().ToImmutableArray())]);
    }

    /// <summary>The look that a place belongs to; -1 for none.</summary>
    public int LookAt(int vertex) => lookOf[vertex];

    public bool IsPlace(int vertex) => lookOf[vertex] >= 0;

    /// <summary>Whether a debris gets to any place of a look, so that the look is for it.</summary>
    public bool IsFor(int look, DebrisWays ways) => Places[look].Any(place => ways.IsReached[place]);
}
