using System.Globalization;
using System.Text;
using Wcwidth;

namespace Contam.Reports.Text;

/// <summary>
/// How many columns text takes in a terminal. Counted by what a person sees as one character (a letter with its marks, a flag, a joined emoji;
/// Unicode Standard Annex 29), each no, one or two columns wide (Annex 11).
/// </summary>
public static class DisplayWidth
{
    private const int EmojiPresentation = 0xFE0F;

    /// <summary>The columns that this text takes.</summary>
    public static int Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        // Nearly every text; each sign is one column, and no table is needed.
        if (Ascii.IsValid(text))
            return text.Length;
        return Characters(text).Sum(OfCharacter);
    }

    /// <summary>The columns that this text takes.</summary>
    public static int Of(ReadOnlySpan<char> text) => Ascii.IsValid(text) ? text.Length : Of(text.ToString());

    /// <summary>The text with spaces after it, up to this many columns.</summary>
    public static string Pad(string text, int columns) => Of(text) is var used && used >= columns ? text : text + new string(' ', columns - used);

    /// <summary>The text in what a person sees as one character each; no break within one shows it as it was meant.</summary>
    internal static IEnumerable<string> Characters(string text)
    {
        TextElementEnumerator characters = StringInfo.GetTextElementEnumerator(text);
        while (characters.MoveNext())
            yield return characters.GetTextElement();
    }

    // However many code points are joined, a terminal gives them two columns at most.
    private static int OfCharacter(string character)
    {
        int columns = 0;
        foreach (Rune rune in character.EnumerateRunes())
            columns += rune.Value == EmojiPresentation ? 2 : Math.Max(0, UnicodeCalculator.GetWidth(rune));
        return Math.Min(columns, 2);
    }
}
