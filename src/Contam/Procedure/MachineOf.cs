using Contam.Families;

namespace Contam.Procedure;

/// <summary>What a family is, as the texts of a standard name it.</summary>
internal static class MachineOf
{
    public const string Engine = "engine";

    /// <summary>engine, gearcase, gearbox or hydraulic-unit: by the kinds of its parts, as the family does not say.</summary>
    public static string Name(Family family)
    {
        bool Has(params ReadOnlySpan<string> kinds)
        {
            foreach (Part part in family.Parts)
            {
                foreach (string kind in kinds)
                {
                    if (part.Kind.Name == kind)
                        return true;
                }
            }

            return false;
        }

        return Has("cylinder-head", "crankshaft", "crankcase") ? Engine
            : Has("actuator", "hydraulic-motor") ? "hydraulic-unit"
            : Has("clutch", "gearbox") ? "gearbox"
            : Has("gear") ? "gearcase"
            : Engine;
    }
}
