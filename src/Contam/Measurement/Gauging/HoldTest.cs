using Contam.Families;
using Contam.Families.Quantities;

namespace Contam.Measurement.Gauging;

/// <summary>Which way a hold is tested.</summary>
public enum HoldKind
{
    /// <summary>Blown up, and watched for a fall.</summary>
    Pressure,

    /// <summary>Drawn down, and watched for a rise.</summary>
    Vacuum,
}

/// <summary>
/// A hold: something is shut off under pressure or vacuum, and the gauge is read at the start and at the end.
/// Gauge figures, as read: above the atmosphere for pressure, below it for vacuum; both are written without a minus.
/// </summary>
/// <param name="Kind">Pressure or vacuum.</param>
/// <param name="Start">The gauge at the start, above 0.</param>
/// <param name="End">The gauge at the end, at least 0.</param>
/// <param name="Watched">How long, above 0.</param>
public sealed record HoldTest(HoldKind Kind, Pressure Start, Pressure End, TimeSpan Watched)
{
    /// <summary>One standard atmosphere.</summary>
    public static Pressure StandardAtmosphere { get; } = new(101325);

    /// <summary>What the atmosphere was at the start.</summary>
    public Pressure Atmosphere { get; init; } = StandardAtmosphere;

    /// <summary>What it was at the end; <c>null</c> for the same.</summary>
    public Pressure? AtmosphereAtEnd { get; init; }

    /// <summary>How warm the gas in it was at the start; with <see cref="EndTemperature"/> or not at all. Only for a test with air or another gas.</summary>
    public Temperature? StartTemperature { get; init; }

    /// <summary>How warm the gas in it was at the end.</summary>
    public Temperature? EndTemperature { get; init; }

    /// <summary>The volume under test, for the leak rate; <c>null</c> for not known.</summary>
    public Volume? Volume { get; init; }

    /// <summary>Whether water had got into what is tested.</summary>
    public bool WaterGotIn { get; init; }

    /// <summary>What the gauge lost, what of it is not the temperature's doing, and the leak.</summary>
    public Sum<HoldFigures> Figures() => HoldSum.Of(this);

    /// <summary>The loss against a limit of pressure-drop or vacuum-drop.</summary>
    /// <param name="limit">Its <see cref="Limit.Over"/> and <see cref="Limit.At"/> must be reached, where it has them, for anything but a reject.</param>
    /// <param name="uncertainty">Of the loss, at least 0: two gauge readings, so it may be off by both.</param>
    public Sum<HoldJudgement> Judge(Limit limit, Pressure uncertainty = default) => HoldSum.Judge(this, limit, uncertainty);
}
