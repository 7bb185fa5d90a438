using System.Collections.Immutable;
using System.Text;

namespace Contam.Authoring;

/// <summary>A row of a table as it was read.</summary>
/// <param name="Number">Its number as a spreadsheet shows it, from 1.</param>
/// <param name="Cells">Its cells, without the space around them.</param>
public sealed record TableRow(int Number, ImmutableArray<string> Cells);

/// <summary>
/// Reads tables of values parted by commas, semicolons or tabs, as spreadsheets write them (RFC 4180: a cell in double quotes may hold any of these, line breaks,
/// and a quote written twice). Which mark parts the cells is taken from the first row.
/// </summary>
public static class TableText
{
    /// <summary>The rows of a text; empty rows, and rows that begin with <c>#</c>, are left out but counted.</summary>
    /// <param name="text">The text, with or without a byte order mark.</param>
    /// <returns>The rows, and the number of the row whose quote is never closed, or <c>null</c>.</returns>
    public static (ImmutableArray<TableRow> Rows, int? OpenQuote) Rows(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string body = text.StartsWith('\uFEFF') ? text[1..] : text;
        char mark = MarkOf(body);
        var rows = ImmutableArray.CreateBuilder<TableRow>();
        var cells = new List<string>();
        var cell = new StringBuilder();
        int number = 1, at = 0;
        while (at < body.Length)
        {
            char c = body[at++];
            if (c == '"' && cell.ToString().AsSpan().Trim().IsEmpty)
            {
                cell.Clear();
                if (!TakeQuoted(body, ref at, cell))
                    return (rows.ToImmutable(), number);
            }
            else if (c == mark)
            {
                cells.Add(Clean(cell));
            }
            else if (c is '\n' or '\r')
            {
                if (c == '\r' && at < body.Length && body[at] == '\n')
                    at++;
                cells.Add(Clean(cell));
                Take(rows, number++, cells);
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add(Clean(cell));
        Take(rows, number, cells);
        return (rows.ToImmutable(), null);
    }

    private static bool TakeQuoted(string text, ref int at, StringBuilder cell)
    {
        while (at < text.Length)
        {
            char c = text[at++];
            if (c != '"')
                cell.Append(c);
            else if (at < text.Length && text[at] == '"')
                cell.Append(text[at++]);
            else
                return true;
        }

        return false;
    }

    private static void Take(ImmutableArray<TableRow>.Builder rows, int number, List<string> cells)
    {
        if (cells.Any(cell => cell.Length > 0) && !cells[0].StartsWith('#'))
            rows.Add(new TableRow(number, [.. cells]));
        cells.Clear();
    }

    /// <summary>The mark that stands most often in the first row outside of quotes; the comma where none does.</summary>
    private static char MarkOf(string text)
    {
        var count = new int[3];
        bool isQuoted = false;
        foreach (char c in text)
        {
            isQuoted ^= c == '"';
            if (!isQuoted && c is '\n' or '\r' && count.Any(one => one > 0))
                break;
            if (!isQuoted && ",;\t".IndexOf(c, StringComparison.Ordinal) is >= 0 and var which)
                count[which]++;
        }

        return count[1] > count[0] && count[1] >= count[2] ? ';' : count[2] > count[0] ? '\t' : ',';
    }

    // An apostrophe before what a spreadsheet would take for a formula is no part of the text.
    private static string Clean(StringBuilder cell)
    {
        string text = cell.ToString().Trim();
        cell.Clear();
        return text.Length > 1 && text[0] == '\'' && "=+-@\t\r".Contains(text[1], StringComparison.Ordinal) ? text[1..] : text;
    }
}
