using System.Globalization;
using Contam.Families.Quantities;

namespace Contam.Measurement;

/// <summary>
/// The unit in which readings were given, so that figures come back in it. Equal when both members are.
/// </summary>
/// <param name="Symbol">As it is shown.</param>
/// <param name="PerSi">How many of it make one of the SI unit.</param>
public sealed record ReadingUnit(string Symbol, double PerSi)
{
    /// <summary>Percent.</summary>
    public static ReadingUnit Percent { get; } = new("%", 100);

    /// <summary>A figure for people: the number of this unit, four figures, and its name.</summary>
    public string Show(double si) => $"{Expect.Show(double.Parse((si * PerSi).ToString("E3", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture))} {Symbol}";

    /// <summary>The number of this unit, without the dust that conversion leaves: twelve figures.</summary>
    public double Of(double si) => Dusted(si * PerSi);

    /// <summary>The unit written like this where it measures this dimension, else <c>null</c>. Not for temperatures, which have no factor alone.</summary>
    internal static ReadingUnit? Find(string symbol, Dimension dimension) =>
        UnitTable.Find(symbol) is { } unit && unit.Dimension == dimension ? new ReadingUnit(symbol, (double)(unit.Divisor / unit.Factor)) : null;

    /// <summary>A number without the dust that conversion leaves: twelve figures.</summary>
    internal static double Dusted(double value) =>
        double.Parse(value.ToString("G12", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
}
