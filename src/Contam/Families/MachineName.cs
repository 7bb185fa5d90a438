namespace Contam.Families;

/// <summary>The sorts of machine as families and standards write them.</summary>
internal static class MachineName
{
    /// <summary>Every sort with its name.</summary>
    public static readonly (string Name, Machine Machine)[] All =
        [("engine", Machine.Engine), ("gearcase", Machine.Gearcase), ("gearbox", Machine.Gearbox), ("hydraulic-unit", Machine.HydraulicUnit)];

    /// <summary>The name of a sort.</summary>
    public static string Of(Machine machine) => All.First(one => one.Machine == machine).Name;
}
