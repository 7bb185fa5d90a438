using System.Text;
using Contam.Families;
using Contam.Problems;

namespace Contam.Authoring;

/// <summary>A text that is put together of cells, and knows of each of its characters which cell it came from.</summary>
internal sealed class TrackedText
{
    private readonly StringBuilder text = new();
    private readonly List<(int Start, int End, CellPlace Cell)> cells = [];

    /// <summary>Adds what came from no cell.</summary>
    public TrackedText Add(string written)
    {
        text.Append(written);
        return this;
    }

    /// <summary>Adds what came from a cell.</summary>
    public TrackedText Add(string written, CellPlace cell)
    {
        cells.Add((text.Length, text.Length + written.Length, cell));
        text.Append(written);
        return this;
    }

    /// <summary>How many characters there are.</summary>
    public int Length => text.Length;

    /// <summary>The column in which the next character stands, from 0.</summary>
    public int Column
    {
        get
        {
            int at = text.Length;
            while (at > 0 && text[at - 1] != '\n')
                at--;
            return text.Length - at;
        }
    }

    /// <summary>A problem of this text as one of the cell that it came from.</summary>
    public Problem Mapped(Problem problem)
    {
        if (problem.Place is not { } place || CellAt(IndexOf(place)) is not { } cell)
            return problem;
        return cell.Problem(problem.Code, problem.Text, problem.Mend, problem.Severity) with { Related = [.. problem.Related.Select(IndexOf).Select(CellAt).OfType<CellPlace>().Select(related => related.Span)] };
    }

    /// <inheritdoc/>
    public override string ToString() => text.ToString();

    private int IndexOf(SourceSpan place)
    {
        int at = 0;
        for (int line = 1; line < place.Line && at < text.Length; at++)
        {
            if (text[at] == '\n')
                line++;
        }

        return Math.Min(at + place.Column - 1, text.Length);
    }

    /// <summary>The narrowest piece around a character; else the last that begins before it.</summary>
    private CellPlace? CellAt(int index)
    {
        (int Start, int End, CellPlace Cell)[] around = [.. cells.Where(one => one.Start <= index && index <= one.End)];
        if (around.Length > 0)
            return around.MinBy(one => one.End - one.Start).Cell;
        (int Start, int End, CellPlace Cell)[] before = [.. cells.Where(one => one.Start <= index)];
        return before.Length > 0 ? before[^1].Cell : null;
    }
}
