using System.Text;

namespace Contam.Reports.Text;

/// <summary>How a page of text looks where it goes: how wide, and whether it may use colour.</summary>
/// <param name="Width">Columns, at least 40.</param>
/// <param name="HasColour">Whether escape sequences for bold and colour are understood.</param>
public sealed record TextLook(int Width, bool HasColour)
{
    /// <summary>A file or a pipe.</summary>
    public static TextLook Plain { get; } = new(80, HasColour: false);

    /// <summary>Whether sizes are shown in thou and volumes in US gallons instead of µm and litres.</summary>
    public bool IsImperial { get; init; }
}

/// <summary>
/// Writes lines for people: headings, paragraphs and rows that fold to the width. Whatever a person wrote is made harmless first: control characters,
/// terminal escapes among them, come out as <c>?</c>.
/// </summary>
public sealed class TextPage
{
    private const int NarrowestText = 20;

    private readonly TextWriter writer;
    private readonly TextLook look;

    /// <summary>A page that goes to this writer.</summary>
    public TextPage(TextWriter writer, TextLook look)
    {
        this.writer = writer;
        this.look = look;
    }

    /// <summary>How the page looks.</summary>
    public TextLook Look => look;

    /// <summary>The columns of the page.</summary>
    public int Width => Math.Max(look.Width, 40);

    /// <summary>An empty line.</summary>
    public void Gap() => writer.Write('\n');

    /// <summary>A heading in capitals, with an empty line before it.</summary>
    public void Heading(string text)
    {
        Gap();
        Subheading(text.ToUpperInvariant());
    }

    /// <summary>A lesser heading.</summary>
    public void Subheading(string text)
    {
        // Spaces within a heading count, so one that fits stands as it is.
        string harmless = Harmless(text);
        List<string> lines = DisplayWidth.Of(harmless) <= Width ? [harmless] : Fold(harmless, Width);
        foreach (string line in lines)
            Write(Bold(line));
    }

    /// <summary>Text that folds, every line indented by <paramref name="indent"/>; <paramref name="lead"/> stands before the first line inside the indent.</summary>
    public void Paragraph(string text, int indent = 0, string lead = "")
    {
        string before = DisplayWidth.Pad(Harmless(lead), indent);
        string? rest = null;
        foreach (string line in Fold(Harmless(text), Math.Max(Width - indent, NarrowestText)))
        {
            if (line.Length > 0)
                writer.Write(before);
            Write(line.Length > 0 ? line : before);
            before = rest ??= new string(' ', indent);
        }
    }

    /// <summary>A line that is not folded, because its spaces or its breaks count.</summary>
    public void Verbatim(string text, int indent = 0) => Write(new string(' ', indent) + Harmless(text));

    /// <summary>
    /// A row of cells, each folded into its column. The last column takes what is left of the width.
    /// </summary>
    /// <param name="indent">Spaces before the first cell.</param>
    /// <param name="cells">Text and column width of each; the width of the last is not used.</param>
    public void Row(int indent, params ReadOnlySpan<(string Text, int Width)> cells)
    {
        var columns = new List<(List<string> Lines, int Width)>();
        int used = indent;
        for (int i = 0; i < cells.Length; i++)
        {
            bool isLast = i == cells.Length - 1;
            int width = isLast ? Math.Max(Width - used, NarrowestText) : cells[i].Width;
            columns.Add((Fold(Harmless(cells[i].Text), width), width));
            used += width + 2;
        }

        int height = columns.Count == 0 ? 0 : columns.Max(column => column.Lines.Count);
        for (int line = 0; line < height; line++)
        {
            var text = new StringBuilder(new string(' ', indent));
            for (int i = 0; i < columns.Count; i++)
            {
                string cell = line < columns[i].Lines.Count ? columns[i].Lines[line] : "";
                text.Append(i == columns.Count - 1 ? cell : DisplayWidth.Pad(cell, columns[i].Width) + "  ");
            }

            Write(text.ToString());
        }
    }

    /// <summary>Text with everything that a terminal would obey turned into <c>?</c>.</summary>
    public static string Harmless(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!HasHarmful(text))
            return text;
        return string.Concat(text.Select(one => one is '\n' or '\r' or '\t' ? ' ' : IsHarmful(one) ? '?' : one));
    }

    // Bidirectional overrides reorder what a person reads, so they are as harmful as escapes.
    private static bool IsHarmful(char one) => char.IsControl(one) || one is '\u2028' or '\u2029' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');

    private static bool HasHarmful(string text)
    {
        // Nearly every text; no sign needs a look of its own.
        if (!text.AsSpan().ContainsAnyExceptInRange(' ', '~'))
            return false;
        foreach (char one in text)
        {
            if (IsHarmful(one))
                return true;
        }

        return false;
    }

    private string Bold(string text) => look.HasColour ? $"\u001b[1m{text}\u001b[0m" : text;

    private void Write(string line)
    {
        writer.Write(line.TrimEnd(' '));
        writer.Write('\n');
    }

    /// <summary>Breaks text at spaces, and a word that is wider than the column within itself. At least one line.</summary>
    internal static List<string> Fold(string text, int width)
    {
        var lines = new List<string>();
        var line = new StringBuilder();
        int used = 0;
        foreach (Range place in text.AsSpan().Split(' '))
        {
            ReadOnlySpan<char> word = text.AsSpan(place);
            if (word.IsEmpty)
                continue;
            int columns = DisplayWidth.Of(word);
            if (columns <= width)
            {
                Take(word, columns);
                continue;
            }

            foreach (string piece in Pieces(word.ToString(), width))
                Take(piece, DisplayWidth.Of(piece));
        }

        lines.Add(line.ToString());
        return lines;

        void Take(ReadOnlySpan<char> piece, int columns)
        {
            if (used > 0 && used + 1 + columns > width)
            {
                lines.Add(line.ToString());
                line.Clear();
                used = 0;
            }

            if (used > 0)
            {
                line.Append(' ');
                used++;
            }

            line.Append(piece);
            used += columns;
        }
    }

    /// <summary>A word that is wider than the column, broken within itself.</summary>
    private static IEnumerable<string> Pieces(string word, int width)
    {
        var piece = new StringBuilder();
        int used = 0;
        foreach (string character in DisplayWidth.Characters(word))
        {
            int columns = DisplayWidth.Of(character);
            if (used + columns > width)
            {
                yield return piece.ToString();
                piece.Clear();
                used = 0;
            }

            piece.Append(character);
            used += columns;
        }

        yield return piece.ToString();
    }
}
