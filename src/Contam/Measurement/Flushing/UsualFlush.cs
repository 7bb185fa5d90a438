using Contam.Families.Quantities;

namespace Contam.Measurement.Flushing;

/// <summary>
/// How warm a flush is reckoned where nobody says: 40 °C for a thin fluid, 60 °C for one that is thicker than 20 cSt at 40 °C, because
/// cold oil cannot be pumped fast enough to scour. Common practice, no source: oil flushes are run at 60 to 70 °C (from memory).
/// </summary>
internal static class UsualFlush
{
    private const double ThinUpToCentistokes = 20;

    private static readonly Temperature Thin = Temperature.FromCelsius(40);
    private static readonly Temperature Thick = Temperature.FromCelsius(60);

    internal static Temperature TemperatureFor(ViscosityCurve curve) =>
        curve.At(Thin).TryGet(out KinematicViscosity at40, out _) && at40.Centistokes <= ThinUpToCentistokes ? Thin : Thick;
}
