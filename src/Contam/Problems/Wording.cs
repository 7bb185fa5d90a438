using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Contam.Families;

namespace Contam.Problems;

/// <summary>How pieces of a message are written: what a person wrote, lists, numbers, places.</summary>
internal static class Wording
{
    private const int LongestQuote = 40;

    /// <summary>
    /// What a person wrote, between back-quotes: on one line, cut after 40 characters, what cannot be seen written as its code; <c>nothing</c> for
    /// an empty text.
    /// </summary>
    public static string Quoted(string written)
    {
        if (written.Length == 0)
            return "nothing";
        var quoted = new StringBuilder("`");
        int taken = 0;
        foreach (Rune rune in written.EnumerateRunes())
        {
            if (taken++ == LongestQuote)
            {
                quoted.Append('…');
                break;
            }

            if (IsSeen(rune))
                quoted.Append(rune.ToString());
            else
                quoted.Append(CultureInfo.InvariantCulture, $"\\u{rune.Value:x4}");
        }

        return quoted.Append('`').ToString();
    }

    /// <summary><c>a, b or c</c>.</summary>
    public static string OneOf(IEnumerable<string> words) => Listed(words, "or");

    /// <summary><c>a, b and c</c>.</summary>
    public static string AllOf(IEnumerable<string> words) => Listed(words, "and");

    /// <summary><c>did you mean `name`?</c>, or <paramref name="otherwise"/> where nothing is near.</summary>
    public static string DidYouMean(string? near, string otherwise) => near is null ? otherwise : $"did you mean {Quoted(near)}?";

    /// <summary>A whole number with nothing between the digits.</summary>
    public static string Number(long number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>A number in its shortest form.</summary>
    public static string Number(double number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>An error.</summary>
    public static Problem Error(string code, SourceSpan? place, string text, string mend, params ImmutableArray<SourceSpan> related) =>
        new(code, Severity.Error, place, text, mend) { Related = related };

    private static string Listed(IEnumerable<string> words, string last)
    {
        string[] all = [.. words];
        return all.Length switch
        {
            0 => "",
            1 => all[0],
            _ => string.Join(", ", all[..^1]) + $" {last} " + all[^1],
        };
    }

    private static bool IsSeen(Rune rune) => Rune.GetUnicodeCategory(rune) is not
        (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse
        or UnicodeCategory.OtherNotAssigned or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);
}
