using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement.Flushing;
using Contam.Problems;

namespace Contam.Cli;

/// <summary>What a circuit is flushed with: its own fluid, or another whose viscosity was typed.</summary>
/// <param name="Name">In words.</param>
/// <param name="At">How warm it is.</param>
/// <param name="Viscosity">Its viscosity there.</param>
/// <param name="Curve">How it thins with heat; <c>null</c> for not known.</param>
/// <param name="Density">Its density; <c>null</c> for not known.</param>
internal sealed record FlushFluid(string Name, Temperature At, KinematicViscosity Viscosity, ViscosityCurve? Curve, Density? Density)
{
    public static FlushFluid Of(Family family, Circuit circuit, string? temperature, string? viscosity)
    {
        Fluid? own = family.Fluids.FirstOrDefault(fluid => fluid.Id == circuit.Fluid);
        Temperature? at = temperature is null ? null : Typed.Temperature("--temperature", temperature);
        if (viscosity is null)
        {
            if (own is null)
                throw new WrongUseException($"{family.Id} does not say which fluid runs in {circuit.Name}. Say its viscosity: --viscosity 15cSt.");
            if (own.Viscosity.Length < 2)
                throw new WrongUseException($"{family.Id} does not say the viscosity of {own.Id} at two temperatures. Say it: --viscosity 40C:105cSt,100C:14.2cSt.");
            return OnCurve(own.Id.Replace('-', ' '), Typed.Take(ViscosityCurve.Of(own)), at, own.Density);
        }

        // The density of the circuit's own fluid stands in: flushing fluids are within a few percent of it, and only the pressure loss hangs on it.
        return viscosity.Contains(':', StringComparison.Ordinal)
            ? OnCurve("a fluid as given", Typed.Take(ViscosityCurve.Of(TwoPoints(viscosity))), at, own?.Density)
            : new FlushFluid("a fluid as given", at ?? Temperature.FromCelsius(40), Positive(Typed.Viscosity("--viscosity", viscosity)), null, own?.Density);
    }

    private static FlushFluid OnCurve(string name, ViscosityCurve curve, Temperature? at, Density? density)
    {
        Temperature warm = at ?? UsualFlush.TemperatureFor(curve);
        return new FlushFluid(name, warm, Typed.Take(curve.At(warm)), curve, density);
    }

    private static Fluid TwoPoints(string text)
    {
        (Temperature At, KinematicViscosity Viscosity)[] points = [.. text.Split(',', StringSplitOptions.TrimEntries).Select(Point)];
        if (points.Length < 2)
            throw new WrongUseException($"--viscosity {Wording.Quoted(text)} has one point. Write two, for instance 40C:32cSt,100C:5.4cSt.");
        return new Fluid("the fluid given", new SourceSpan("", 0, 0)) { Viscosity = [.. points] };
    }

    private static (Temperature At, KinematicViscosity Viscosity) Point(string text)
    {
        string[] sides = text.Split(':');
        return sides.Length == 2
            ? (Typed.Temperature("--viscosity", sides[0]), Typed.Viscosity("--viscosity", sides[1]))
            : throw new WrongUseException($"--viscosity: a temperature and a viscosity were expected, for instance 40C:32cSt, got {Wording.Quoted(text)}.");
    }

    private static KinematicViscosity Positive(KinematicViscosity viscosity) =>
        viscosity.SquareMetresPerSecond > 0 ? viscosity : throw new WrongUseException("--viscosity: more than 0 cSt was expected.");
}
