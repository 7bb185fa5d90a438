using System.Collections.Immutable;
using Contam.Authoring;
using Contam.Families;

namespace Contam.Reports;

/// <summary>
/// A family as tables of comma-separated values (RFC 4180, lines closed by CR LF): its parts, or its joints. <c>contam start --from</c> reads them back.
/// A cell that a spreadsheet would take for a formula gets an apostrophe before it, which is taken off when it is read back.
/// </summary>
public static class FamilyCsv
{
    /// <summary>Writes the parts.</summary>
    public static void WriteParts(Family family, TextWriter writer) => Write(FamilyTables.Parts(family), writer);

    /// <summary>Writes the joints.</summary>
    public static void WriteJoints(Family family, TextWriter writer) => Write(FamilyTables.Joints(family), writer);

    private static void Write(Table table, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        foreach (ImmutableArray<string> row in table.Rows.Insert(0, table.Titles))
            writer.Write(string.Join(',', row.Select(PlanCsv.Cell)) + "\r\n");
    }
}
