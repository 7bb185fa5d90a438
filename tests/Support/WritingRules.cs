using System.Text.RegularExpressions;

namespace Contam.Support;

/// <summary>
/// The rules of writing that a test can hold. ASD-STE100, issue 8: a procedural sentence has at most 20 words (rule 5.1), a descriptive one at most 25
/// (rule 6.3); text after a colon or a semicolon counts as a sentence of its own (rule 8.4, from memory).
/// </summary>
public static partial class WritingRules
{
    /// <summary>A procedural sentence.</summary>
    public const int MostInProcedure = 20;

    /// <summary>A descriptive sentence.</summary>
    public const int MostInDescription = 25;

    /// <summary>Words that nobody at a bench says today.</summary>
    public static readonly string[] Banned =
        ["nought", "anew", "whoever", "whilst", "upon", "thereof", "thereby", "hereby", "amongst", "ought", "lest", "mend", "mended", "mends", "aught", "whence", "unto", "shall", "lets on"];

    /// <summary>The sentences of a text.</summary>
    public static string[] Sentences(string text) => [.. EndOfSentence().Split(text).Select(one => one.Trim()).Where(one => Words(one) > 0)];

    /// <summary>How many words; what is only a sign is none.</summary>
    public static int Words(string text) => (text ?? "").Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Count(word => word.Any(char.IsLetterOrDigit));

    /// <summary>The words of a list that stand in a text.</summary>
    public static IEnumerable<string> BannedIn(string text) =>
        Banned.Where(word => Regex.IsMatch(text, $@"\b{Regex.Escape(word)}\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant));

    [GeneratedRegex(@"(?<=[.!?:;])\s+")]
    private static partial Regex EndOfSentence();
}
