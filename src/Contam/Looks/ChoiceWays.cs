using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Looks;

/// <summary>The ways drawn together to what <see cref="ChoiceModel"/> reckons with.</summary>
internal sealed record ChoiceWays
{
    private const ulong Source = 1UL << 63;

    /// <summary>For each debris and unit the units, and the source, that are last before it.</summary>
    public required ulong[][] Before { get; init; }

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

    /// <summary>The odds of a find at each unit, from the sources.</summary>
    public required double[] FromSource { get; init; }

    /// <summary>The odds of a find at each unit (second) from a find at each unit (first).</summary>
    public required double[,] FromUnit { get; init; }

    /// <summary>The units in the order of work where none hangs on another.</summary>
    public required int[] InRank { get; init; }

    public static ChoiceWays Of(ChoiceQuestion asked, ImmutableArray<DebrisWays> ways, ImmutableArray<PartLooks> flat, BenchWork work, ImmutableArray<ImmutableArray<int>> units)
    {
        Family family = asked.Question.Family;
        ulong[][] last = [.. ways.Select(one => Last(one, units))];
        var unitAt = new int[family.Parts.Length];
        Array.Fill(unitAt, -1);
        for (int unit = 0; unit < units.Length; unit++)
        {
            foreach (int place in units[unit])
                unitAt[place] = unit;
        }

        var failed = asked.Question.Failed.ToHashSet();
        double always = 0;
        var groups = new Dictionary<string, ChoiceModel.Group>(StringComparer.Ordinal);
        var needTwo = ImmutableArray.CreateBuilder<ChoiceModel.TwoLooksPart>();
        var offWith = new Dictionary<int, ImmutableArray<ulong>>();
        var offAlways = new HashSet<int>();
        foreach (PartLooks part in flat)
        {
            int vertex = family.IndexOf(part.Part.Id);
            ImmutableArray<TreatmentKind> treatments = [.. part.Treatments.Select(one => one.Treatment)];
            double minutes = work.Treatment(part.Part, treatments);
            ImmutableArray<ulong> hangsOn = [.. ways.Select((one, debris) => !one.IsReached[vertex] ? 0 : unitAt[vertex] >= 0 ? 1UL << unitAt[vertex] : last[debris][vertex])];
            Sparing sparing = asked.Question.SparedBy(part.Part);
            bool isAlways = failed.Contains(part.Part.Id) || sparing == Sparing.Nothing || hangsOn.Any(mask => mask == Source);
            if (isAlways && !treatments.IsEmpty)
            {
                always += minutes;
                offAlways.UnionWith(work.Behind(part.Part.Access));
                if (BenchWork.ComesOff(part.Part, treatments))
                    offAlways.Add(vertex);
                continue;
            }

            if (BenchWork.ComesOff(part.Part, treatments))
                offWith[vertex] = hangsOn;
            if (minutes <= 0)
                continue;
            if (sparing == Sparing.TwoLooks)
            {
                needTwo.Add(new ChoiceModel.TwoLooksPart(hangsOn, minutes));
                continue;
            }

            string key = string.Join(' ', hangsOn);
            groups[key] = groups.TryGetValue(key, out ChoiceModel.Group? known) ? known with { Minutes = known.Minutes + minutes } : new ChoiceModel.Group(hangsOn, minutes);
        }

        var access = new SortedDictionary<int, ulong>();
        for (int unit = 0; unit < units.Length; unit++)
        {
            foreach (int other in units[unit].SelectMany(work.InTheWayOf).Distinct().Where(other => !offAlways.Contains(other)))
                access[other] = access.GetValueOrDefault(other) | 1UL << unit;
        }

        (double[] fromSource, double[,] fromUnit) = Odds(asked, ways, units);
        int[] distance = LookArrangement.Distances(ways);
        int[] inRank = [.. Enumerable.Range(0, units.Length).OrderBy(unit => units[unit].Any(work.NeedsStripping)).ThenBy(unit => units[unit].Min(place => distance[place])).ThenBy(unit => units[unit][0])];
        return new ChoiceWays
        {
            Before = [.. ways.Select((one, debris) => units.Select(unit => Or(unit.Where(place => one.IsReached[place]).Select(place => last[debris][place]))).ToArray())],
            Groups = [.. groups.OrderBy(entry => entry.Key, StringComparer.Ordinal).Select(entry => entry.Value)],
            NeedTwo = needTwo.ToImmutable(),
            InTheWay = [.. access.Select(one => new ChoiceModel.InTheWay(one.Value, work.OffAndOn(one.Key), offWith.TryGetValue(one.Key, out ImmutableArray<ulong> off) ? off : [.. ways.Select(_ => 0UL)]))],
            Always = always,
            LookMinutes = [.. units.Select(unit => unit.Sum(work.Look) + asked.MinutesADecision)],
            FromSource = fromSource,
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

    /// <summary>For every part the units, and the source, that are last before it; what is on record as clean stops as well.</summary>
    private static ulong[] Last(DebrisWays ways, ImmutableArray<ImmutableArray<int>> units)
    {
        var last = new ulong[ways.Joints.VertexCount];
        var isStop = new bool[last.Length];
        foreach (int place in units.SelectMany(unit => unit).Concat(ways.OnRecord))
            isStop[place] = ways.IsReached[place];
        var queue = new Queue<int>();
        foreach ((int vertex, _) in ways.Sources)
            Come(vertex, Source);
        for (int unit = 0; unit < units.Length; unit++)
        {
            foreach (int place in units[unit].Where(place => ways.IsReached[place]))
                PassOn(place, 1UL << unit);
        }

        while (queue.TryDequeue(out int vertex))
            PassOn(vertex, last[vertex]);
        return last;

        void PassOn(int vertex, ulong mask)
        {
            for (int place = ways.Joints.First[vertex]; place < ways.Joints.First[vertex + 1]; place++)
                Come(ways.Joints.Target[place], mask);
        }

        void Come(int vertex, ulong mask)
        {
            ulong more = last[vertex] | mask;
            if ((more & Source) != 0)
                more = Source;
            if (more == last[vertex])
                return;
            last[vertex] = more;
            if (!isStop[vertex])
                queue.Enqueue(vertex);
        }
    }

    private static ulong Or(IEnumerable<ulong> masks)
    {
        ulong all = masks.Aggregate(0UL, (one, other) => one | other);
        return (all & Source) != 0 ? Source : all;
    }
}
