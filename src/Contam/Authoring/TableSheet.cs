using System.Collections.Immutable;
using Contam.Families;
using Contam.Problems;

namespace Contam.Authoring;

/// <summary>Where a cell stands.</summary>
/// <param name="File">The table's file.</param>
/// <param name="Row">The row, as a spreadsheet shows it.</param>
/// <param name="Column">The column, from 1.</param>
/// <param name="Title">The title of the column; empty for the row as a whole.</param>
internal readonly record struct CellPlace(string File, int Row, int Column, string Title)
{
    /// <summary>Row and column in place of line and column.</summary>
    public SourceSpan Span => new(File, Row, Column);

    /// <summary>A problem of this cell. Its text begins with the row and the column by its title.</summary>
    public Problem Problem(string code, string text, string mend, Severity severity = Severity.Error) =>
        new(code, severity, Span, $"{Words}: {text}", mend);

    /// <summary>The row, and the column by its title.</summary>
    public string Words => Title.Length == 0 ? $"row {Wording.Number(Row)}" : $"row {Wording.Number(Row)}, column {Title}";
}

/// <summary>A table whose columns are known.</summary>
internal sealed class TableSheet
{
    private readonly string file;
    private readonly Dictionary<string, int> columnOf;

    private TableSheet(string file, Dictionary<string, int> columnOf, ImmutableArray<TableRow> rows)
    {
        this.file = file;
        this.columnOf = columnOf;
        Rows = rows;
    }

    /// <summary>The rows below the titles.</summary>
    public ImmutableArray<TableRow> Rows { get; }

    /// <summary>The table in a text, or <c>null</c> where its titles cannot be made sense of; problems say why.</summary>
    public static TableSheet? Read(string text, string file, ImmutableArray<TableColumn> columns, int needed, ProblemList problems)
    {
        (ImmutableArray<TableRow> rows, int? openQuote) = TableText.Rows(text);
        if (openQuote is { } open)
        {
            problems.Add(new CellPlace(file, open, 1, "").Problem(ProblemCodes.BadTable, "a quote that opens here is not closed", "close it with `\"`; a quote within a cell is written twice"));
            return null;
        }

        string due = $"the first row names the columns: {string.Join(", ", columns.Take(needed).Select(column => column.Title))}, and others as needed";
        if (rows.IsEmpty)
        {
            problems.Add(new CellPlace(file, 1, 1, "").Problem(ProblemCodes.BadTable, "the table is empty", due));
            return null;
        }

        var columnOf = new Dictionary<string, int>(StringComparer.Ordinal);
        bool isSound = true;
        foreach ((int index, string written) in rows[0].Cells.Index())
        {
            string title = written.ToLowerInvariant().Replace(' ', '-').Replace('_', '-');
            if (title.Length == 0 && rows.Skip(1).All(row => row.Cells.Length <= index || row.Cells[index].Length == 0))
                continue;
            var place = new CellPlace(file, rows[0].Number, index + 1, "");
            if (!columns.Any(column => column.Title == title))
                problems.Add(place.Problem(ProblemCodes.BadTable, $"there is no column {Wording.Quoted(written)}", Wording.DidYouMean(problems.NearTo(title, columns.Select(column => column.Title)), $"there are {Wording.AllOf(columns.Select(column => column.Title))}")));
            else if (!columnOf.TryAdd(title, index))
                problems.Add(place.Problem(ProblemCodes.BadTable, $"the column {Wording.Quoted(title)} stands twice", "keep one of the two"));
            else
                continue;
            isSound = false;
        }

        foreach (TableColumn column in columns.Take(needed).Where(column => !columnOf.ContainsKey(column.Title)))
        {
            problems.Add(new CellPlace(file, rows[0].Number, 1, "").Problem(ProblemCodes.BadTable, $"the column {Wording.Quoted(column.Title)} is missing", due));
            isSound = false;
        }

        foreach (TableRow row in rows.Skip(1).Where(row => row.Cells.Skip(rows[0].Cells.Length).Any(cell => cell.Length > 0)))
        {
            problems.Add(new CellPlace(file, row.Number, rows[0].Cells.Length + 1, "").Problem(ProblemCodes.BadTable, "a cell stands beyond the last column that has a title", "put a cell that holds a comma in double quotes, or give the column its title"));
            isSound = false;
        }

        return isSound ? new TableSheet(file, columnOf, rows[1..]) : null;
    }

    /// <summary>A cell; empty where there is no such column, and where it says that nobody knows.</summary>
    public string Cell(TableRow row, string title)
    {
        string text = columnOf.TryGetValue(title, out int index) && index < row.Cells.Length ? row.Cells[index] : "";
        return IsUnknown(text) ? "" : text;
    }

    /// <summary>Whether a cell says that nobody knows, which is read as if nothing stood there: the cautious way.</summary>
    public static bool IsUnknown(string text) => text is "?" or "??" || string.Equals(text, "unknown", StringComparison.OrdinalIgnoreCase) || string.Equals(text, "don't know", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a column has said of this row that nobody knows.</summary>
    public bool SaysUnknown(TableRow row, string title) => columnOf.TryGetValue(title, out int index) && index < row.Cells.Length && IsUnknown(row.Cells[index]);

    /// <summary>Where a cell stands; the row where there is no such column.</summary>
    public CellPlace Place(TableRow row, string title) =>
        columnOf.TryGetValue(title, out int index) ? new CellPlace(file, row.Number, index + 1, title) : new CellPlace(file, row.Number, 1, "");
}
