using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement;
using Contam.Measurement.Cleanliness;
using Contam.Measurement.Flushing;
using Contam.Measurement.Gauging;
using Contam.Measurement.Water;
using FsCheck.Xunit;
using Any = FsCheck.DoNotSize<int>;

namespace Contam.Tests.Measurement;

/// <summary>Laws over random figures. Whole numbers of any size are drawn and scaled, so that every draw is a figure that a bench could show.</summary>
[Properties(MaxTest = 1000)]
public sealed class Properties_of_the_sums
{
    private static double Scaled(Any seed, double least, double most) => Scaled(seed.Item, least, most);

    private static double Scaled(int seed, double least, double most) => least + ((most - least) * (Math.Abs((long)seed * 2654435761L % 1000003L) / 1000003.0));

    private static ImmutableArray<RunOutReading> Readings(Any[] seeds, int turn, double zero, Func<int, int, double> at)
    {
        int count = 8 + (Math.Abs(seeds.Length) % 20);
        return
        [
            .. Enumerable.Range(0, count).Select(i => new RunOutReading(
                Angle.FromDegrees(at(i, count) + turn),
                Given.Mm(zero + Scaled(seeds.Length == 0 ? i : seeds[i % seeds.Length].Item ^ (i * 31), -0.2, 0.2)))),
        ];
    }

    [Property]
    public bool Turning_the_part_turns_the_high_spot_and_nothing_else(Any[] seeds, Any degrees, bool evenly)
    {
        double At(int i, int count) => (360.0 * i / count) + (evenly ? 0 : Scaled(i + 7, 0, 180.0 / count));
        int turn = degrees.Item % 360;
        RunOut before = RunOut.Of(Readings(seeds, 0, 0, At)).Value;
        RunOut after = RunOut.Of(Readings(seeds, turn, 0, At)).Value;
        return before.TotalIndicatedReading == after.TotalIndicatedReading && SameShape(before.Shape!, after.Shape!, turn);
    }

    [Property]
    public bool Setting_the_dial_elsewhere_changes_nothing(Any[] seeds, Any zero)
    {
        double At(int i, int count) => 360.0 * i / count;
        RunOut before = RunOut.Of(Readings(seeds, 0, 0, At)).Value;
        RunOut after = RunOut.Of(Readings(seeds, 0, Scaled(zero, -10, 10), At)).Value;
        return Near(before.TotalIndicatedReading, after.TotalIndicatedReading) && SameShape(before.Shape!, after.Shape!, 0);
    }

    [Property]
    public bool Run_out_is_taken_apart_into_what_it_was_put_together_from(Any once, Any high, Any twice, Any oval, Any[] seeds)
    {
        double e = Scaled(once, 0.01, 0.5);
        double c = Scaled(twice, 0.01, 0.5);
        double a = Scaled(high, 0, Math.Tau);
        double b = Scaled(oval, 0, Math.PI);
        int count = 8 + (seeds.Length % 20);
        ImmutableArray<RunOutReading> readings =
        [
            .. Enumerable.Range(0, count).Select(i =>
            {
                double angle = (Math.Tau * i / count) + Scaled(i + seeds.Length, 0, Math.PI / count);
                return new RunOutReading(new Angle(angle), Given.Mm(3 + (e * Math.Cos(angle - a)) + (c * Math.Cos(2 * (angle - b)))));
            }),
        ];
        TurnShape shape = RunOut.Of(readings).Value.Shape!;
        return Near(shape.OncePerTurn, Given.Mm(e)) && Near(shape.Ovality, Given.Mm(c)) && Near(shape.Residual, default)
            && Apart(shape.HighSpot!.Value.Radians, a, Math.Tau) < 1e-6 && Apart(shape.OvalHighSpot!.Value.Radians, b, Math.PI) < 1e-6;
    }

