using System.Collections.Immutable;

namespace Contam.Proof;

/// <summary>One way in which the looks of a plan come out, as bits.</summary>
/// <param name="Clean">Made, and every place clean.</param>
/// <param name="Found">Made, and debris found.</param>
/// <param name="Settled">Not made, and counted as found all the same.</param>
/// <param name="Void">Those of <paramref name="Clean"/> that the finds speak against: counted as found, and clearing nothing.</param>
internal readonly record struct PlayedHistory(int Clean, int Found, int Settled, int Void)
{
    /// <summary>What counts as found in every condition.</summary>
    internal int CountsAsFound => Found | Settled | (Clean & Void);

    /// <summary>What was clean and stays so.</summary>
    internal int Clears => Clean & ~Void;

    /// <summary>What is looked at.</summary>
    internal int Made => Clean | Found;

    /// <summary>The outcomes in words: <c>A clean, B found</c>.</summary>
    internal string Words(ImmutableArray<string> letters)
    {
        PlayedHistory history = this;
        return string.Join(", ", letters.Select((letter, look) => $"{letter} {history.Word(1 << look)}"));
    }

    private string Word(int look) =>
        (Found & look) != 0 ? "found"
        : (Settled & look) != 0 ? "settled"
        : (Clean & look) == 0 ? "not due"
        : (Void & look) != 0 ? "void"
        : "clean";
}
