using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Looks;

/// <summary>What a part may need, for the choice of looks: what it gets when nothing is looked at, and what more where a find makes it worse.</summary>
/// <param name="Part">The part.</param>
/// <param name="Debris">The debris that gets there, as places among those asked about.</param>
/// <param name="Mild">Its treatments when nothing is looked at; never empty.</param>
/// <param name="Harder">Its treatments as an exposed part.</param>
/// <param name="Levels">For each of <paramref name="Debris"/> the level of the size by which it counts as exposed.</param>
internal sealed record ChoicePart(Part Part, ImmutableArray<int> Debris, ImmutableArray<TreatmentKind> Mild, ImmutableArray<TreatmentKind> Harder, ImmutableArray<int> Levels)
{
    /// <summary>The level of the size by which it counts as exposed to a debris: the smallest that a source sheds, or that harms it.</summary>
    public int HarderFrom(int debris) => Levels[Debris.IndexOf(debris)];

    /// <summary>Every part that is treated when nothing is looked at, in the order of the family.</summary>
    /// <param name="question">The question.</param>
    /// <param name="ways">The ways of each debris.</param>
    /// <param name="flat">What each part needs when nothing is looked at.</param>
    public static IEnumerable<ChoicePart> All(LookQuestion question, ImmutableArray<DebrisWays> ways, ImmutableArray<PartLooks> flat)
    {
        var rules = new RuleBook(question.Standard);
        var failed = question.Failed.ToHashSet();
        foreach (PartLooks part in flat.Where(part => !part.Treatments.IsEmpty))
        {
            int vertex = question.Family.IndexOf(part.Part.Id);
            ImmutableArray<int> debris = [.. Enumerable.Range(0, ways.Length).Where(one => ways[one].IsReached[vertex])];
            ImmutableArray<TreatmentKind> mild = [.. part.Treatments.Select(one => one.Treatment)];
            bool isFailed = failed.Contains(part.Part.Id);
            ImmutableArray<TreatmentKind> harder = isFailed ? mild : RuleBook.Join(debris.SelectMany(one => rules.Choose(part.Part, ways[one].Debris, Situation.Exposed).Treatments));
            yield return new ChoicePart(part.Part, debris, mild, harder, [.. debris.Select(one => Math.Max(
                ways[one].Sources.Max(source => source.Level),
                part.Part.Clearance is { } clearance ? ways[one].LevelOf(clearance) : 0))]);
        }
    }
}
