using System.Globalization;
using System.Text;

namespace Contam.Reports.Text;

/// <summary>
/// How many columns text takes in a terminal, by the classes of Unicode Standard Annex 11: wide and full-width characters two, combining marks none.
/// </summary>
public static class DisplayWidth
{
    // Ranges that Unicode Standard Annex 11 calls wide or full-width, rounded outward to blocks; from memory.
    private static readonly (int First, int Last)[] Wide =
    [
        (0x1100, 0x115F), (0x2E80, 0x303E), (0x3041, 0x33FF), (0x3400, 0x4DBF), (0x4E00, 0x9FFF), (0xA000, 0xA4CF), (0xAC00, 0xD7A3),
        (0xF900, 0xFAFF), (0xFE30, 0xFE6F), (0xFF00, 0xFF60), (0xFFE0, 0xFFE6), (0x1F300, 0x1F64F), (0x1F900, 0x1F9FF), (0x20000, 0x3FFFD),
    ];

    /// <summary>The columns that this text takes.</summary>
    public static int Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        // Nearly every text; each sign is one column.
        if (Ascii.IsValid(text))
            return text.Length;
        int columns = 0;
        foreach (Rune rune in text.EnumerateRunes())
            columns += Of(rune);
        return columns;
    }

    /// <summary>The text with spaces after it, up to this many columns.</summary>
    public static string Pad(string text, int columns) => text + new string(' ', Math.Max(0, columns - Of(text)));

    private static int Of(Rune rune)
    {
        UnicodeCategory category = Rune.GetUnicodeCategory(rune);
        if (category is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.Format)
            return 0;
        foreach ((int first, int last) in Wide)
        {
            if (rune.Value >= first && rune.Value <= last)
                return 2;
        }

        return 1;
    }
}
