using System.Globalization;
using Contam.Families.Quantities;

namespace Contam.Measurement.Wording;

/// <summary>Angles as hours on a clock face.</summary>
internal static class ClockText
{
    /// <summary><c>about half past 4</c>: to the half hour, which is 15°.</summary>
    internal static string Of(Angle angle)
    {
        int halves = (int)Math.Round(angle.WithinTurn().Degrees / 15) % 24;
        int hour = halves / 2 == 0 ? 12 : halves / 2;
        return halves % 2 == 0
            ? string.Create(CultureInfo.InvariantCulture, $"about {hour} o'clock")
            : string.Create(CultureInfo.InvariantCulture, $"about half past {hour}");
    }
}
