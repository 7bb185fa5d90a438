using Contam.Families;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Authoring;

/// <summary>A table with its name in places.</summary>
/// <param name="File">The name.</param>
/// <param name="Text">The text.</param>
public sealed record TableFile(string File, string Text);

/// <summary>
/// Writes a family file from a table of joints and, if there is one, a table of parts. Names with spaces become ids; joints that follow on from one another become
/// runs; an empty cell, or one that says <c>?</c> or <c>unknown</c>, is read the cautious way. Every problem bears the row and column of a table.
/// </summary>
public static class FamilyFromTables
{
    /// <summary>The family file, or what is wrong with the tables.</summary>
    /// <param name="id">The id of the new family.</param>
    /// <param name="joints">The table of joints, with the columns of <see cref="TableColumns.Joints"/>.</param>
    /// <param name="parts">The table of parts, with the columns of <see cref="TableColumns.Parts"/>; <c>null</c> where every part's name ends in its kind.</param>
    /// <param name="catalogue">The kinds and debris that there are.</param>
    /// <param name="limits">How much is taken in; <c>null</c> for the defaults.</param>
    public static Outcome<string> Write(string id, TableFile joints, TableFile? parts, Catalogue catalogue, ReadLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(id);
        ArgumentNullException.ThrowIfNull(joints);
        ArgumentNullException.ThrowIfNull(catalogue);
        ReadLimits most = limits ?? ReadLimits.Default;
        var problems = new ProblemList(most.Problems);
        TableSheet? jointSheet = TableSheet.Read(joints.Text, joints.File, TableColumns.Joints, 3, problems);
        TableSheet? partSheet = parts is null ? null : TableSheet.Read(parts.Text, parts.File, TableColumns.Parts, 1, problems);
        if (jointSheet is null || (parts is not null && partSheet is null))
            return new Outcome<string>(null, problems.ToSorted());
        var text = new TrackedText();
        var rows = new JointRows(text, jointSheet);
        rows.RaiseEmpty(problems);
        rows.RaiseFluids(problems);
        if (problems.HasErrors)
            return new Outcome<string>(null, problems.ToSorted());
        Head(text, id, joints, parts, rows);
        WriteParts(text, rows, partSheet, catalogue, problems);
        rows.WriteCircuits();
        rows.WriteLinks();
        string written = text.ToString();
        Outcome<Family> read = FamilyReader.ReadText(written, id + ".yaml", catalogue, most);
        foreach (Problem problem in read.Problems)
            problems.Add(InTables(text.Mapped(problem), hasParts: parts is not null));
        return new Outcome<string>(problems.HasErrors ? null : written, problems.ToSorted());
    }

    private static void Head(TrackedText text, string id, TableFile joints, TableFile? parts, JointRows rows)
    {
        text.Add("# yaml-language-server: $schema=schema/family.schema.json\n")
            .Add($"# Written from {Shown(joints)}{(parts is null ? "" : " and " + Shown(parts))}. Hold every joint against the machine before you trust it.\n")
            .Add($"format: 1\nfamily: {id}\n# What sort of machine it is decides how it is made safe and proved: engine, gearcase, gearbox or hydraulic-unit.\n# machine: engine\n")
            .Add($"title: {FamilyTables.DefaultName(id)}\n\n");
        (string Id, CellPlace Place)[] fluids = [.. rows.Fluids];
        if (fluids.Length == 0)
            return;
        text.Add($"# `is` says what a fluid is: {string.Join(", ", FluidSort.All)}. Density and two viscosities let `contam flush` say how long to flush.\nfluids:\n");
        foreach ((string fluid, CellPlace place) in fluids)
            text.Add("  ").Add(YamlWords.Of(fluid), place).Add(": {}\n");
        text.Add("\n");
    }

    private static void WriteParts(TrackedText text, JointRows rows, TableSheet? sheet, Catalogue catalogue, ProblemList problems)
    {
        text.Add("parts:\n");
        var writer = new PartRows(text, catalogue, problems);
        if (sheet is null)
        {
            foreach ((string written, string id, CellPlace place) in rows.Parts)
                writer.WriteUnsaid(written, id, place);
            return;
        }

        var rowOf = new Dictionary<string, int>(StringComparer.Ordinal);
        // Where there is a table of parts, a part that has no row is a slip of the pen: the reader says so.
        foreach (TableRow row in sheet.Rows)
        {
            string id = CellWords.Id(sheet.Cell(row, "id"));
            if (id.Length > 0 && !rowOf.TryAdd(id, row.Number))
                problems.Add(sheet.Place(row, "id").Problem(ProblemCodes.DuplicateId, $"the part {Wording.Quoted(id)} has a row already, row {Wording.Number(rowOf[id])}", "keep one of the two, or give one of them another id"));
            else if (id.Length == 0)
                problems.Add(sheet.Place(row, "id").Problem(ProblemCodes.BadTable, "the part has no id", "write its name in the column id"));
            else
                writer.Write(sheet, row);
        }
    }

    // What is to be written into a section of a file goes into a table here.
    private static Problem InTables(Problem problem, bool hasParts) => problem.Code switch
    {
        ProblemCodes.UnknownPart when hasParts && !problem.Mend.StartsWith("did you mean", StringComparison.Ordinal) => problem with { Mend = "give it a row in the table of parts" },
        ProblemCodes.CommaInText => problem with { Mend = "put the text in double quotes" },
        _ => problem,
    };

    private static string Shown(TableFile table) => YamlWords.Of(table.File);
}
