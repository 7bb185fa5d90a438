using System.Collections.Immutable;
using Contam.Families;
using Contam.StopLines;

namespace Contam.Drills;

/// <summary>
/// Asks for the stop line: the other choices take more, each by at least a tenth of a minute. They leave out a look, look in a place whose clean finding would
/// not count, look too near or too far, or look once more than there is need.
/// </summary>
internal static class WhereToLook
{
    private const int MostWrong = 3;
    private const int LeastWrong = 2;
    private const int MostPlaces = 12;

    public static Posed Pose(DrillRequest request, ShortestWays ways)
    {
        var question = new StopLineQuestion(request.Family, request.Standard, request.Failures, request.Debris);
        StopLine line = StopLineFinder.Of(question);
        if (line.Looks.IsEmpty)
            return new Posed(null, new LeftOutQuestion(DrillKind.StopLine, DrillSilence.NoLookSaves, line.Silence));
        var dice = new DrillDice(request.Seed, DrillKind.StopLine);
        var chosen = ChosenLooks.Of(question);
        ImmutableArray<PartId> looks = InOrder(request.Family, line.Looks.Select(look => look.Part));
        (double least, ImmutableArray<PartId> spared) = chosen.Of(looks);

        LookChoice Of(ImmutableArray<PartId> choice)
        {
            (double minutes, ImmutableArray<PartId> spares) = chosen.Of(choice);
            HashSet<PartId> counting = [.. choice.Where(chosen.Counts)];
            var past = ShortestWays.From(request, debris: null, counting.Contains);
            PartId? left = spared.Except(spares).OrderBy(part => past.HopsTo(part) ?? int.MaxValue).Cast<PartId?>().FirstOrDefault();
            return new LookChoice(choice, minutes, minutes == least)
            {
                Spares = spares.Length,
                NotCounting = [.. choice.Where(part => !counting.Contains(part))],
                Path = left is { } open ? past.PathTo(open) : [],
            };
        }

        List<LookChoice> wrong = [];
        foreach (ImmutableArray<PartId> choice in Mixed.Of(dice, int.MaxValue, Sorts(request.Family, looks, chosen, ways, dice)).Where(choice => !choice.SequenceEqual(looks)))
        {
            if (wrong.Count < MostWrong && !wrong.Any(other => other.Looks.SequenceEqual(choice)) && chosen.Of(choice).Minutes > least)
                wrong.Add(Of(choice));
        }

        if (wrong.Count < LeastWrong)
            return Posed.Not(DrillKind.StopLine, DrillSilence.TooFewParts);
        HashSet<PartId> places = [.. looks, .. wrong.SelectMany(choice => choice.Looks)];
        return Posed.As(new DrillQuestion(DrillKind.StopLine, [.. dice.Shuffled<DrillChoice>([Of(looks), .. wrong])])
        {
            Places = [.. InOrder(request.Family, places).Select(part => new LookPlace(part, chosen.MinutesOf(part), request.Family[part].Inspect?.Shows))],
        });
    }

    // Each a change of the stop line, as wrong choices are: a look too few, one moved to a neighbour, one moved further, one too many.
    private static ImmutableArray<PartId>[][] Sorts(Family family, ImmutableArray<PartId> looks, ChosenLooks chosen, ShortestWays ways, DrillDice dice)
    {
        PartId[] reached = [.. family.Parts.Select(part => part.Id).Where(part => ways.HopsTo(part) is not null && !looks.Contains(part))];
        var beside = family.Joints.Where(joint => looks.Contains(joint.From) || looks.Contains(joint.To)).SelectMany(joint => new[] { joint.From, joint.To }).ToHashSet();
        ImmutableArray<PartId>[] Moved(Func<PartId, bool> isMeant) =>
        [
            .. dice.Shuffled(looks.SelectMany(look => reached.Where(isMeant).Select(other => (look, other)))).Take(MostPlaces).Select(move => InOrder(family, looks.Replace(move.look, move.other))),
        ];
        return
        [
            looks.Length < 2 ? [] : [.. looks.Select(look => looks.Remove(look))],
            Moved(part => beside.Contains(part) && !chosen.Counts(part)),
            Moved(chosen.Counts),
            [.. dice.Shuffled(reached.Where(chosen.Counts)).Take(MostPlaces).Select(part => InOrder(family, looks.Add(part)))],
            Moved(_ => true),
        ];
    }

    private static ImmutableArray<PartId> InOrder(Family family, IEnumerable<PartId> parts) => [.. parts.Distinct().OrderBy(family.IndexOf)];
}
