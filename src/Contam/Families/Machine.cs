namespace Contam.Families;

/// <summary>What sort of machine a family describes. It decides how the plan begins and how it proves the work.</summary>
public enum Machine
{
    /// <summary>An engine.</summary>
    Engine,

    /// <summary>The lower unit of an outboard or a drive: gears in a bath, turned by an engine that is not described.</summary>
    Gearcase,

    /// <summary>A gearbox or reverse gear.</summary>
    Gearbox,

    /// <summary>A hydraulic unit: pump, valves and what they move.</summary>
    HydraulicUnit,
}