    [Property]
    public bool Any_readings_at_any_angles_give_an_answer_whose_first_figure_is_the_range((int Angle, int Reading)[] given)
    {
        ImmutableArray<RunOutReading> readings = [.. given.Select(one => new RunOutReading(Angle.FromDegrees(one.Angle), Given.Mm(one.Reading)))];
        Sum<RunOut> sum = RunOut.Of(readings);
        if (given.Length < 2)
            return sum.Fault is not null;
        bool oneOrOther = (sum.Value.Shape is null) != (sum.Value.NoShapeBecause is null);
        // The fit leaves no more than there was, for "no run-out at all" is one of the shapes it could have taken.
        bool leavesLess = sum.Value.Shape is not { } shape || shape.Residual.Metres <= sum.Value.TotalIndicatedReading.Metres * Math.Sqrt(given.Length) + 1e-15;
        return oneOrOther && leavesLess && Near(sum.Value.TotalIndicatedReading, Given.Mm((double)given.Max(one => one.Reading) - given.Min(one => one.Reading)));
    }

    [Property]
    public bool More_particles_never_have_a_lower_number(Any first, Any second)
    {
        double low = Math.Pow(10, Scaled(first, -3, 8));
        double high = Math.Pow(10, Scaled(second, -3, 8));
        (low, high) = low <= high ? (low, high) : (high, low);
        return CleanlinessScale.NumberOf(new(low)).Value <= CleanlinessScale.NumberOf(new(high)).Value;
    }

    [Property]
    public bool A_count_lies_within_the_limits_of_its_number(Any seed)
    {
        double count = Math.Pow(10, Scaled(seed, -2.5, 6.3));
        int number = CleanlinessScale.NumberOf(new(count)).Value;
        return count <= CleanlinessScale.UpperLimit(number).Value.PerMillilitre && (number == 0 || count > CleanlinessScale.UpperLimit(number - 1).Value.PerMillilitre);
    }

    [Property]
    public bool What_could_be_true_of_a_small_count_is_never_below_what_was_counted(Any counted, Any sample)
    {
        long particles = Math.Abs((long)counted.Item) % 40;
        CleanlinessNumber number = CleanlinessCode.OfCounted(particles, particles, particles, Given.Millilitres(Scaled(sample, 0.1, 100))).Value.At14!.Value;
        return number.UpTo >= number.Number && number.FewCounted == particles < 20 && (number.FewCounted || number.UpTo == number.Number);
    }

    [Property]
    public bool Beta_and_efficiency_lead_back_to_each_other(Any seed)
    {
        double beta = Math.Pow(10, Scaled(seed, 0, 5));
        double percent = Scaled(seed, 0, 99.99);
        return Math.Abs((FilterBeta.Of(FilterBeta.Efficiency(beta).Value).Value / beta) - 1) < 1e-9
            && Math.Abs(FilterBeta.Efficiency(FilterBeta.Of(Share.FromPercent(percent)).Value).Value.Percent - percent) < 1e-9;
    }

    [Property]
    public bool Velocity_Reynolds_number_and_flow_agree(Any flowSeed, Any boreSeed, Any viscositySeed)
    {
        FlowRate flow = Given.LitresPerMinute(Scaled(flowSeed, 0.1, 500));
        Length bore = Given.Mm(Scaled(boreSeed, 0.5, 150));
        KinematicViscosity viscosity = Given.Cst(Scaled(viscositySeed, 0.3, 1500));
        double velocity = BoreFlow.Velocity(flow, bore).Value.MetresPerSecond;
        double reynolds = BoreFlow.Reynolds(flow, bore, viscosity).Value;
        return Math.Abs((velocity * bore.Metres / viscosity.SquareMetresPerSecond / reynolds) - 1) < 1e-12
            && Math.Abs((BoreFlow.FlowFor(reynolds, bore, viscosity).Value.CubicMetresPerSecond / flow.CubicMetresPerSecond) - 1) < 1e-12
            && Math.Abs((BoreFlow.ViscosityFor(reynolds, flow, bore).Value.SquareMetresPerSecond / viscosity.SquareMetresPerSecond) - 1) < 1e-12;
    }

