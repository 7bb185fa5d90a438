using Contam.Families.Quantities;

namespace Contam.Measurement.Flushing;

/// <summary>A straight round bore that runs full.</summary>
/// <param name="Bore">The inner diameter, above 0.</param>
/// <param name="Length">Along the flow, at least 0.</param>
/// <param name="Roughness">Height of the wall's grain: 0 (the default) for smooth, at most a twentieth of the bore.</param>
public sealed record StraightBore(Length Bore, Length Length, Length Roughness = default);

/// <summary>
/// What pressure a straight bore takes. Definition: Δp = f·(L/d)·ρ·v²/2 (Darcy and Weisbach), without bends, fittings and height.
/// f is 64/Re below 2300. From there it is that of Colebrook and White, 1/√f = −2·log₁₀(ε/(3.7·d) + 2.51/(Re·√f)), solved to the last
/// digits; between 2300 and 4000, where the flow is one or the other, that is the larger of the two, so the loss is not understated.
/// Source: Colebrook 1939; Moody 1944.
/// </summary>
public static class PressureLoss
{
    private const double RoughestShare = 0.05;

    /// <summary>The pressure lost along a bore.</summary>
    /// <param name="pipe">The bore.</param>
    /// <param name="flow">At least 0; without flow nothing is lost.</param>
    /// <param name="viscosity">Above 0.</param>
    /// <param name="density">Above 0.</param>
    public static Sum<Pressure> Along(StraightBore pipe, FlowRate flow, KinematicViscosity viscosity, Density density)
    {
        ArgumentNullException.ThrowIfNull(pipe);
        Fault? fault = BoreFlow.BoreFault(pipe.Bore)
            ?? Expect.NotNegative("the length", pipe.Length.Metres, "m")
            ?? Expect.NotNegative("the roughness", pipe.Roughness.Micrometres, "µm")
            ?? Expect.Positive("the density", density.KilogramsPerCubicMetre, "kg/m³");
        if (fault is not null)
            return fault;
        if (!BoreFlow.Reynolds(flow, pipe.Bore, viscosity).TryGet(out double reynolds, out fault))
            return fault;
        if (reynolds == 0)
            return new Pressure(0);
        if (!BoreFlow.Velocity(flow, pipe.Bore).TryGet(out Velocity velocity, out fault))
            return fault;
        if (!FrictionFactor(reynolds, new Share(pipe.Roughness.Metres / pipe.Bore.Metres)).TryGet(out double friction, out fault))
            return fault;

        double dynamic = density.KilogramsPerCubicMetre * velocity.MetresPerSecond * velocity.MetresPerSecond / 2;
        double loss = friction * pipe.Length.Metres / pipe.Bore.Metres * dynamic;
        return Expect.Computable("the pressure loss", loss) is { } beyond ? beyond : new Pressure(loss);
    }

    /// <summary>The friction factor f of the definition (Darcy's; four times Fanning's).</summary>
    /// <param name="reynolds">Above 0.</param>
    /// <param name="roughness">The wall's grain as a share of the bore: 0 to 5 %.</param>
    public static Sum<double> FrictionFactor(double reynolds, Share roughness)
    {
        if ((BoreFlow.ReynoldsFault(reynolds) ?? Expect.Between("the roughness", roughness.OfOne, 0, RoughestShare, "of the bore")) is { } fault)
            return fault;
        return reynolds < BoreFlow.LaminarBelow ? 64 / reynolds : Colebrook(reynolds, roughness.OfOne);
    }

    private static double Colebrook(double reynolds, double roughness)
    {
        // Solved for x = 1/√f by putting it into its own equation: each round leaves less than a fifth of the error.
        double x = 8;
        for (int round = 0; round < 100; round++)
        {
            double next = -2 * Math.Log10((roughness / 3.7) + (2.51 * x / reynolds));
            if (Math.Abs(next - x) <= 1e-15 * x)
                return 1 / (next * next);
            x = next;
        }

        return 1 / (x * x);
    }
}
