using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Quantities;

namespace Contam.Measurement.Flushing;

/// <summary>
/// How a fluid thins with heat, from all the points that its family file gives: a <see cref="ViscosityLine"/> between each two
/// neighbours, the outer lines carried on. With two points it is that one line. Falls with every degree.
/// </summary>
public sealed class ViscosityCurve
{
    private readonly ImmutableArray<(Temperature At, KinematicViscosity Viscosity)> points;
    private readonly ImmutableArray<ViscosityLine> lines;

    private ViscosityCurve(ImmutableArray<(Temperature At, KinematicViscosity Viscosity)> points, ImmutableArray<ViscosityLine> lines)
    {
        this.points = points;
        this.lines = lines;
    }

    /// <summary>The curve of a fluid.</summary>
    /// <returns>The curve; a fault where the file gives fewer than two points, or two neighbours make no line.</returns>
    public static Sum<ViscosityCurve> Of(Fluid fluid)
    {
        ArgumentNullException.ThrowIfNull(fluid);
        if (fluid.Viscosity.Length < 2)
            return new Fault($"{fluid.Id} has its viscosity at {Expect.Count(fluid.Viscosity.Length, "temperature", "temperatures")}; at least 2 were expected");
        ImmutableArray<(Temperature At, KinematicViscosity Viscosity)> rising = [.. fluid.Viscosity.OrderBy(point => point.At.Kelvin)];
        var lines = ImmutableArray.CreateBuilder<ViscosityLine>(rising.Length - 1);
        for (int i = 1; i < rising.Length; i++)
        {
            if (!ViscosityLine.Through(rising[i - 1].At, rising[i - 1].Viscosity, rising[i].At, rising[i].Viscosity).TryGet(out ViscosityLine? line, out Fault? fault))
                return new Fault($"{fluid.Id}: {fault.Text}");
            lines.Add(line);
        }

        return new ViscosityCurve(rising, lines.MoveToImmutable());
    }

    /// <summary>The viscosity at a temperature; a fault beyond the range of <see cref="ViscosityLine"/>.</summary>
    public Sum<KinematicViscosity> At(Temperature temperature)
    {
        int line = 0;
        while (line < lines.Length - 1 && temperature > points[line + 1].At)
            line++;
        return lines[line].At(temperature);
    }

    /// <summary>The temperature at which the fluid is this thin; a fault beyond the range of <see cref="ViscosityLine"/>.</summary>
    public Sum<Temperature> For(KinematicViscosity viscosity)
    {
        int line = 0;
        while (line < lines.Length - 1 && viscosity < points[line + 1].Viscosity)
            line++;
        return lines[line].For(viscosity);
    }

    /// <summary>Whether this temperature lies within the points given, ends included. Beyond them the answer is carried on and less sure.</summary>
    public bool Spans(Temperature temperature) => temperature >= points[0].At && temperature <= points[^1].At;
}
