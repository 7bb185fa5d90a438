using Contam.Families.Reading.Shapes;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>Reads a whole file by its shape.</summary>
internal static class FileForm
{
    /// <summary>What a file says, or <c>null</c> where nothing can be said of it; problems tell why. Its format is checked.</summary>
    public static Form? Read(SourceText source, FormShape shape, ReadBudget budget, ProblemList problems)
    {
        if (SheetParser.Parse(source, budget, problems) is not Sheet sheet)
            return null;
        // A file of a later format may say anything; only its format is worth telling.
        if (OtherFormat(sheet) is (TextNode node, int format))
        {
            problems.Add(FamilyProblems.Format(sheet.PlaceOf(node), format));
            return null;
        }

        return shape.TryRead(sheet.Root, new SheetContext(sheet, problems), out Form? form) ? form : null;
    }

    private static (TextNode Node, int Format)? OtherFormat(Sheet sheet)
    {
        if (sheet.Root is not MapNode map)
            return null;
        foreach ((TextNode key, SheetNode value) in map.Entries)
        {
            if (key.Value == FamilyKeys.Format.Name && value is TextNode text
                && int.TryParse(text.Value, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int format) && format != 1)
            {
                return (text, format);
            }
        }

        return null;
    }
}
