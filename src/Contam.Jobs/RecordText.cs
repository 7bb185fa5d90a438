using System.Globalization;

namespace Contam.Jobs;

/// <summary>What is wrong with a text for the record.</summary>
public enum RecordTextFault
{
    /// <summary>There is nothing in it that can be seen.</summary>
    Empty,

    /// <summary>It is longer than <see cref="RecordText.Longest"/>.</summary>
    TooLong,

    /// <summary>It has a character that nobody sees, so that two names could look the same and be two.</summary>
    Invisible,

    /// <summary>It has half a character, which no database keeps.</summary>
    Broken,
}

/// <summary>The texts that people write into a record: something, not too long, and all of it visible.</summary>
public static class RecordText
{
    /// <summary>Most characters of a text.</summary>
    public const int Longest = 10_000;

    /// <summary>
    /// What is wrong with a text as people write it; <c>null</c> for nothing. Line breaks and tabs count as spaces. Joiners between visible characters
    /// (in joined emoji, and in scripts that need them) are visible enough.
    /// </summary>
    public static RecordTextFault? FaultOf(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > Longest)
            return RecordTextFault.TooLong;
        bool isSeen = false;
        for (int index = 0; index < text.Length; index++)
        {
            if (char.IsSurrogate(text[index]) && !char.IsSurrogatePair(text, index))
                return RecordTextFault.Broken;
            UnicodeCategory category = CharUnicodeInfo.GetUnicodeCategory(text, index);
            bool isJoiner = text[index] is '\u200C' or '\u200D' && index > 0 && index + 1 < text.Length && !IsPlainSpace(text[index - 1]) && text[index - 1] > '\u007F' && text[index + 1] > '\u007F';
            if (!isJoiner && !IsPlainSpace(text[index]) && IsInvisible(category, text[index]))
                return RecordTextFault.Invisible;
            isSeen |= !IsPlainSpace(text[index]) && !char.IsWhiteSpace(text[index]) && !isJoiner;
            if (char.IsHighSurrogate(text[index]))
                index++;
        }

        return isSeen ? null : RecordTextFault.Empty;
    }

    /// <summary>The text as it is kept: no space around it, and one space for every line break or tab.</summary>
    internal static string Kept(string text) => text.Trim().Replace("\r\n", " ", StringComparison.Ordinal).Replace('\n', ' ').Replace('\r', ' ').Replace('\t', ' ');

    private static bool IsPlainSpace(char one) => one is ' ' or '\u00A0' or '\n' or '\r' or '\t';

    // U+115F, U+1160, U+3164 and U+FFA0 are letters that are drawn as nothing.
    private static bool IsInvisible(UnicodeCategory category, char one) =>
        category is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned
        || one is '\u115F' or '\u1160' or '\u3164' or '\uFFA0' or '\u2800';
}
