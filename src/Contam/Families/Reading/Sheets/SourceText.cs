using System.Buffers;
using System.Security.Cryptography;
using System.Text;
using Contam.Problems;

namespace Contam.Families.Reading.Sheets;

/// <summary>The text of one file, with its name, its hash and where its lines begin.</summary>
internal sealed class SourceText
{
    /// <summary>What may stand in a text without a second look.</summary>
    private static readonly SearchValues<char> Plain = SearchValues.Create([.. Enumerable.Range(' ', 0x7F - ' ').Select(c => (char)c), '\n', '\r', '\t']);

    private readonly int[] lineStarts;

    private SourceText(string file, string text, bool hasMark)
    {
        File = file;
        Text = text;
        Whole = hasMark ? "\uFEFF" + text : text;
        lineStarts = FindLineStarts(text);
    }

    /// <summary>The file's name in places, with <c>/</c> between folders.</summary>
    public string File { get; }

    /// <summary>The text, without a byte order mark.</summary>
    public string Text { get; }

    /// <summary>All that was in the file: the text, behind a byte order mark where there was one.</summary>
    public string Whole { get; }

    /// <summary>SHA-256 of the file's bytes, in lower-case hexadecimal.</summary>
    public string Sha256 => HashOf(Whole);

    /// <summary>SHA-256 of a text's UTF-8 bytes, in lower-case hexadecimal.</summary>
    public static string HashOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    /// <summary>The text of these bytes, or <c>null</c> where they are no sound UTF-8 text; then a problem says why.</summary>
    public static SourceText? FromBytes(string file, byte[] bytes, ProblemList problems)
    {
        ReadOnlySpan<byte> body = bytes;
        if (body.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || body.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            problems.Add(SheetProblems.Utf16(file));
            return null;
        }

        if (OtherForm.Of(body) is { } form)
        {
            problems.Add(SheetProblems.OtherForm(file, form));
            return null;
        }

        if (body.Contains((byte)0))
        {
            problems.Add(SheetProblems.NotText(file));
            return null;
        }

        bool hasMark = body.StartsWith(Encoding.UTF8.Preamble);
        if (hasMark)
            body = body[3..];
        int bad = FirstBadByte(body);
        if (bad >= 0)
        {
            var before = new SourceText(file, Encoding.UTF8.GetString(body[..bad]), hasMark);
            problems.Add(SheetProblems.NotUtf8(before.PlaceAt(before.Text.Length), body[bad]));
            return null;
        }

        return Checked(new SourceText(file, Encoding.UTF8.GetString(body), hasMark), problems);
    }

    /// <summary>This text as a file's, or <c>null</c> where it holds what no text should; then a problem says what. Its hash is that of its UTF-8 bytes.</summary>
    public static SourceText? FromString(string file, string text, ProblemList problems)
    {
        if (text.Contains('\0', StringComparison.Ordinal))
        {
            problems.Add(SheetProblems.NotText(file));
            return null;
        }

        bool hasMark = text.StartsWith('\uFEFF');
        return Checked(new SourceText(file, hasMark ? text[1..] : text, hasMark), problems);
    }

    /// <summary>The place of a character, from its zero-based index; the text's length stands for its end.</summary>
    public SourceSpan PlaceAt(int index)
    {
        int found = Array.BinarySearch(lineStarts, index);
        int line = found >= 0 ? found : ~found - 1;
        return new SourceSpan(File, line + 1, index - lineStarts[line] + 1);
    }

    /// <summary>The index at which the line of this character begins.</summary>
    public int LineStart(int index)
    {
        int found = Array.BinarySearch(lineStarts, index);
        return lineStarts[found >= 0 ? found : ~found - 1];
    }

    /// <summary>The beginning of the line of this character, at most 200 characters of it, without the space around it.</summary>
    public string LineAt(int index)
    {
        int start = LineStart(index);
        ReadOnlySpan<char> rest = Text.AsSpan(start, Math.Min(200, Text.Length - start));
        int end = rest.IndexOf('\n');
        return (end < 0 ? rest : rest[..end]).Trim().ToString();
    }

    /// <summary>Whether a comma is the last that stands before this character, spaces and line breaks left out.</summary>
    public bool IsAfterComma(int index) => Text.AsSpan(0, index).TrimEnd().EndsWith(",");

    private static SourceText? Checked(SourceText source, ProblemList problems)
    {
        int hidden = FirstHidden(source.Text);
        if (hidden < 0)
            return source;
        problems.Add(SheetProblems.ControlCharacter(source.PlaceAt(hidden), source.Text[hidden]));
        return null;
    }

    /// <summary>
    /// The index of the first control character, half of a surrogate pair, stray byte order mark, turn of the writing direction, or line break that
    /// most editors do not show as one; -1 where there is none. Refusing them keeps line numbers the same in every editor, and what is read the
    /// same as what is seen.
    /// </summary>
    public static int FirstHidden(string text)
    {
        for (int i = Next(text, 0); i >= 0; i = Next(text, i + 1))
        {
            char c = text[i];
            if (char.IsControl(c) || c is '\uFEFF' or '\u2028' or '\u2029' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') or '\uFFFE' or '\uFFFF')
                return i;
            if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                i++;
            else if (char.IsSurrogate(c))
                return i;
        }

        return -1;
    }

    private static int Next(string text, int from)
    {
        int ahead = text.AsSpan(from).IndexOfAnyExcept(Plain);
        return ahead < 0 ? -1 : from + ahead;
    }

    private static int FirstBadByte(ReadOnlySpan<byte> bytes)
    {
        int at = 0;
        while (at < bytes.Length)
        {
            int ascii = bytes[at..].IndexOfAnyExceptInRange((byte)0, (byte)0x7F);
            if (ascii < 0)
                return -1;
            at += ascii;
            if (Rune.DecodeFromUtf8(bytes[at..], out _, out int taken) != OperationStatus.Done)
                return at;
            at += taken;
        }

        return -1;
    }

    private static int[] FindLineStarts(string text)
    {
        var starts = new List<int> { 0 };
        int at = 0;
        while (text.AsSpan(at).IndexOfAny('\n', '\r') is >= 0 and var next)
        {
            at += next + 1;
            if (text[at - 1] == '\n' || !(at < text.Length && text[at] == '\n'))
                starts.Add(at);
        }

        return [.. starts];
    }
}
