namespace Contam.Measurement.Cleanliness;

/// <summary>
/// One of the three numbers of a cleanliness code. Where fewer than 20 particles were counted, chance alone could have made the count
/// too low, and the number is written with ≥. The default value is 0 without ≥. Equal when all its members are.
/// </summary>
public readonly record struct CleanlinessNumber
{
    internal CleanlinessNumber(int number, int upTo, bool fewCounted)
    {
        Number = number;
        UpTo = upTo;
        FewCounted = fewCounted;
    }

    /// <summary>The scale number of the count: 0 to 28, or <see cref="CleanlinessScale.AboveTable"/>.</summary>
    public int Number { get; }

    /// <summary>
    /// The number that could still be true: that of the most particles which would show as few as were counted once in twenty times.
    /// The same as <see cref="Number"/> where enough were counted, or where it is not known how many.
    /// </summary>
    public int UpTo { get; }

    /// <summary>Whether fewer than 20 particles were counted.</summary>
    public bool FewCounted { get; }

    /// <summary><c>17</c>, <c>≥7</c> or <c>&gt;28</c>.</summary>
    public override string ToString() => (FewCounted ? "≥" : "") + CleanlinessScale.Show(Number);
}