    [Property]
    public bool An_oil_thins_with_heat_and_leads_back_to_its_temperature(Any thick, Any thin, Any first, Any second)
    {
        double at40 = Scaled(thick, 3, 1500);
        ViscosityLine line = ViscosityLine.Through(Given.Celsius(40), Given.Cst(at40), Given.Celsius(100), Given.Cst(Scaled(thin, 0.8, at40 / 2))).Value;
        (double cold, double hot) = (Scaled(first, 0, 120), Scaled(second, 0, 120));
        (cold, hot) = cold <= hot ? (cold, hot) : (hot, cold);
        Sum<KinematicViscosity> atCold = line.At(Given.Celsius(cold));
        Sum<KinematicViscosity> atHot = line.At(Given.Celsius(hot));
        // A steep line can leave the range within 0 to 120 °C; then it must say so, and only at the end where it does.
        if (atCold.Fault is not null || atHot.Fault is not null)
            return (atCold.Fault ?? atHot.Fault)!.Text.Contains("0.21 to 20000000 cSt was expected", StringComparison.Ordinal);
        return (cold == hot || atCold.Value > atHot.Value)
            && Math.Abs(line.For(atCold.Value).Value.Celsius - cold) < 1e-6
            && Math.Abs(line.For(atHot.Value).Value.Celsius - hot) < 1e-6;
    }

    [Property]
    public bool The_least_flow_is_enough_everywhere_and_a_hair_less_is_not((Any Bore, byte Branches)[] given, Any viscositySeed)
    {
        if (given.Length == 0)
            return true;
        ImmutableArray<BoreToFlush> bores = [.. given.Select((one, i) => new BoreToFlush(new PartId($"part-{i}"), Given.Mm(Scaled(one.Bore, 1, 100))) { Branches = 1 + (one.Branches % 6) })];
        var question = new FlushQuestion(bores, Given.Cst(Scaled(viscositySeed, 1, 400)));
        FlushAnswer least = Flush.Of(question).Value;
        FlushAnswer less = Flush.Of(question with { Flow = new FlowRate(least.Flow.CubicMetresPerSecond * 0.999) }).Value;
        return least.IsEnough && !less.IsEnough && less.Bores.All(bore => bore.Enough == (bore.Mend is null));
    }

    [Property]
    public bool What_mends_a_bore_mends_it(Any boreSeed, byte branches, Any flowSeed)
    {
        BoreToFlush bore = new(new PartId("part"), Given.Mm(Scaled(boreSeed, 1, 100))) { Branches = 1 + (branches % 6) };
        var question = new FlushQuestion([bore], Given.Cst(50)) { Flow = Given.LitresPerMinute(Scaled(flowSeed, 0.1, 300)) };
        if (Flush.Of(question).Value.Bores[0].Mend is not { } mend)
            return true;
        return Flush.Of(question with { Viscosity = mend.ThinnerTo!.Value }).Value.IsEnough
            && Flush.Of(question with { Flow = mend.CircuitFlow }).Value.IsEnough
            && Flush.Of(question with { Bores = [bore with { Branches = 1 }], Flow = mend.FlowAlone }).Value.IsEnough
            && mend.OneBranchAtATime == (bore.Branches > 1 && Flush.Of(question with { Bores = [bore with { Branches = 1 }] }).Value.IsEnough);
    }

    [Property]
    public bool Friction_solves_the_equation_that_defines_it(Any reynoldsSeed, Any roughnessSeed)
    {
        double reynolds = Math.Pow(10, Scaled(reynoldsSeed, 3.4, 8));
        double roughness = Scaled(roughnessSeed, 0, 0.05);
        double x = 1 / Math.Sqrt(PressureLoss.FrictionFactor(reynolds, new Share(roughness)).Value);
        return Math.Abs(x + (2 * Math.Log10((roughness / 3.7) + (2.51 * x / reynolds)))) < 1e-12;
    }

