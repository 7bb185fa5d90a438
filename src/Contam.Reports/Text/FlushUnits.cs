using Contam.Families.Quantities;

namespace Contam.Reports.Text;

/// <summary>Flushing figures with their unit for people, metric or imperial, to four figures. Factors: inch 25.4 mm, foot 0.3048 m, US gallon 3.785411784 L, all exact; psi 6894.757 Pa.</summary>
internal sealed class FlushUnits(TextLook look)
{
    public string Bore(Length bore) => look.IsImperial ? Show(bore.Metres / 0.0254, "in") : Show(bore.Millimetres, "mm");

    public string Flow(FlowRate flow) => look.IsImperial ? Show(flow.LitresPerMinute / 3.785411784, "gpm(US)") : Show(flow.LitresPerMinute, "L/min");

    public string Velocity(Velocity velocity) => look.IsImperial ? Show(velocity.MetresPerSecond / 0.3048, "ft/s") : Show(velocity.MetresPerSecond, "m/s");

    public string Loss(Pressure loss) => look.IsImperial ? Show(loss.Pascals / 6894.757, "psi") : Show(loss.Bar, "bar");

    public string Temperature(Temperature at) => look.IsImperial ? Show((at.Celsius * 1.8) + 32, "°F") : Show(at.Celsius, "°C");

    public string Volume(Volume volume) => UnitText.Volume(volume.Litres, look);

    public static string Viscosity(KinematicViscosity viscosity) => Show(viscosity.Centistokes, "cSt");

    /// <summary>Four figures at most.</summary>
    private static string Show(double value, string unit) =>
        Math.Abs(value) < 1e-3 && value != 0 ? $"under 0.001 {unit}" : $"{GaugeText.Number(Math.Abs(value) >= 1000 ? Math.Round(value) : Math.Round(value, 3))} {unit}";
}
