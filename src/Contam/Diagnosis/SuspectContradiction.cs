using System.Collections.Immutable;
using Contam.Families;
using Contam.Graphs;
using Contam.Spread;

namespace Contam.Diagnosis;

/// <summary>
/// A find that no suspect can have sent there if every clean look was right: whichever of them failed, it would not be explained
/// (see the definition in the spread). Without a failed part no look is void; but one of the two is wrong, or there is a source that the family does not name.
/// </summary>
/// <param name="Find">The find.</param>
/// <param name="Clean">The clean places on the ways to it from suspects, in the order of the family.</param>
public sealed record SuspectContradiction(Finding Find, ImmutableArray<PartId> Clean)
{
    /// <summary>The contradictions among what was seen, in the order given. Cost: a search for each find, or each suspect, whichever are fewer, twice.</summary>
    internal static ImmutableArray<SuspectContradiction> Of(FindingsModel model)
    {
        Family family = model.Question.Family;
        var failed = model.Question.Failed.ToHashSet();
        var clean = model.Findings.Where(finding => !finding.Found && !failed.Contains(finding.Part) && family[finding.Part].Inspect?.Shows == Shows.Good)
            .Select(finding => family.IndexOf(finding.Part)).ToHashSet();
        Finding[] finds = [.. model.Findings.Where(finding => finding.Found)];
        if (clean.Count == 0 || finds.Length == 0 || model.Sources.Length == 0)
            return [];
        int[] places = [.. finds.Select(find => family.IndexOf(find.Part)).Concat(clean).Distinct().Order()];
        ReachTable free = model.ReachTo(places, shut: null);
        ReachTable pastNoClean = model.ReachTo(places, clean);
        PackedGraph against = SpreadGraph.Pack(family, joint => (joint.When & family.States) != EngineStates.None && (joint.OnlyIfFailed is not { } condition || failed.Contains(condition) || model.Sheds.Length > 0 && model.Sources.Any(source => source.Id == condition))).Reversed();
        return [.. finds.Where(IsContradicted).Select(find => new SuspectContradiction(find, CleanBefore(find)))];

        int PlaceOf(int vertex) => Array.BinarySearch(places, vertex);

        bool IsContradicted(Finding find)
        {
            int place = PlaceOf(family.IndexOf(find.Part));
            int[] leading = [.. Enumerable.Range(0, model.Sources.Length).Where(source => free.At(source, place) is not null)];
            return leading.Length > 0 && !leading.Any(source => pastNoClean.At(source, place) is { } arrives
                && (arrives >= free.At(source, place) || model.Question.Debris.HasSize && find.Size is { } size && arrives >= size.Micrometres));
        }

        ImmutableArray<PartId> CleanBefore(Finding find)
        {
            bool[] leads = Reachable.From(against, [family.IndexOf(find.Part)]);
            return [.. clean.Order().Where(vertex => leads[vertex] && Enumerable.Range(0, model.Sources.Length).Any(source => free.At(source, PlaceOf(vertex)) is not null)).Select(vertex => family.Parts[vertex].Id)];
        }
    }
}
