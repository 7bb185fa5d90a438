using System.Globalization;
using System.Text;
using Contam.Reports.Text;

namespace Contam.Reports.Drawing;

/// <summary>
/// How wide a text is, without any font: from a table of widths of a common sans serif, with room to spare, since the reader's machine may have
/// a wider one. The figures are rounded from memory.
/// </summary>
internal static class LabelText
{
    private const string Narrow = "iljI.,:;'|!()[]ft -/r";
    private const string Wide = "mwMW%@—–≤";
    private const double Spare = 1.12;

    /// <summary>The width of a text at this size of letters.</summary>
    public static double WidthOf(string text, double size) => text.EnumerateRunes().Sum(EmOf) * size * Spare;

    /// <summary>A text in at most so many lines no wider than asked, broken between words where it can be; what does not fit ends in an ellipsis.</summary>
    public static List<string> Fit(string text, double width, double size, int lines)
    {
        var fitted = new List<string>();
        string rest = string.Join(' ', TextPage.Harmless(text).Split(' ', StringSplitOptions.RemoveEmptyEntries));
        while (rest.Length > 0 && fitted.Count < lines)
        {
            int end = LongestFit(rest, width, size);
            if (end >= rest.Length)
            {
                fitted.Add(rest);
                return fitted;
            }

            if (fitted.Count == lines - 1)
            {
                fitted.Add(rest[..LongestFit(rest, width - WidthOf("…", size), size)].TrimEnd() + "…");
                return fitted;
            }

            int space = rest.LastIndexOf(' ', end);
            int cut = space > 0 ? space : end;
            fitted.Add(rest[..cut].TrimEnd());
            rest = rest[cut..].TrimStart();
        }

        return fitted;
    }

    // Breaks stand between the characters that a person sees, never within one. At least one stands in a line.
    private static int LongestFit(string text, double width, double size)
    {
        int end = 0;
        double used = 0;
        foreach (string character in DisplayWidth.Characters(text))
        {
            used += WidthOf(character, size);
            if (used > width && end > 0)
                return end;
            end += character.Length;
        }

        return end;
    }

    private static double EmOf(Rune rune) => rune.Value switch
    {
        _ when Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format => 0,
        < 128 when Narrow.Contains((char)rune.Value, StringComparison.Ordinal) => 0.32,
        <= 0xFFFF when Wide.Contains((char)rune.Value, StringComparison.Ordinal) => 0.86,
        >= 'A' and <= 'Z' => 0.7,
        // Scripts whose letters are as wide as they are high, and pictures, begin here.
        >= 0x1100 => 1.05,
        >= 0x0590 => 0.8,
        _ => 0.56,
    };
}
