using System.Collections.Immutable;
using System.Numerics;

namespace Contam.Looks;

/// <summary>
/// What is to be expected of any choice among the places that could decide, by sums quick enough to try many.
/// <para>
/// Units of choice are places; like places that debris comes to with the same odds are one unit. Every part is reckoned with the minutes that it takes
/// when nothing is looked at, and hangs on looks as <see cref="LookFlow"/> and <see cref="LastTwoLooks"/> say, and with the further minutes that it takes where a find makes its
/// grade worse; that a find may make another look void is left out here. The ways are drawn together beforehand to which units are last before which, and which
/// units, or the source, before which parts (<see cref="ChoiceFlows"/>); a unit that is not chosen passes on what comes to it.
/// </para>
/// <para>Cost: linear for each unit once; then, for each choice, units² and histories × (groups of parts that hang on the same).</para>
/// </summary>
internal sealed class ChoiceModel
{
    /// <summary>The most units; of more, those are kept that spare most by themselves.</summary>
    public const int MostUnits = 60;

    private const ulong Source = 1UL << 63;

    private readonly ImmutableArray<ChoiceFlow> flows;
    private readonly ImmutableArray<Group> groups;
    private readonly ImmutableArray<TwoLooksPart> needTwo;
    private readonly ImmutableArray<InTheWay> inTheWay;
    private readonly double always;
    private readonly double[] lookMinutes;
    private readonly double[] fromSource;
    private readonly double[,] fromUnit;
    private readonly int[] inRank;

    private ChoiceModel(ChoiceWays drawn, ImmutableArray<ImmutableArray<int>> units)
    {
        Units = units;
        flows = drawn.Flows;
        groups = drawn.Groups;
        needTwo = drawn.NeedTwo;
        inTheWay = drawn.InTheWay;
        always = drawn.Always;
        lookMinutes = drawn.LookMinutes;
        fromSource = drawn.FromSource;
        fromUnit = drawn.FromUnit;
        inRank = drawn.InRank;
        ulong all = units.Length == 0 ? 0 : (1UL << units.Length) - 1;
        Bound = always + Hanging(Through(all), all).Zip(Minutes()).Where(one => one.First == Source).Sum(one => one.Second);
    }

    /// <summary>The units of choice.</summary>
    public ImmutableArray<ImmutableArray<int>> Units { get; }

    /// <summary>What is treated however many looks are made and clean, in minutes: no choice takes less.</summary>
    public double Bound { get; }

    public static ChoiceModel Of(ChoiceQuestion question, ImmutableArray<DebrisWays> ways, ImmutableArray<PartLooks> flat, BenchWork work)
    {
        ImmutableArray<ImmutableArray<int>> units = ChoiceUnits.Of(question, ways, work);
        return new ChoiceModel(ChoiceWays.Of(question, ways, flat, work, units), units);
    }

    /// <summary>
    /// The minutes to be expected with these units, as bits, as looks; infinite where there are more histories than a plan may have. To the thousandth, so that
    /// the order in which they are added tells no choice from another.
    /// </summary>
    public double Expected(ulong chosen)
    {
        var run = new Run(this, chosen);
        return run.Sum() is { } sum ? Math.Round(sum, 3) : double.PositiveInfinity;
    }

    /// <summary>By which chosen units every group of parts is treated, and the parts that take two.</summary>
    private ulong[] Hanging(ulong[][] through, ulong chosen)
    {
        var hanging = new ulong[groups.Length + needTwo.Length];
        for (int group = 0; group < groups.Length; group++)
            hanging[group] = Joined(through, chosen, groups[group].Last) is var mask && mask == Source && groups[group].IsByFindsAlone ? 0 : mask;
        for (int part = 0; part < needTwo.Length; part++)
            hanging[groups.Length + part] = LastTwo(through, chosen, needTwo[part]);
        return hanging;
    }

    private ulong[][] Through(ulong chosen)
    {
        var through = new ulong[flows.Length][];
        for (int flow = 0; flow < through.Length; flow++)
            through[flow] = Through(flows[flow], chosen);
        return through;
    }

