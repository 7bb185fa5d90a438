using System.Collections.Immutable;

namespace Contam.Families.Quantities;

/// <summary>
/// Every unit that files and commands may name.
/// Factors are exact by definition (NIST SP 811, appendix B): inch 25.4 mm, US gallon 231 cubic inches, pound-force 4.4482216152605 N
/// (so psi is that over a square inch, here to 16 digits), the conventional millimetre of mercury 13.5951 × 9.80665 Pa.
/// </summary>
internal static class UnitTable
{
    private const decimal UsGallon = 0.003785411784m;
    private const decimal Psi = 6894.757293168361m;
    private const decimal MillimetreOfMercury = 133.322387415m;

    /// <summary>All units, by dimension; within one in the order in which people are told of them.</summary>
    public static ImmutableArray<Unit> All { get; } =
    [
        Offered("um", Dimension.Length, 0.000001m),
        Offered("mm", Dimension.Length, 0.001m),
        Offered("m", Dimension.Length, 1),
        Offered("thou", Dimension.Length, 0.0000254m),
        Offered("in", Dimension.Length, 0.0254m),
        new("\u00B5m", Dimension.Length, 0.000001m),
        new("\u03BCm", Dimension.Length, 0.000001m),
        new("micron", Dimension.Length, 0.000001m),
        new("microns", Dimension.Length, 0.000001m),
        new("cm", Dimension.Length, 0.01m),
        new("mil", Dimension.Length, 0.0000254m),
        new("ft", Dimension.Length, 0.3048m),

        Offered("L", Dimension.Volume, 0.001m),
        Offered("mL", Dimension.Volume, 0.000001m),
        Offered("m3", Dimension.Volume, 1),
        Offered("gal(US)", Dimension.Volume, UsGallon),
        Offered("qt(US)", Dimension.Volume, UsGallon, 4),
        new("cL", Dimension.Volume, 0.00001m),
        new("dm3", Dimension.Volume, 0.001m),
        new("dm³", Dimension.Volume, 0.001m),
        new("m³", Dimension.Volume, 1),
        new("cc", Dimension.Volume, 0.000001m),
        new("cm3", Dimension.Volume, 0.000001m),
        new("cm³", Dimension.Volume, 0.000001m),

        Offered("s", Dimension.Duration, 1),
        Offered("min", Dimension.Duration, 60),
        Offered("h", Dimension.Duration, 3600),
        Offered("d", Dimension.Duration, 86400),

        Offered("bar", Dimension.Pressure, 100000),
        Offered("mbar", Dimension.Pressure, 100),
        Offered("kPa", Dimension.Pressure, 1000),
        Offered("psi", Dimension.Pressure, Psi),
        Offered("inHg", Dimension.Pressure, MillimetreOfMercury * 25.4m),
        new("Pa", Dimension.Pressure, 1),
        new("MPa", Dimension.Pressure, 1000000),
        new("psid", Dimension.Pressure, Psi),
        new("mmHg", Dimension.Pressure, MillimetreOfMercury),

        Offered("cSt", Dimension.KinematicViscosity, 0.000001m),
        Offered("mm2/s", Dimension.KinematicViscosity, 0.000001m),
        new("mm²/s", Dimension.KinematicViscosity, 0.000001m),
        new("m2/s", Dimension.KinematicViscosity, 1),
        new("m²/s", Dimension.KinematicViscosity, 1),

        Offered("kg/m3", Dimension.Density, 1),
        Offered("g/cm3", Dimension.Density, 1000),
        Offered("kg/L", Dimension.Density, 1000),
        new("kg/m³", Dimension.Density, 1),
        new("g/cm³", Dimension.Density, 1000),

        Offered("C", Dimension.Temperature, 1, offset: 273.15m),
        Offered("F", Dimension.Temperature, 5, 9, 459.67m),
        Offered("K", Dimension.Temperature, 1),
        new("°C", Dimension.Temperature, 1, Offset: 273.15m),
        new("degC", Dimension.Temperature, 1, Offset: 273.15m),
        new("°F", Dimension.Temperature, 5, 9, 459.67m),
        new("degF", Dimension.Temperature, 5, 9, 459.67m),

        Offered("L/min", Dimension.FlowRate, 0.001m, 60),
        Offered("L/h", Dimension.FlowRate, 0.001m, 3600),
        Offered("m3/h", Dimension.FlowRate, 1, 3600),
        Offered("gpm(US)", Dimension.FlowRate, UsGallon, 60),
        new("m3/s", Dimension.FlowRate, 1),
        new("m³/h", Dimension.FlowRate, 1, 3600),
        new("m³/s", Dimension.FlowRate, 1),

        Offered("ppm", Dimension.Share, 0.000001m),
        Offered("%", Dimension.Share, 0.01m),
    ];

    private static readonly Dictionary<string, Unit> UnitOf = All.ToDictionary(unit => unit.Symbol, StringComparer.Ordinal);

    /// <summary>The unit written like this, or <c>null</c>.</summary>
    public static Unit? Find(string symbol) => UnitOf.GetValueOrDefault(symbol);

    /// <summary>The units of a dimension, in the order in which people are told of them.</summary>
    public static IEnumerable<Unit> Of(Dimension dimension) => All.Where(unit => unit.Dimension == dimension);

    private static Unit Offered(string symbol, Dimension dimension, decimal factor, decimal divisor = 1, decimal offset = 0) =>
        new(symbol, dimension, factor, divisor, offset) { IsOffered = true };
}
