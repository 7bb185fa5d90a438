using Contam.Families.Quantities;

namespace Contam.Measurement.Flushing;

/// <summary>
/// How an oil thins with heat, drawn as a straight line through two measured points.
/// Definition: log₁₀ log₁₀ Z = A − B·log₁₀ T, with T in kelvin, ν in cSt and Z = ν + 0.7 + exp(−1.47 − 1.84·ν − 0.51·ν²).
/// The last term matters below 2 cSt alone (7·10⁻⁴ at 2 cSt); it is kept above as well, so that the line has no step.
/// Range: −70 to 370 °C and 0.21 to 20 000 000 cSt, the range of the standard's charts; outside it every answer is a fault.
/// The relation is for liquid hydrocarbons between their cloud point and their first boiling; a coolant or an emulsion does not follow it.
/// Source: ASTM D341. The published inverse is an approximation that does not lead back to the points; ν is solved for instead.
/// </summary>
public sealed class ViscosityLine
{
    private const double Coldest = 203.15;
    private const double Hottest = 643.15;
    private const double Thinnest = 0.21;
    private const double Thickest = 2e7;

    private ViscosityLine(double a, double b)
    {
        A = a;
        B = b;
    }

    /// <summary>A of the definition.</summary>
    public double A { get; }

    /// <summary>B of the definition: how steeply it thins; above 0.</summary>
    public double B { get; }

    /// <summary>The line through two points, in either order.</summary>
    /// <returns>The line; a fault where a point is out of range, both are at one temperature, or the hotter one is not the thinner.</returns>
    public static Sum<ViscosityLine> Through(Temperature firstAt, KinematicViscosity first, Temperature secondAt, KinematicViscosity second)
    {
        Fault? fault = TemperatureFault(firstAt) ?? TemperatureFault(secondAt) ?? ViscosityFault(first.Centistokes) ?? ViscosityFault(second.Centistokes);
        if (fault is not null)
            return fault;
        if (firstAt == secondAt)
            return new Fault($"both viscosities are for {Expect.Show(firstAt.Celsius)} °C; two different temperatures were expected");
        bool hotterIsThinner = (firstAt < secondAt) == (first > second) && first != second;
        if (!hotterIsThinner)
        {
            return new Fault($"{Expect.Show(first.Centistokes)} cSt at {Expect.Show(firstAt.Celsius)} °C and {Expect.Show(second.Centistokes)} cSt "
                + $"at {Expect.Show(secondAt.Celsius)} °C would thicken with heat or stay as they are; thinner when hotter was expected");
        }

        double firstHeight = Height(first.Centistokes);
        double b = (firstHeight - Height(second.Centistokes)) / Math.Log10(secondAt.Kelvin / firstAt.Kelvin);
        double a = firstHeight + (b * Math.Log10(firstAt.Kelvin));
        return Expect.Computable("the viscosity line", a) is { } steep ? steep : new ViscosityLine(a, b);
    }

    /// <summary>The viscosity at a temperature; a fault where either is out of range.</summary>
    public Sum<KinematicViscosity> At(Temperature temperature)
    {
        if (TemperatureFault(temperature) is { } fault)
            return fault;
        double centistokes = Solve(Math.Pow(10, Math.Pow(10, A - (B * Math.Log10(temperature.Kelvin)))));
        // One part in 10⁹ of give, so that a point given at the very end of the range is answered for.
        if (!(centistokes >= Thinnest * (1 - 1e-9) && centistokes <= Thickest * (1 + 1e-9)))
            return ViscosityFault(centistokes)! with { Text = $"at {Expect.Show(temperature.Celsius)} °C " + ViscosityFault(centistokes)!.Text };
        return new KinematicViscosity(centistokes * 1e-6);
    }

    /// <summary>The temperature at which the oil is this thin; a fault where either is out of range.</summary>
    public Sum<Temperature> For(KinematicViscosity viscosity)
    {
        if (ViscosityFault(viscosity.Centistokes) is { } fault)
            return fault;
        double kelvin = Math.Pow(10, (A - Height(viscosity.Centistokes)) / B);
        if (!(kelvin >= Coldest * (1 - 1e-9) && kelvin <= Hottest * (1 + 1e-9)))
        {
            string given = double.IsFinite(kelvin) ? $"{Expect.Show(kelvin - 273.15)} °C" : "a temperature beyond reckoning";
            return new Fault($"{Expect.Show(viscosity.Centistokes)} cSt would take {given}; -70 to 370 °C was expected");
        }

        return new Temperature(kelvin);
    }

    private static double Height(double centistokes) => Math.Log10(Math.Log10(Z(centistokes)));

    private static double Z(double centistokes) => centistokes + 0.7 + LowTerm(centistokes);

    private static double LowTerm(double centistokes) => Math.Exp(-1.47 - (1.84 * centistokes) - (0.51 * centistokes * centistokes));

    private static double Solve(double z)
    {
        // Z rises with ν and is convex, and Z − 0.7 lies above the root: from there Newton's steps go down to it and never pass it.
        double centistokes = z - 0.7;
        for (int step = 0; step < 60 && double.IsFinite(centistokes); step++)
        {
            double slope = 1 - ((1.84 + (1.02 * centistokes)) * LowTerm(centistokes));
            double next = centistokes - ((Z(centistokes) - z) / slope);
            if (Math.Abs(next - centistokes) <= 1e-15 * Math.Abs(centistokes))
                return next;
            centistokes = next;
        }

        return centistokes;
    }

    private static Fault? TemperatureFault(Temperature temperature) =>
        Expect.Between("the temperature", temperature.Celsius, -70, 370, "°C");

    private static Fault? ViscosityFault(double centistokes) =>
        Expect.Between("the viscosity", centistokes, Thinnest, Thickest, "cSt");
}
