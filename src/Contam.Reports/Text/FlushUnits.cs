using Contam.Families.Quantities;

namespace Contam.Reports.Text;

/// <summary>Flushing figures for people, metric or imperial, to four figures. Factors: inch 25.4 mm, foot 0.3048 m, US gallon 3.785411784 L, all exact; psi 6894.757 Pa.</summary>
internal sealed class FlushUnits(TextLook look)
{
    public string BoreUnit => look.IsImperial ? "in" : "mm";

    public string FlowUnit => look.IsImperial ? "gpm" : "L/min";

    public string SpeedUnit => look.IsImperial ? "ft/s" : "m/s";

    public string LossUnit => look.IsImperial ? "psi" : "bar";

    public string Bore(Length bore) => Figure(look.IsImperial ? bore.Metres / 0.0254 : bore.Millimetres);

    public string Flow(FlowRate flow) => Figure(look.IsImperial ? flow.LitresPerMinute / 3.785411784 : flow.LitresPerMinute);

    public string FlowAndUnit(FlowRate flow) => $"{Flow(flow)} {(look.IsImperial ? "US gpm" : "L/min")}";

    public string Speed(Velocity velocity) => Figure(look.IsImperial ? velocity.MetresPerSecond / 0.3048 : velocity.MetresPerSecond);

    public string Loss(Pressure loss) => Figure(look.IsImperial ? loss.Pascals / 6894.757 : loss.Bar);

    public string Temperature(Temperature at) => look.IsImperial ? $"{Figure((at.Celsius * 1.8) + 32)} °F" : $"{Figure(at.Celsius)} °C";

    /// <summary>A whole number of degrees that is hot enough.</summary>
    public string HotEnough(Temperature at) => look.IsImperial
        ? $"{Figure(Math.Ceiling((at.Celsius * 1.8) + 32 - 1e-6))} °F"
        : $"{Figure(Math.Ceiling(at.Celsius - 1e-6))} °C";

    public string Volume(Volume volume) => UnitText.Volume(volume.Litres, look);

    public static string Viscosity(KinematicViscosity viscosity) => $"{Figure(viscosity.Centistokes)} cSt";

    /// <summary>Four figures at most, and no more than three behind the point.</summary>
    private static string Figure(double value) => value switch
    {
        > 0 and < 0.0005 => "<0.001",
        >= 1000 => GaugeText.Number(Math.Round(value)),
        _ => GaugeText.Number(Math.Round(value, 3)),
    };
}
