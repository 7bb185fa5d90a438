using Contam.Families;

namespace Contam.Diagnosis;

/// <summary>A place to look at next.</summary>
/// <param name="Part">The part.</param>
/// <param name="Minutes">Minutes of a technician's time for the look alone; what must be off first is not counted.</param>
/// <param name="Bits">By how many bits the entropy over the suspects is expected to drop.</param>
/// <param name="ChanceFound">How likely debris is found there, as far as is known now.</param>
public sealed record NextLook(PartId Part, double Minutes, double Bits, double ChanceFound)
{
    /// <summary>Bits for each minute; <c>null</c> for a look that takes no time.</summary>
    public double? BitsPerMinute => Minutes > 0 ? Bits / Minutes : null;
}
