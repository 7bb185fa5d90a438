using Contam.Families.Quantities;
using U = UnitsNet;

namespace Contam.References.Families.Quantities;

/// <summary>Every unit that files and commands may name, against UnitsNet 5.75.1.</summary>
public sealed class Units_of_another_library
{
    // So many of the unit, and what that is in SI by the other library.
    private static readonly Dictionary<string, Func<double, double>> SiOf = new(StringComparer.Ordinal)
    {
        ["um"] = n => U.Length.FromMicrometers(n).Meters,
        ["\u00B5m"] = n => U.Length.FromMicrometers(n).Meters,
        ["\u03BCm"] = n => U.Length.FromMicrometers(n).Meters,
        ["micron"] = n => U.Length.FromMicrometers(n).Meters,
        ["microns"] = n => U.Length.FromMicrometers(n).Meters,
        ["mm"] = n => U.Length.FromMillimeters(n).Meters,
        ["cm"] = n => U.Length.FromCentimeters(n).Meters,
        ["m"] = n => U.Length.FromMeters(n).Meters,
        ["thou"] = n => U.Length.FromMils(n).Meters,
        ["mil"] = n => U.Length.FromMils(n).Meters,
        ["in"] = n => U.Length.FromInches(n).Meters,
        ["ft"] = n => U.Length.FromFeet(n).Meters,
        ["L"] = n => U.Volume.FromLiters(n).CubicMeters,
        ["mL"] = n => U.Volume.FromMilliliters(n).CubicMeters,
        ["cL"] = n => U.Volume.FromCentiliters(n).CubicMeters,
        ["m3"] = n => U.Volume.FromCubicMeters(n).CubicMeters,
        ["m³"] = n => U.Volume.FromCubicMeters(n).CubicMeters,
        ["dm3"] = n => U.Volume.FromCubicDecimeters(n).CubicMeters,
        ["dm³"] = n => U.Volume.FromCubicDecimeters(n).CubicMeters,
        ["cc"] = n => U.Volume.FromCubicCentimeters(n).CubicMeters,
        ["cm3"] = n => U.Volume.FromCubicCentimeters(n).CubicMeters,
        ["cm³"] = n => U.Volume.FromCubicCentimeters(n).CubicMeters,
        ["gal(US)"] = n => U.Volume.FromUsGallons(n).CubicMeters,
        ["qt(US)"] = n => U.Volume.FromUsQuarts(n).CubicMeters,
        ["s"] = n => U.Duration.FromSeconds(n).Seconds,
        ["min"] = n => U.Duration.FromMinutes(n).Seconds,
        ["h"] = n => U.Duration.FromHours(n).Seconds,
        ["d"] = n => U.Duration.FromDays(n).Seconds,
        ["bar"] = n => U.Pressure.FromBars(n).Pascals,
        ["mbar"] = n => U.Pressure.FromMillibars(n).Pascals,
        ["Pa"] = n => U.Pressure.FromPascals(n).Pascals,
        ["kPa"] = n => U.Pressure.FromKilopascals(n).Pascals,
        ["MPa"] = n => U.Pressure.FromMegapascals(n).Pascals,
        ["psi"] = n => U.Pressure.FromPoundsForcePerSquareInch(n).Pascals,
        ["psid"] = n => U.Pressure.FromPoundsForcePerSquareInch(n).Pascals,
        ["inHg"] = n => U.Pressure.FromInchesOfMercury(n).Pascals,
        ["mmHg"] = n => U.Pressure.FromMillimetersOfMercury(n).Pascals,
        ["cSt"] = n => U.KinematicViscosity.FromCentistokes(n).SquareMetersPerSecond,
        ["mm2/s"] = n => U.KinematicViscosity.FromCentistokes(n).SquareMetersPerSecond,
        ["mm²/s"] = n => U.KinematicViscosity.FromCentistokes(n).SquareMetersPerSecond,
        ["m2/s"] = n => U.KinematicViscosity.FromSquareMetersPerSecond(n).SquareMetersPerSecond,
        ["m²/s"] = n => U.KinematicViscosity.FromSquareMetersPerSecond(n).SquareMetersPerSecond,
        ["kg/m3"] = n => U.Density.FromKilogramsPerCubicMeter(n).KilogramsPerCubicMeter,
        ["kg/m³"] = n => U.Density.FromKilogramsPerCubicMeter(n).KilogramsPerCubicMeter,
        ["kg/L"] = n => U.Density.FromKilogramsPerLiter(n).KilogramsPerCubicMeter,
        ["g/cm3"] = n => U.Density.FromGramsPerCubicCentimeter(n).KilogramsPerCubicMeter,
        ["g/cm³"] = n => U.Density.FromGramsPerCubicCentimeter(n).KilogramsPerCubicMeter,
        ["C"] = n => U.Temperature.FromDegreesCelsius(n).Kelvins,
        ["°C"] = n => U.Temperature.FromDegreesCelsius(n).Kelvins,
        ["degC"] = n => U.Temperature.FromDegreesCelsius(n).Kelvins,
        ["F"] = n => U.Temperature.FromDegreesFahrenheit(n).Kelvins,
        ["°F"] = n => U.Temperature.FromDegreesFahrenheit(n).Kelvins,
        ["degF"] = n => U.Temperature.FromDegreesFahrenheit(n).Kelvins,
        ["K"] = n => U.Temperature.FromKelvins(n).Kelvins,
        ["L/min"] = n => U.VolumeFlow.FromLitersPerMinute(n).CubicMetersPerSecond,
        ["L/h"] = n => U.VolumeFlow.FromLitersPerHour(n).CubicMetersPerSecond,
        ["m3/h"] = n => U.VolumeFlow.FromCubicMetersPerHour(n).CubicMetersPerSecond,
        ["m³/h"] = n => U.VolumeFlow.FromCubicMetersPerHour(n).CubicMetersPerSecond,
        ["m3/s"] = n => U.VolumeFlow.FromCubicMetersPerSecond(n).CubicMetersPerSecond,
        ["m³/s"] = n => U.VolumeFlow.FromCubicMetersPerSecond(n).CubicMetersPerSecond,
        ["gpm(US)"] = n => U.VolumeFlow.FromUsGallonsPerMinute(n).CubicMetersPerSecond,
        ["ppm"] = n => U.Ratio.FromPartsPerMillion(n).DecimalFractions,
        ["%"] = n => U.Ratio.FromPercent(n).DecimalFractions,
    };

    // The other library has its millimetre of mercury to eight digits (it comes out as 133.32239 Pa), 2 parts in 10⁸ off the conventional
    // one; all else agrees to the last digits.
    private const double Apart = 2.5e-8;

    [Fact]
    public void Are_all_there() =>
        Assert.Equal(UnitTable.All.Select(unit => unit.Symbol).Order(StringComparer.Ordinal), SiOf.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void Come_to_the_same()
    {
        foreach (Unit unit in UnitTable.All)
        {
            foreach (string number in (ReadOnlySpan<string>)["1", "37.5"])
            {
                Assert.True(Quantity.TryParse($"{number} {unit.Symbol}", unit.Dimension, out double si, out QuantityError? _), unit.Symbol);
                double theirs = SiOf[unit.Symbol](double.Parse(number, System.Globalization.CultureInfo.InvariantCulture));
                Assert.True(Math.Abs(si - theirs) <= Apart * Math.Abs(theirs), FormattableString.Invariant($"{number} {unit.Symbol}: {si} and {theirs}"));
            }
        }
    }
}
