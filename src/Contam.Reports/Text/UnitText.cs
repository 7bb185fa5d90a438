using System.Globalization;

namespace Contam.Reports.Text;

/// <summary>Figures with their unit, for people. An inch is 25.4 mm and a US gallon 3.785411784 L, both exact.</summary>
internal static class UnitText
{
    private const double MicrometresPerThou = 25.4;
    private const double LitresPerGallon = 3.785411784;

    /// <summary>A particle size.</summary>
    public static string Size(double micrometres, TextLook look) => look.IsImperial
        ? string.Create(CultureInfo.InvariantCulture, $"{micrometres / MicrometresPerThou:0.##} thou")
        : string.Create(CultureInfo.InvariantCulture, $"{micrometres:0.##} µm");

    /// <summary>A volume.</summary>
    public static string Volume(double litres, TextLook look) => look.IsImperial
        ? string.Create(CultureInfo.InvariantCulture, $"{litres / LitresPerGallon:0.##} US gal")
        : string.Create(CultureInfo.InvariantCulture, $"{litres:0.##} L");
}
