using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Looks;

/// <summary>The ways drawn together to what <see cref="ChoiceModel"/> reckons with.</summary>
internal sealed record ChoiceWays
{
    private const ulong Source = 1UL << 63;

    /// <summary>Each debris with each size that some part asks about.</summary>
    public required ImmutableArray<ChoiceFlow> Flows { get; init; }

    /// <summary>Parts that one clean place spares.</summary>
    public required ImmutableArray<ChoiceModel.Group> Groups { get; init; }

    /// <summary>Parts that two spare.</summary>
    public required ImmutableArray<ChoiceModel.TwoLooksPart> NeedTwo { get; init; }

    /// <summary>What is in the way of looks.</summary>
    public required ImmutableArray<ChoiceModel.InTheWay> InTheWay { get; init; }

    /// <summary>The minutes of what is treated whatever is seen anywhere.</summary>
    public required double Always { get; init; }

    /// <summary>The minutes of the look at all places of each unit, and of the decision.</summary>
    public required double[] LookMinutes { get; init; }

    /// <summary>The chance that nothing has left any source.</summary>
    public required double StaysPut { get; init; }

    /// <summary>The odds of a find at each unit, from the sources, once something has left one.</summary>
    public required double[] FromSource { get; init; }

    /// <summary>The odds of a find at each unit (second) from a find at each unit (first).</summary>
    public required double[,] FromUnit { get; init; }

    /// <summary>The units in the order of work where none hangs on another.</summary>
    public required int[] InRank { get; init; }

    public static ChoiceWays Of(ChoiceQuestion asked, ImmutableArray<DebrisWays> ways, ImmutableArray<PartLooks> flat, BenchWork work, ImmutableArray<ImmutableArray<int>> units)
    {
        Family family = asked.Question.Family;
        var flows = new ChoiceFlows(ways, units);
        var failed = asked.Question.Failed.ToHashSet();
        double always = 0;
        var groups = new Dictionary<string, ChoiceModel.Group>(StringComparer.Ordinal);
        var needTwo = ImmutableArray.CreateBuilder<ChoiceModel.TwoLooksPart>();
        var offWith = new Dictionary<int, ImmutableArray<(int Flow, ulong Mask)>>();
        var offAlways = new HashSet<int>();
        foreach (ChoicePart part in ChoicePart.All(asked.Question, ways, flat))
        {
            int vertex = family.IndexOf(part.Part.Id);
            double mild = work.Treatment(part.Part, part.Mild);
            ImmutableArray<(int Flow, ulong Mask)> reached = [.. part.Debris.Select(debris => flows.At(debris, ways[debris].AnySize, vertex))];
            Sparing sparing = asked.Question.SparedBy(part.Part);
            if (failed.Contains(part.Part.Id) || sparing == Sparing.Nothing || reached.Any(one => one.Mask == Source))
            {
                always += mild;
                offAlways.UnionWith(work.Behind(part.Part.Access));
                if (BenchWork.ComesOff(part.Part, part.Mild))
                    offAlways.Add(vertex);
            }
            else if (sparing == Sparing.TwoLooks)
                needTwo.Add(new ChoiceModel.TwoLooksPart(reached, mild));
            else
                Add(reached, mild, isByFindsAlone: false);
            if (BenchWork.ComesOff(part.Part, part.Mild))
                offWith[vertex] = reached;
            if (work.Treatment(part.Part, part.Harder) - mild is > 0 and var more)
                Add([.. part.Debris.Select(debris => flows.At(debris, part.HarderFrom(debris), vertex))], more, isByFindsAlone: true);
        }

        void Add(ImmutableArray<(int Flow, ulong Mask)> hangsOn, double minutes, bool isByFindsAlone)
        {
            if (minutes <= 0)
                return;
            string key = $"{isByFindsAlone} {string.Join(' ', hangsOn)}";
            groups[key] = groups.TryGetValue(key, out ChoiceModel.Group? known) ? known with { Minutes = known.Minutes + minutes } : new ChoiceModel.Group(hangsOn, minutes, isByFindsAlone);
        }

        var access = new SortedDictionary<int, ulong>();
        for (int unit = 0; unit < units.Length; unit++)
        {
            foreach (int other in units[unit].SelectMany(work.InTheWayOf).Distinct().Where(other => !offAlways.Contains(other)))
                access[other] = access.GetValueOrDefault(other) | 1UL << unit;
        }

        double staysPut = PassingOdds.StaysPut(ways, family.Parts, asked.PassesOn);
        (double[] fromSource, double[,] fromUnit) = Odds(asked, ways, units);
        int[] distance = LookArrangement.Distances(ways);
        int[] inRank = [.. Enumerable.Range(0, units.Length).OrderBy(unit => units[unit].Any(work.NeedsStripping)).ThenBy(unit => units[unit].Min(place => distance[place])).ThenBy(unit => units[unit][0])];
        return new ChoiceWays
        {
            Flows = flows.All,
            Groups = [.. groups.OrderBy(entry => entry.Key, StringComparer.Ordinal).Select(entry => entry.Value)],
            NeedTwo = needTwo.ToImmutable(),
            InTheWay = [.. access.Select(one => new ChoiceModel.InTheWay(one.Value, work.OffAndOn(one.Key), offWith.TryGetValue(one.Key, out ImmutableArray<(int Flow, ulong Mask)> off) ? off : []))],
            Always = always,
            LookMinutes = [.. units.Select(unit => unit.Sum(work.Look) + asked.MinutesADecision)],
            StaysPut = staysPut,
            FromSource = [.. fromSource.Select(odds => PassingOdds.OnceLeft(odds, staysPut))],
            FromUnit = fromUnit,
            InRank = inRank,
        };
    }

    private static (double[] FromSource, double[,] FromUnit) Odds(ChoiceQuestion asked, ImmutableArray<DebrisWays> ways, ImmutableArray<ImmutableArray<int>> units)
    {
        ImmutableArray<Part> parts = asked.Question.Family.Parts;
        var fromSource = new double[units.Length];
        var fromUnit = new double[units.Length, units.Length];
        foreach (DebrisWays one in ways)
        {
            double[] odds = PassingOdds.From(one, one.Sources.Select(source => source.Vertex), parts, asked.PassesOn);
            for (int unit = 0; unit < units.Length; unit++)
                fromSource[unit] = Math.Max(fromSource[unit], units[unit].Max(place => odds[place]));
            for (int from = 0; from < units.Length; from++)
            {
                odds = PassingOdds.From(one, units[from].Where(place => one.IsReached[place]), parts, asked.PassesOn);
                for (int unit = 0; unit < units.Length; unit++)
                    fromUnit[from, unit] = Math.Max(fromUnit[from, unit], units[unit].Max(place => odds[place]));
            }
        }

        return (fromSource, fromUnit);
    }
}