    private double[] Minutes() => [.. groups.Select(group => group.Minutes), .. needTwo.Select(part => part.Minutes)];

    /// <summary>For every unit the chosen ones, and the source, by which the debris comes to it.</summary>
    private static ulong[] Through(ChoiceFlow flow, ulong chosen)
    {
        ulong[] before = flow.Before;
        var through = new ulong[before.Length];
        bool isMore = true;
        while (isMore)
        {
            isMore = false;
            for (int unit = 0; unit < before.Length; unit++)
            {
                ulong now = Resolve(flow, through, chosen, before[unit]);
                isMore |= now != through[unit];
                through[unit] = now;
            }
        }

        return through;
    }

    private static ulong Resolve(ChoiceFlow flow, ulong[] through, ulong chosen, ulong last)
    {
        ulong resolved = last & (chosen | Source);
        for (ulong left = last & ~(chosen | Source); left != 0; left &= left - 1)
        {
            int unit = BitOperations.TrailingZeroCount(left);
            if (flow.Passes[unit])
                resolved |= through[unit];
        }

        return (resolved & Source) != 0 ? Source : resolved;
    }

    private ulong Joined(ulong[][] through, ulong chosen, ImmutableArray<(int Flow, ulong Mask)> last)
    {
        ulong joined = 0;
        foreach ((int flow, ulong mask) in last)
            joined |= Resolve(flows[flow], through[flow], chosen, mask);
        return (joined & Source) != 0 ? Source : joined;
    }

    private ulong LastTwo(ulong[][] through, ulong chosen, TwoLooksPart part)
    {
        ulong looks = 0;
        foreach ((int flow, ulong mask) in part.Last)
        {
            ulong last = Resolve(flows[flow], through[flow], chosen, mask);
            looks |= last;
            for (ulong left = last & ~Source; left != 0; left &= left - 1)
                looks |= through[flow][BitOperations.TrailingZeroCount(left)];
        }

        return (looks & Source) != 0 ? Source : looks;
    }

    /// <summary>Parts that hang on the same units.</summary>
    /// <param name="Last">For each flow that counts the units, and the source, that are last before them.</param>
    /// <param name="Minutes">What they take together.</param>
    /// <param name="IsByFindsAlone">Whether it is what a find makes worse, so that what comes from the source is counted already.</param>
    internal sealed record Group(ImmutableArray<(int Flow, ulong Mask)> Last, double Minutes, bool IsByFindsAlone);

    /// <summary>A part that takes two clean places.</summary>
    internal sealed record TwoLooksPart(ImmutableArray<(int Flow, ulong Mask)> Last, double Minutes);

    /// <summary>A part that is in the way of looks, with these units, and off anyway where it is treated itself.</summary>
    internal sealed record InTheWay(ulong Units, double Minutes, ImmutableArray<(int Flow, ulong Mask)> OffWith);

    /// <summary>One choice gone through, look by look.</summary>
    private sealed class Run
    {
        private readonly ChoiceModel model;
        private readonly List<(ulong Mask, double Minutes)> hanging = [];
        private readonly List<(ulong Units, double Minutes, ulong OffWith)> off = [];
        private readonly int[] order;
        private readonly ulong[] due;
        private readonly double always;
        private int histories;

        public Run(ChoiceModel model, ulong chosen)
        {
            this.model = model;
            always = model.always;
            ulong[][] through = model.Through(chosen);
            ulong[] masks = model.Hanging(through, chosen);
            for (int i = 0; i < masks.Length; i++)
            {
                double minutes = i < model.groups.Length ? model.groups[i].Minutes : model.needTwo[i - model.groups.Length].Minutes;
                if (masks[i] == Source)
                    always += minutes;
                else if (masks[i] != 0)
                    AddHanging(masks[i], minutes);
            }

            foreach (InTheWay one in model.inTheWay)
            {
                if ((one.Units & chosen) != 0 && model.Joined(through, chosen, one.OffWith) is var offWith && offWith != Source)
                    off.Add((one.Units & chosen, one.Minutes, offWith));
            }

            ulong made = 0;
            for (int i = model.groups.Length; i < masks.Length; i++)
                made |= masks[i] & ~Source;

            var hangsOn = new ulong[model.Units.Length];
            for (int unit = 0; unit < hangsOn.Length; unit++)
            {
                for (int flow = 0; flow < through.Length; flow++)
                    hangsOn[unit] |= model.flows[flow].IsOfAnySize ? through[flow][unit] : 0;
                if ((hangsOn[unit] & Source) != 0 || (made >> unit & 1) == 1)
                    hangsOn[unit] = Source;
            }

            order = InOrder(chosen, hangsOn);
            due = [.. order.Select((_, place) => Earlier(place, hangsOn))];
        }

