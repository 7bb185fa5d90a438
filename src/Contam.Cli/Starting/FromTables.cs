using Contam.Authoring;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;
using Contam.Problems;
using Contam.Reports.Text;
using Contam.Treatment.Reading;

namespace Contam.Cli.Starting;

/// <summary>A family file from tables on disk.</summary>
internal static class FromTables
{
    private const string PartsBeside = "parts.csv";

    /// <summary>The family file, or <c>null</c> after its problems were written.</summary>
    /// <param name="id">The id of the new family.</param>
    /// <param name="joints">Where the table of joints is.</param>
    /// <param name="parts">Where the table of parts is; <c>null</c> for <c>parts.csv</c> beside the joints, if there is one.</param>
    /// <param name="limits">How much is taken in.</param>
    /// <param name="shell">Where problems go.</param>
    public static string? Text(string id, string joints, string? parts, ReadLimits limits, Shell shell)
    {
        string beside = Path.Combine(Path.GetDirectoryName(joints) ?? "", PartsBeside);
        string? second = parts ?? (File.Exists(beside) ? beside : null);
        Outcome<string> made = FamilyFromTables.Write(id, Read(joints, limits), second is null ? null : Read(second, limits), BuiltInStandards.HouseOverKinds.CatalogueOf(), limits);
        if (made.Problems.Length > 0)
            ProblemText.Write(made.Problems, shell.Error, TextLook.Plain);
        return made.Value;
    }

    private static TableFile Read(string file, ReadLimits limits)
    {
        string name = TextPage.Harmless(file);
        var problems = new ProblemList(1);
        SourceText? read = SourceFile.Read(file, file, new ReadBudget(limits), null, problems);
        if (read is not null)
            return new TableFile(SourceFile.NameOf(file), read.Whole);
        Problem why = problems.ToSorted()[0];
        bool isWorkbook = OtherForm.OfFile(file) is not null;
        throw new WrongUseException($"{name} is no table: {why.Text}. {(isWorkbook ? "Save it in the spreadsheet as comma-separated values (CSV, UTF-8) and name that file." : char.ToUpperInvariant(why.Mend[0]) + why.Mend[1..] + ".")}");
    }
}
