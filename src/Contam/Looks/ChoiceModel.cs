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
internal sealed partial class ChoiceModel
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
    private readonly double staysPut;
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
        staysPut = drawn.StaysPut;
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
}
