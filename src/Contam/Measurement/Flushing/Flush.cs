using System.Collections.Immutable;
using Contam.Families.Quantities;

namespace Contam.Measurement.Flushing;

/// <summary>
/// Whether a flush scours every bore, and what mends it where it does not. The widest bore, and the one whose flow divides most,
/// are the hard ones: the Reynolds number falls as the bore widens.
/// </summary>
public static class Flush
{
    /// <summary>What the flush does in every bore.</summary>
    /// <returns>The answer; a fault where there is no bore or a figure is out of range, naming the part.</returns>
    public static Sum<FlushAnswer> Of(FlushQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (question.Bores.IsDefaultOrEmpty)
            return new Fault("no bore is given; at least one was expected");
        if (!LeastFlows(question).TryGet(out ImmutableArray<FlowRate> leastAlone, out Fault? fault))
            return fault;
        FlowRate flow = question.Flow ?? leastAlone.Select((alone, i) => ForCircuit(alone, question.Bores[i])).Max();
        var bores = ImmutableArray.CreateBuilder<FlushedBore>(question.Bores.Length);
        for (int i = 0; i < question.Bores.Length; i++)
        {
            if (!One(question, question.Bores[i], flow, leastAlone[i]).TryGet(out FlushedBore? bore, out fault))
                return new Fault($"{question.Bores[i].Part}: {fault.Text}");
            bores.Add(bore);
        }

        return new FlushAnswer(flow, question.WantedReynolds, bores.MoveToImmutable());
    }

    private static Sum<ImmutableArray<FlowRate>> LeastFlows(FlushQuestion question)
    {
        var flows = ImmutableArray.CreateBuilder<FlowRate>(question.Bores.Length);
        foreach (BoreToFlush bore in question.Bores)
        {
            if (bore.Branches < 1)
                return new Fault(FormattableString.Invariant($"{bore.Part}: the flow divides among {bore.Branches} branches; at least 1 was expected"));
            if (!BoreFlow.FlowFor(question.WantedReynolds, bore.Bore, question.Viscosity).TryGet(out FlowRate flow, out Fault? fault))
                return new Fault($"{bore.Part}: {fault.Text}");
            flows.Add(flow);
        }

        return flows.MoveToImmutable();
    }

    private static FlowRate ForCircuit(FlowRate alone, BoreToFlush bore) => new(alone.CubicMetresPerSecond * bore.Branches);

    private static Sum<FlushedBore> One(FlushQuestion question, BoreToFlush bore, FlowRate circuitFlow, FlowRate leastAlone)
    {
        var flow = new FlowRate(circuitFlow.CubicMetresPerSecond / bore.Branches);
        if (!BoreFlow.Velocity(flow, bore.Bore).TryGet(out Velocity velocity, out Fault? fault))
            return fault;
        if (!BoreFlow.Reynolds(flow, bore.Bore, question.Viscosity).TryGet(out double reynolds, out fault))
            return fault;
        if (!BoreFlow.RegimeAt(reynolds).TryGet(out Regime regime, out fault))
            return fault;
        Pressure? loss = null;
        if (bore.Length is { } length && question.Density is { } density)
        {
            if (!PressureLoss.Along(new StraightBore(bore.Bore, length), flow, question.Viscosity, density).TryGet(out Pressure taken, out fault))
                return fault;
            loss = taken;
        }

        bool enough = BoreFlow.Reaches(reynolds, question.WantedReynolds);
        return new FlushedBore(bore, flow, velocity, reynolds, regime, enough)
        {
            Loss = loss,
            Mend = enough ? null : MendOf(question, bore, flow, circuitFlow, leastAlone),
        };
    }

    private static FlushMend MendOf(FlushQuestion question, BoreToFlush bore, FlowRate flow, FlowRate circuitFlow, FlowRate leastAlone)
    {
        KinematicViscosity? thinnerTo = null;
        Temperature? hotterTo = null;
        string? noTemperature = null;
        if (!BoreFlow.ViscosityFor(question.WantedReynolds, flow, bore.Bore).TryGet(out KinematicViscosity needed, out Fault? fault))
            noTemperature = fault.Text;
        else if (question.Curve is null)
            (thinnerTo, noTemperature) = (needed, "the fluid's viscosity is not known at two temperatures");
        else if (!question.Curve.For(needed).TryGet(out Temperature temperature, out fault))
            (thinnerTo, noTemperature) = (needed, fault.Text);
        else
            (thinnerTo, hotterTo) = (needed, temperature);

        // A bore without fellows that is not enough has all of the flow already, so this is never said of one.
        bool alone = BoreFlow.Reaches(circuitFlow.CubicMetresPerSecond, leastAlone.CubicMetresPerSecond);
        return new FlushMend(thinnerTo, hotterTo, noTemperature, ForCircuit(leastAlone, bore), leastAlone, alone);
    }
}