    [Property]
    public bool A_wider_uncertainty_never_decides_more(Any readingSeed, Any first, Any second, Any comparisons)
    {
        var good = new Threshold((Comparison)(Math.Abs((long)comparisons.Item) % 4), 5e-5, "good");
        var reject = new Threshold((Comparison)(Math.Abs((long)comparisons.Item) / 4 % 4), 1e-4, "reject");
        Limit limit = Given.Limit(Measure.RunOut, good, reject);
        Length reading = Given.Mm(Scaled(readingSeed, 0, 0.15));
        (double small, double large) = (Scaled(first, 0, 0.05), Scaled(second, 0, 0.05));
        (small, large) = small <= large ? (small, large) : (large, small);
        Judgement exact = Judge.Reading(limit, reading).Value;
        Judgement narrow = Judge.Reading(limit, reading, Given.Mm(small)).Value;
        Judgement wide = Judge.Reading(limit, reading, Given.Mm(large)).Value;
        return wide.Mildest <= narrow.Mildest && narrow.Mildest <= exact.Verdict && exact.Verdict <= narrow.Worst && narrow.Worst <= wide.Worst
            && (narrow.Verdict == Verdict.Undecided) == (narrow.Mildest != narrow.Worst);
    }

    [Property]
    public bool A_band_holds_every_verdict_that_a_value_in_it_has(Any readingSeed, Any spread, Any inside, Any comparisons)
    {
        var good = new Threshold((Comparison)(Math.Abs((long)comparisons.Item) % 4), 5e-5, "good");
        var reject = new Threshold((Comparison)(Math.Abs((long)comparisons.Item) / 4 % 4), 1e-4, "reject");
        Limit limit = Given.Limit(Measure.RunOut, good, reject);
        double reading = Scaled(readingSeed, 0, 0.15);
        double uncertainty = Scaled(spread, 0, 0.05);
        Judgement band = Judge.Reading(limit, Given.Mm(reading), Given.Mm(uncertainty)).Value;
        Verdict one = Judge.Reading(limit, Given.Mm(reading + (uncertainty * Scaled(inside, -1, 1)))).Value.Verdict;
        return band.Mildest <= one && one <= band.Worst;
    }

    [Property]
    public bool A_tight_hold_loses_nothing_whatever_the_temperature(Any startSeed, Any firstSeed, Any secondSeed, bool vacuum)
    {
        double atmosphere = 1.0;
        double start = vacuum ? Scaled(startSeed, 0.3, 0.9) : Scaled(startSeed, 0.5, 10);
        (double first, double second) = (Scaled(firstSeed, 273, 330), Scaled(secondSeed, 273, 330));
        double endAbsolute = (atmosphere + (vacuum ? -start : start)) * second / first;
        double end = vacuum ? atmosphere - endAbsolute : endAbsolute - atmosphere;
        var test = new HoldTest(vacuum ? HoldKind.Vacuum : HoldKind.Pressure, Given.Bar(start), Given.Bar(end), TimeSpan.FromMinutes(10))
        {
            Atmosphere = Given.Bar(atmosphere),
            StartTemperature = new Temperature(first),
            EndTemperature = new Temperature(second),
        };
        return Math.Abs(test.Figures().Value.Loss.Bar) < 1e-9;
    }

    [Property]
    public bool Passing_the_volumes_asked_leaves_the_share_asked(Any seed)
    {
        var left = new Share(Scaled(seed, 0.0001, 1));
        return Math.Abs((Dilution.LeftWhenMixed(Dilution.VolumesWhenMixed(left).Value).Value.OfOne / left.OfOne) - 1) < 1e-12
            && Math.Abs(Dilution.LeftWhenOnceThrough(Dilution.VolumesWhenOnceThrough(left).Value).Value.OfOne - left.OfOne) < 1e-12
            && Dilution.VolumesWhenOnceThrough(left).Value <= Dilution.VolumesWhenMixed(left).Value + 1e-12;
    }

