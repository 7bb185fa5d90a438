using Contam.Families;
using Contam.Families.Reading;
using Contam.Families.Reading.Shapes;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Treatment.Reading;

/// <summary>
/// Reads shop standards. Every problem of a file is told in one go. Like the family reader it answers with problems, never with an exception.
/// </summary>
public static class StandardReader
{
    private static Catalogue BuiltIn => BuiltInStandards.HouseOverKinds.CatalogueOf();

    /// <summary>Reads a standard from disk.</summary>
    /// <param name="path">Where it is; places bear this name, with <c>/</c> between folders.</param>
    /// <param name="below">The kinds and debris of the standards that it will be laid over; <c>null</c> for those that are built in.</param>
    /// <param name="limits">How much is taken in; <c>null</c> for the defaults.</param>
    /// <returns>The standard as this one file says it, not laid over another; or what is wrong.</returns>
    public static Outcome<ShopStandard> ReadFile(string path, Catalogue? below = null, ReadLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        var budget = new ReadBudget(limits ?? ReadLimits.Default);
        var problems = new ProblemList(budget.Limits.Problems);
        return Read(SourceFile.Read(path, SourceFile.NameOf(path), budget, null, problems), below ?? BuiltIn, budget, problems);
    }

    /// <summary>Reads a standard from a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">The name that places bear.</param>
    /// <param name="below">The kinds and debris of the standards that it will be laid over; <c>null</c> for those that are built in.</param>
    /// <param name="limits">How much is taken in; <c>null</c> for the defaults.</param>
    public static Outcome<ShopStandard> ReadText(string text, string fileName, Catalogue? below = null, ReadLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        var budget = new ReadBudget(limits ?? ReadLimits.Default);
        var problems = new ProblemList(budget.Limits.Problems);
        return Read(SourceFile.FromText(text, SourceFile.NameOf(fileName), budget, problems), below ?? BuiltIn, budget, problems);
    }

    private static Outcome<ShopStandard> Read(SourceText? source, Catalogue below, ReadBudget budget, ProblemList problems)
    {
        Form? form = source is null ? null : FileForm.Read(source, StandardFile.Form, budget, problems);
        ShopStandard? standard = form is null ? null : new StandardBuilder(form, below, problems).Build();
        return new Outcome<ShopStandard>(problems.HasErrors ? null : standard, problems.ToSorted());
    }
}
