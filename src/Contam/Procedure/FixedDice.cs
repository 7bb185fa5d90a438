namespace Contam.Procedure;

/// <summary>
/// Numbers that look random and are always the same (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014, the SplitMix64 step),
/// so that a search that uses them gives the same answer every time, on any machine.
/// </summary>
internal sealed class FixedDice(ulong seed)
{
    private ulong state = seed;

    /// <summary>The next number from 0, inclusive, to 1, exclusive.</summary>
    public double Next()
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15UL;
            ulong mixed = state;
            mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9UL;
            mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBUL;
            mixed ^= mixed >> 31;
            return (mixed >> 11) * (1.0 / (1UL << 53));
        }
    }
}
