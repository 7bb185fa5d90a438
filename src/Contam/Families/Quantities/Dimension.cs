namespace Contam.Families.Quantities;

/// <summary>What a quantity measures. Each has one SI unit that values are held in.</summary>
public enum Dimension
{
    /// <summary>A length, in m.</summary>
    Length,

    /// <summary>A volume, in m³.</summary>
    Volume,

    /// <summary>A time, in s.</summary>
    Duration,

    /// <summary>A pressure, in Pa.</summary>
    Pressure,

    /// <summary>A kinematic viscosity, in m²/s.</summary>
    KinematicViscosity,

    /// <summary>A density, in kg/m³.</summary>
    Density,

    /// <summary>A temperature, in K.</summary>
    Temperature,

    /// <summary>A volume in a time, in m³/s.</summary>
    FlowRate,

    /// <summary>A share of a whole, as a fraction of 1.</summary>
    Share,
}
