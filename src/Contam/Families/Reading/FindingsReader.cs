using System.Collections.Immutable;
using Contam.Families.Reading.Shapes;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>What a findings file says.</summary>
/// <param name="Findings">What was seen, in file order.</param>
/// <param name="Failed">Parts that were found to have failed, in file order.</param>
public sealed record FindingsSheet(ImmutableArray<Finding> Findings, ImmutableArray<PartId> Failed)
{
    /// <summary>Looks that were made for some debris and told nothing, in file order.</summary>
    public ImmutableArray<(PartId Part, Debris Debris)> CannotTell { get; init; } = [];
}

/// <summary>
/// Reads findings: a YAML list of <c>{part, debris, found, failed, cannot-tell, size, form, magnetic, by, when}</c>. Like the family reader it answers with problems,
/// never with an exception.
/// </summary>
public static class FindingsReader
{
    /// <summary>Reads a findings file from disk.</summary>
    /// <param name="path">Where it is; places bear this name.</param>
    /// <param name="family">The family whose parts it names.</param>
    /// <param name="catalogue">The debris that it may name.</param>
    /// <param name="asked">What a clean finding without debris is clean of.</param>
    /// <param name="limits">How much is taken in; <c>null</c> for the defaults.</param>
    public static Outcome<FindingsSheet> ReadFile(string path, Family family, Catalogue catalogue, ImmutableArray<Debris> asked, ReadLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        var budget = new ReadBudget(limits ?? ReadLimits.Default);
        var problems = new ProblemList(budget.Limits.Problems);
        return Read(SourceFile.Read(path, SourceFile.NameOf(path), budget, null, problems), family, catalogue, asked, budget, problems);
    }

    /// <summary>Reads findings from a text; otherwise as <see cref="ReadFile"/>.</summary>
    public static Outcome<FindingsSheet> ReadText(string text, string fileName, Family family, Catalogue catalogue, ImmutableArray<Debris> asked, ReadLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        var budget = new ReadBudget(limits ?? ReadLimits.Default);
        var problems = new ProblemList(budget.Limits.Problems);
        return Read(SourceFile.FromText(text, SourceFile.NameOf(fileName), budget, problems), family, catalogue, asked, budget, problems);
    }

    private static Outcome<FindingsSheet> Read(
        SourceText? source, Family family, Catalogue catalogue, ImmutableArray<Debris> asked, ReadBudget budget, ProblemList problems)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(catalogue);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var failed = ImmutableArray.CreateBuilder<PartId>();
        var cannotTell = ImmutableArray.CreateBuilder<(PartId Part, Debris Debris)>();
        if (source is not null
            && SheetParser.Parse(source, budget, problems) is Sheet sheet
            && FindingKeys.File.TryRead(sheet.Root, new SheetContext(sheet, problems), out ImmutableArray<Located<Form>> forms))
        {
            foreach (Located<Form> form in forms)
                ReadOne(form.Value, family, catalogue, asked, problems, findings, failed, cannotTell);
        }

        var sheetRead = new FindingsSheet(findings.ToImmutable(), failed.ToImmutable()) { CannotTell = cannotTell.ToImmutable() };
        return new Outcome<FindingsSheet>(problems.HasErrors ? null : sheetRead, problems.ToSorted());
    }

    private static void ReadOne(
        Form form,
        Family family,
        Catalogue catalogue,
        ImmutableArray<Debris> asked,
        ProblemList problems,
        ImmutableArray<Finding>.Builder findings,
        ImmutableArray<PartId>.Builder failed,
        ImmutableArray<(PartId Part, Debris Debris)>.Builder cannotTell)
    {
        if (!form.TryGet(FindingKeys.Part, out string? id))
            return;
        if (family.Find(new PartId(id)) is not { } part)
        {
            problems.Add(FamilyProblems.UnknownPart(form.ValuePlace(FindingKeys.Part), id, NearName.Of(id, family.Parts.Select(one => one.Id.Value))));
            return;
        }

        bool hasFailed = form.Get(FindingKeys.Failed, false);
        if (hasFailed)
            failed.Add(part.Id);
        if (form.Get(FindingKeys.CannotTell, false))
        {
            if (form.Has(FindingKeys.Found))
                problems.Add(FindingProblems.SaysBoth(form.KeyPlace(FindingKeys.CannotTell), id));
            else if (DebrisOf(form, catalogue, asked, problems) is { } lookedFor)
                cannotTell.AddRange(lookedFor.Select(one => (part.Id, one)));
            return;
        }

        if (form.Find(FindingKeys.Found) is not { } found)
        {
            // A finding that says neither is a slip, not a clean part; a part that failed need say no more.
            if (!hasFailed && !form.Has(FindingKeys.Found))
                problems.Add(FindingProblems.NothingSaid(form.KeyPlace(FindingKeys.Part), id));
            return;
        }

        if (DebrisOf(form, catalogue, found ? [] : asked, problems) is not { } debris)
            return;
        if (found && debris.IsEmpty)
            problems.Add(FindingProblems.DebrisMissing(form.KeyPlace(FindingKeys.Part), id));
        foreach (Debris one in debris)
        {
            findings.Add(new Finding(part.Id, one, found)
            {
                Size = form.Find(FindingKeys.Size),
                Form = form.Find(PartKeys.Form),
                Magnetic = form.Find(PartKeys.Magnetic),
                By = form.TryGet(FindingKeys.By, out string? by) ? by : null,
                When = form.TryGet(FindingKeys.When, out string? when) ? when : null,
            });
        }
    }

    private static ImmutableArray<Debris>? DebrisOf(Form form, Catalogue catalogue, ImmutableArray<Debris> otherwise, ProblemList problems)
    {
        if (!form.Has(FindingKeys.Debris))
            return otherwise;
        if (!form.TryGet(FindingKeys.Debris, out string? name))
            return null;
        if (catalogue.FindDebris(name) is { } debris)
            return [debris];
        problems.Add(FamilyProblems.UnknownDebris(form.ValuePlace(FindingKeys.Debris), name, NearName.Of(name, catalogue.Debris.Select(one => one.Name)), catalogue.Debris.Select(one => one.Name)));
        return null;
    }
}
