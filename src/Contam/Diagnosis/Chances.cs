using Contam.Families;

namespace Contam.Diagnosis;

/// <summary>
/// The figures by which findings are weighed. They are common practice put into numbers, no source: what counts is their order and that none of them is 0
/// or, for finding debris, 1, so that no single finding can rule a part out for good.
/// </summary>
internal static class Chances
{
    /// <summary>The chance of finding debris where none of the suspect's arrives: it came there by other means.</summary>
    public const double Stray = 0.01;

    /// <summary>What each contradiction in looks (form, magnetism) leaves of the chance of a find.</summary>
    public const double Otherwise = 0.1;

    /// <summary>How much a part is suspected before anything was seen, beside others.</summary>
    public static double Prior(Likelihood likely) => likely switch
    {
        Likelihood.Common => 9,
        Likelihood.Occasional => 3,
        _ => 1,
    };

    /// <summary>The chance that a look shows debris that is there. Where the family names no look, the poorest is taken.</summary>
    public static double ToShow(Inspection? look) => look?.Shows switch
    {
        Shows.Good => 0.9,
        Shows.Fair => 0.6,
        _ => 0.3,
    };

    /// <summary>The chance of a find that would show with this chance, but looks otherwise in so many respects. Never under that of a stray piece, which looks like anything.</summary>
    public static double ToShow(double chance, int contradictions)
    {
        for (int i = 0; i < contradictions; i++)
            chance *= Otherwise;
        return Math.Max(chance, Stray);
    }

    /// <summary>In how many respects what was found looks otherwise than what is shed; what either side does not say contradicts nothing.</summary>
    public static int Contradictions(Finding found, Shed shed) =>
        (found.Form is { } form && shed.Form is { } sheds && form != sheds ? 1 : 0)
        + (found.Magnetic is { } magnetic && shed.Magnetic is { } isMagnetic && magnetic != isMagnetic ? 1 : 0);
}
