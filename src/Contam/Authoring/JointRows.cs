using Contam.Problems;

namespace Contam.Authoring;

/// <summary>Writes the joints of a table as circuits with runs, and as links where more is said of them.</summary>
internal sealed class JointRows(TrackedText text, TableSheet sheet)
{
    private const int LongestLine = 110;
    private static readonly string[] Named = ["from", "to", "only-if-failed"];
    private static readonly string[] Needed = ["circuit", "from", "to"];
    private static readonly string[] Terms = ["when", "passage", "only-if-failed", "both-ways", "link"];

    // A joint that is never open lets nothing pass, and a file cannot say it otherwise than by leaving it out.
    private readonly TableRow[] rows = [.. sheet.Rows.Where(row => sheet.Cell(row, "when") != "never")];

    /// <summary>The circuits, in the order in which they are named first.</summary>
    public IEnumerable<string> Circuits => rows.Select(row => CellWords.Id(sheet.Cell(row, "circuit"))).Where(circuit => circuit.Length > 0).Distinct(StringComparer.Ordinal);

    /// <summary>The fluids, each with the cell that names it first.</summary>
    public IEnumerable<(string Id, CellPlace Place)> Fluids =>
        rows.Where(row => sheet.Cell(row, "fluid").Length > 0).Select(row => (CellWords.Id(sheet.Cell(row, "fluid")), sheet.Place(row, "fluid"))).DistinctBy(one => one.Item1);

    /// <summary>The parts that the joints name, each with the cell that names it first.</summary>
    public IEnumerable<(string Written, string Id, CellPlace Place)> Parts =>
        rows.SelectMany(row => Named.Select(column => (Written: sheet.Cell(row, column), Place: sheet.Place(row, column))))
            .Where(one => one.Written.Length > 0)
            .Select(one => (one.Written, Id: CellWords.Id(one.Written), one.Place))
            .DistinctBy(one => one.Id);

    /// <summary>Raises cells that must say something and do not.</summary>
    public void RaiseEmpty(ProblemList problems)
    {
        foreach (TableRow row in rows)
        {
            foreach (string column in Needed.Where(column => sheet.Cell(row, column).Length == 0))
                problems.Add(sheet.Place(row, column).Problem(ProblemCodes.BadTable, "nothing is written here", "every row names its circuit, and the parts that the joint leads from and to"));
        }
    }

    /// <summary>The section of circuits.</summary>
    public void WriteCircuits()
    {
        if (rows.Length == 0)
            return;
        text.Add("\ncircuits:\n");
        foreach (string circuit in Circuits)
        {
            TableRow[] own = [.. rows.Where(row => CellWords.Id(sheet.Cell(row, "circuit")) == circuit)];
            TableRow[] plain = [.. own.Where(row => !IsLink(row))];
            (string Id, CellPlace Place)[] fluids = [.. own.Where(row => sheet.Cell(row, "fluid").Length > 0).Select(row => (CellWords.Id(sheet.Cell(row, "fluid")), sheet.Place(row, "fluid"))).DistinctBy(one => one.Item1)];
            text.Add("  ").Add(YamlWords.Of(circuit), sheet.Place(own[0], "circuit")).Add(plain.Length == 0 && fluids.Length == 0 ? ": {}\n" : ":\n");
            if (fluids.Length > 0)
                text.Add("    fluid: ").Add(YamlWords.Of(fluids[0].Id), fluids[0].Place).Add("\n");
            if (plain.Length > 0)
                WriteRuns(plain);
        }
    }

    /// <summary>Raises a circuit that names two fluids.</summary>
    public void RaiseFluids(ProblemList problems)
    {
        foreach (IGrouping<string, TableRow> circuit in rows.Where(row => sheet.Cell(row, "fluid").Length > 0).GroupBy(row => CellWords.Id(sheet.Cell(row, "circuit")), StringComparer.Ordinal))
        {
            string first = sheet.Cell(circuit.First(), "fluid");
            if (circuit.FirstOrDefault(row => CellWords.Id(sheet.Cell(row, "fluid")) != CellWords.Id(first)) is { } other)
                problems.Add(sheet.Place(other, "fluid").Problem(ProblemCodes.FluidsDiffer, $"the fluid of {Wording.Quoted(circuit.Key)} is {Wording.Quoted(sheet.Cell(other, "fluid"))} here and {Wording.Quoted(first)} above", "a circuit has one fluid: correct one of the two, or make two circuits"));
        }
    }

    /// <summary>The section of links; nothing where there are none.</summary>
    public void WriteLinks()
    {
        TableRow[] links = [.. rows.Where(IsLink)];
        if (links.Length == 0)
            return;
        text.Add("\nlinks:\n");
        foreach (TableRow row in links)
        {
            text.Add("  - {");
            Add(row, "from", "from", CellWords.Id, "");
            Add(row, "to", "to", CellWords.Id, ", ");
            Add(row, "circuit", "circuit", CellWords.Id, ", ");
            if (sheet.Cell(row, "when") is { Length: > 0 } when)
                text.Add(", when: ").Add(YamlWords.List(when.Split([';', ',', ' '], StringSplitOptions.RemoveEmptyEntries)), sheet.Place(row, "when"));
            if (sheet.Cell(row, "passage").Length > 0)
                Add(row, "passage", "passage", cell => cell, ", ");
            if (sheet.Cell(row, "only-if-failed").Length > 0)
                Add(row, "only-if-failed", "only-if-failed", CellWords.Id, ", ");
            if (sheet.Cell(row, "both-ways") is { Length: > 0 } both)
                text.Add(", both-ways: ").Add(CellWords.Flag(both), sheet.Place(row, "both-ways"));
            text.Add("}\n");
        }
    }

    // What follows on from the row before goes on with its run, as one follows a hose with a finger.
    private void WriteRuns(TableRow[] plain)
    {
        text.Add("    runs:\n");
        string end = "";
        for (int i = 0; i < plain.Length; i++)
        {
            TableRow row = plain[i];
            string from = CellWords.Id(sheet.Cell(row, "from"));
            bool goesOn = i > 0 && from == end;
            if (!goesOn)
                text.Add(i > 0 ? "]\n" : "").Add("      - [").Add(YamlWords.Of(from), sheet.Place(row, "from"));
            end = CellWords.Id(sheet.Cell(row, "to"));
            text.Add(text.Column + end.Length > LongestLine ? ",\n         " : ", ").Add(YamlWords.Of(end), sheet.Place(row, "to"));
        }

        text.Add("]\n");
    }

    private void Add(TableRow row, string column, string key, Func<string, string> of, string before) =>
        text.Add($"{before}{key}: ").Add(YamlWords.Of(of(sheet.Cell(row, column))), sheet.Place(row, column));

    private bool IsLink(TableRow row) => Terms.Any(term => sheet.Cell(row, term) is { Length: > 0 } cell && !(term is "link" or "both-ways" && CellWords.Flag(cell) == "false"));
}
