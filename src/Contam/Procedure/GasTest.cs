using Contam.Families;

namespace Contam.Procedure;

/// <summary>Whether a part may be tried with gas: gas under pressure bursts what liquid only wets.</summary>
internal static class GasTest
{
    // Common practice, no source.
    private const double UsualMostBar = 0.7;

    /// <summary>Whether a hold of this part is at a pressure above what the standard lets gas have, or at one that is not said.</summary>
    public static bool IsTooHigh(ProcedureRequest request, Part part)
    {
        double most = request.Standard.GasTestAtMost?.Bar ?? UsualMostBar;
        return request.Family.Limits.Any(limit => limit.Part == part.Id && limit.Measures == Measure.PressureDrop && (limit.At is not { } at || at.Bar > most));
    }
}
