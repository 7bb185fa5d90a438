using Contam.Families.Reading.Shapes;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>Reads a whole file by its shape.</summary>
internal static class FileForm
{
    /// <summary>What a file says, or <c>null</c> where nothing can be said of it; problems tell why. Its format is checked.</summary>
    public static Form? Read(SourceText source, FormShape shape, ReadBudget budget, ProblemList problems) =>
        Passed(source, shape, budget, new ProblemList(1)) ?? Whole(source, shape, budget, problems);

    /// <summary>
    /// What a sound file says, or <c>null</c> where anything at all is to be said of it. The file is gone through while it is read, so that it never
    /// stands in memory as a whole; no file but a sound one can do with that, since a later fault may be all there is to say of an earlier one.
    /// </summary>
    internal static Form? Passed(SourceText source, FormShape shape, ReadBudget budget, ProblemList problems)
    {
        int left = budget.ValuesLeft;
        if (SheetParser.Pass(source, budget, problems) is (Sheet sheet, SheetParser parser)
            && shape.TryRead(sheet.Root, new SheetContext(sheet, problems), out Form? form)
            && parser.PassedSoundly())
        {
            return form;
        }

        budget.ValuesLeft = left;
        return null;
    }

    /// <summary>What any file says, from the tree of all its values.</summary>
    internal static Form? Whole(SourceText source, FormShape shape, ReadBudget budget, ProblemList problems) =>
        SheetParser.Parse(source, budget, problems) is Sheet sheet ? Read(sheet, shape, problems) : null;

    /// <summary>The same of a sheet.</summary>
    public static Form? Read(Sheet sheet, FormShape shape, ProblemList problems)
    {
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
        for (int i = 0; map.TryGet(i, out TextNode? key, out SheetNode? value); i++)
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
