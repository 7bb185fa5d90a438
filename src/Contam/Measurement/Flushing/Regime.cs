using System.Text.Json.Serialization;

namespace Contam.Measurement.Flushing;

/// <summary>How a fluid runs in a bore. Ordered by rising Reynolds number.</summary>
public enum Regime
{
    /// <summary>Below 2300: in layers; the layer at the wall hardly moves, and debris stays there.</summary>
    [JsonStringEnumMemberName("laminar")]
    Laminar,

    /// <summary>From 2300 to below 4000: one or the other, by turns. Not to be relied on for a flush.</summary>
    [JsonStringEnumMemberName("transitional")]
    Transitional,

    /// <summary>From 4000 on: mixed through, and so it scours.</summary>
    [JsonStringEnumMemberName("turbulent")]
    Turbulent,
}