    [Property]
    public bool No_figure_at_all_makes_a_sum_throw(double first, double second, double third, double fourth)
    {
        Sum<double>[] sums =
        [
            BoreFlow.Velocity(new(first), new(second)).Then<double>(velocity => velocity.MetresPerSecond),
            BoreFlow.Reynolds(new(first), new(second), new(third)),
            BoreFlow.FlowFor(first, new(second), new(third)).Then<double>(flow => flow.CubicMetresPerSecond),
            PressureLoss.Along(new(new(first), new(second), new(third)), new(fourth), new(first), new(second)).Then<double>(loss => loss.Pascals),
            ViscosityLine.Through(new(first), new(second), new(third), new(fourth)).Then(line => line.At(new(first))).Then<double>(one => one.Centistokes),
            Dilution.VolumesWhenMixed(new(first)),
            Dilution.Time(first, new(second), new(third)).Then<double>(time => time.TotalMinutes),
            FilterTime.Of(new(first), new(second), third, new(fourth), new(first)).Then<double>(time => time.TotalMinutes),
            FilterBeta.Of(new ParticleConcentration(first), new ParticleConcentration(second)),
            RunOut.Of(Given.Dial(first, second, third, fourth, 0, 1, 2, 3)).Then<double>(runOut => runOut.Shape!.OncePerTurn.Metres),
            FlowBalance.Of([new Volume(first), new Volume(second)]).Then<double>(balance => balance.Spread.OfOne),
            new HoldTest(HoldKind.Vacuum, new(first), new(second), TimeSpan.FromMinutes(1)) { Atmosphere = new(third), Volume = new Volume(fourth) }
                .Figures().Then<double>(figures => figures.Loss.Pascals),
            CleanlinessScale.NumberOf(new(first)).Then<double>(number => number),
            CleanlinessCode.OfCounted(3, 2, 0, new(first)).Then<double>(code => code.At14!.Value.UpTo),
            WaterInOil.Meaning(new(first), new Saturation(new(second), new(third), "")).Then<double>(meaning => (double)meaning.Form),
            Judge.Reading(Given.Limit(Measure.RunOut, Given.AtMostMm(1)), new Length(first), new Length(second)).Then<double>(judgement => (double)judgement.Verdict),
            Flush.Of(new FlushQuestion([new BoreToFlush(new PartId("part"), new(first))], new(second)) { Flow = new FlowRate(third), WantedReynolds = fourth })
                .Then<double>(answer => answer.Bores[0].Reynolds),
        ];
        return sums.All(sum => sum.Fault is not null || double.IsFinite(sum.Value));
    }

    private static bool SameShape(TurnShape before, TurnShape after, double turn) =>
        Near(before.OncePerTurn, after.OncePerTurn) && Near(before.Ovality, after.Ovality) && Near(before.Residual, after.Residual)
        && SameSpot(before.OncePerTurn, before.HighSpot, after.HighSpot, turn, Math.Tau)
        && SameSpot(before.Ovality, before.OvalHighSpot, after.OvalHighSpot, turn, Math.PI);

    /// <summary>Where next to nothing runs out its direction means next to nothing, so the two spots are compared by how far apart they put the surface.</summary>
    private static bool SameSpot(Length amplitude, Angle? before, Angle? after, double turn, double period) =>
        before is null || after is null
            ? amplitude.Millimetres < 1e-8
            : amplitude.Millimetres * Apart(before.Value.Radians + (turn * Math.PI / 180), after.Value.Radians, period) < 1e-9;

    private static double Apart(double first, double second, double period) => Math.Abs(Math.IEEERemainder(first - second, period));

    private static bool Near(Length first, Length second) => Math.Abs(first.Millimetres - second.Millimetres) < 1e-9;
}