        /// <summary>The minutes to be expected; <c>null</c> for too many histories.</summary>
        public double? Sum() => GoOn(0, 0, 0, 1) is var sum && histories <= Histories.Most ? sum : null;

        private double GoOn(int place, ulong made, ulong found, double likelihood)
        {
            if (histories > Histories.Most)
                return 0;
            if (place == order.Length)
            {
                histories++;
                return likelihood * Minutes(made, found);
            }

            if (due[place] != Source && (due[place] & found) == 0)
                return GoOn(place + 1, made, found, likelihood);
            int unit = order[place];
            double odds = due[place] == Source ? model.fromSource[unit] : 0;
            for (ulong left = found; left != 0; left &= left - 1)
                odds = Math.Max(odds, model.fromUnit[BitOperations.TrailingZeroCount(left), unit]);
            ulong bit = 1UL << unit;
            return GoOn(place + 1, made | bit, found, likelihood * (1 - odds)) + GoOn(place + 1, made | bit, found | bit, likelihood * odds);
        }

        private double Minutes(ulong made, ulong found)
        {
            double minutes = always;
            foreach ((ulong mask, double takes) in hanging)
            {
                if ((mask & found) != 0)
                    minutes += takes;
            }

            for (ulong left = made; left != 0; left &= left - 1)
                minutes += model.lookMinutes[BitOperations.TrailingZeroCount(left)];
            foreach ((ulong units, double takes, ulong offWith) in off)
            {
                if ((units & made) != 0 && (offWith & found) == 0)
                    minutes += takes;
            }

            return minutes;
        }

        private void AddHanging(ulong mask, double minutes)
        {
            for (int i = 0; i < hanging.Count; i++)
            {
                if (hanging[i].Mask != mask)
                    continue;
                hanging[i] = (mask, hanging[i].Minutes + minutes);
                return;
            }

            hanging.Add((mask, minutes));
        }

        private int[] InOrder(ulong chosen, ulong[] hangsOn)
        {
            var ordered = new List<int>();
            int[] waiting = [.. model.inRank.Where(unit => (chosen >> unit & 1) == 1)];
            ulong placed = 0;
            while (ordered.Count < waiting.Length)
            {
                int next = -1;
                foreach (int unit in waiting)
                {
                    ulong bit = 1UL << unit;
                    if ((placed & bit) == 0 && (hangsOn[unit] & ~Source & ~bit & ~placed) == 0)
                    {
                        next = unit;
                        break;
                    }
                }

                if (next < 0)
                    next = waiting.First(unit => (placed >> unit & 1) == 0);
                placed |= 1UL << next;
                ordered.Add(next);
            }

            return [.. ordered];
        }

        /// <summary>The looks made before this one by which it is due; see <see cref="Dueness"/>.</summary>
        private ulong Earlier(int place, ulong[] hangsOn)
        {
            ulong earlier = 0;
            for (int i = 0; i < place; i++)
                earlier |= 1UL << order[i];
            ulong dueBy = 0, seen = 1UL << order[place], open = seen;
            while (open != 0)
            {
                ulong now = hangsOn[BitOperations.TrailingZeroCount(open)];
                open &= open - 1;
                if (now == Source)
                    return Source;
                dueBy |= now & earlier;
                open |= now & ~earlier & ~seen;
                seen |= now & ~earlier;
            }

            return dueBy;
        }
    }
}
