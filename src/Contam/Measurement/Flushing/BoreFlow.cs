using Contam.Families.Quantities;

namespace Contam.Measurement.Flushing;

/// <summary>
/// Flow in one round bore that runs full. Definitions: v = Q / (π·d²/4); Re = v·d/ν.
/// A flush wants turbulent flow: ISO 23309 asks for a Reynolds number of more than 4000. Where the four agree is checked against
/// published figures in the reference tests.
/// </summary>
public static class BoreFlow
{
    /// <summary>The number from which flow is called turbulent and a flush is said to be enough. ISO 23309:2016 wants more than this, so the flow for it is the least.</summary>
    public const double TurbulentFrom = 4000;

    /// <summary>The number below which flow is called laminar.</summary>
    public const double LaminarBelow = 2300;

    /// <summary>The mean velocity.</summary>
    /// <param name="flow">At least 0.</param>
    /// <param name="bore">The inner diameter, above 0.</param>
    public static Sum<Velocity> Velocity(FlowRate flow, Length bore)
    {
        if ((FlowFault(flow) ?? BoreFault(bore)) is { } fault)
            return fault;
        double velocity = flow.CubicMetresPerSecond / (Math.PI / 4 * bore.Metres * bore.Metres);
        return Expect.Computable("the velocity", velocity) is { } beyond ? beyond : new Velocity(velocity);
    }

    /// <summary>The Reynolds number.</summary>
    /// <param name="flow">At least 0.</param>
    /// <param name="bore">The inner diameter, above 0.</param>
    /// <param name="viscosity">Above 0.</param>
    public static Sum<double> Reynolds(FlowRate flow, Length bore, KinematicViscosity viscosity)
    {
        if ((FlowFault(flow) ?? BoreFault(bore) ?? ViscosityFault(viscosity)) is { } fault)
            return fault;
        double reynolds = 4 * flow.CubicMetresPerSecond / (Math.PI * bore.Metres * viscosity.SquareMetresPerSecond);
        return Expect.Computable("the Reynolds number", reynolds) is { } beyond ? beyond : reynolds;
    }

    /// <summary>The flow that gives a Reynolds number.</summary>
    /// <param name="reynolds">Above 0.</param>
    /// <param name="bore">The inner diameter, above 0.</param>
    /// <param name="viscosity">Above 0.</param>
    public static Sum<FlowRate> FlowFor(double reynolds, Length bore, KinematicViscosity viscosity)
    {
        if ((ReynoldsFault(reynolds) ?? BoreFault(bore) ?? ViscosityFault(viscosity)) is { } fault)
            return fault;
        double flow = reynolds * Math.PI * bore.Metres * viscosity.SquareMetresPerSecond / 4;
        return Expect.Computable("the flow", flow) is { } beyond ? beyond : new FlowRate(flow);
    }

    /// <summary>The viscosity at which a flow gives a Reynolds number.</summary>
    /// <param name="reynolds">Above 0.</param>
    /// <param name="flow">Above 0.</param>
    /// <param name="bore">The inner diameter, above 0.</param>
    public static Sum<KinematicViscosity> ViscosityFor(double reynolds, FlowRate flow, Length bore)
    {
        if ((ReynoldsFault(reynolds) ?? Expect.Positive("the flow", flow.LitresPerMinute, "L/min") ?? BoreFault(bore)) is { } fault)
            return fault;
        double viscosity = 4 * flow.CubicMetresPerSecond / (Math.PI * bore.Metres * reynolds);
        return Expect.Computable("the viscosity", viscosity) is { } beyond ? beyond : new KinematicViscosity(viscosity);
    }

    /// <summary>How the fluid runs at a Reynolds number; a fault below 0.</summary>
    public static Sum<Regime> RegimeAt(double reynolds)
    {
        if (Expect.NotNegative("the Reynolds number", reynolds, "") is { } fault)
            return fault;
        // A flow worked out for exactly 4000 must not be called transitional for the sake of its last digit.
        if (Reaches(reynolds, TurbulentFrom))
            return Regime.Turbulent;
        return Reaches(reynolds, LaminarBelow) ? Regime.Transitional : Regime.Laminar;
    }

    /// <summary>Whether a Reynolds number is as much as wanted, but for the rounding of the arithmetic.</summary>
    internal static bool Reaches(double reynolds, double wanted) => reynolds >= wanted * (1 - 1e-9);

    internal static Fault? ReynoldsFault(double reynolds) => Expect.Positive("the Reynolds number", reynolds, "");

    internal static Fault? FlowFault(FlowRate flow) => Expect.NotNegative("the flow", flow.LitresPerMinute, "L/min");

    internal static Fault? BoreFault(Length bore) => Expect.Positive("the bore", bore.Millimetres, "mm");

    internal static Fault? ViscosityFault(KinematicViscosity viscosity) => Expect.Positive("the viscosity", viscosity.Centistokes, "cSt");
}
