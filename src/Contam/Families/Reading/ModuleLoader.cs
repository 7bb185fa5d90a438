using Contam.Families.Reading.Shapes;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>Reads the modules that a family file uses, and those that they use.</summary>
internal sealed class ModuleLoader
{
    private static readonly IdShape ModuleName = new("the name of a module", "wet-sump-oil");

    private readonly ReadBudget budget;
    private readonly ProblemList problems;
    private readonly ModulePaths paths;
    private readonly Dictionary<string, Form?> formOf = new(StringComparer.Ordinal);
    private readonly List<Scope> scopes = [];
    private readonly List<(string RealPath, SourceText Source)> files = [];
    private bool isWhole = true;
    private int uses;

    private ModuleLoader(string familyPath, ReadBudget budget, ProblemList problems)
    {
        this.budget = budget;
        this.problems = problems;
        paths = new ModulePaths(familyPath);
    }

    /// <summary>
    /// The family file and every use of a module, each file before what it uses; the files in the order in which they were read, each once; and
    /// whether every module could be read. A module is read once however often it is used.
    /// </summary>
    /// <param name="family">What the family file says.</param>
    /// <param name="familyPath">Where it is; a name that can be no path stands for a file in the current folder.</param>
    /// <param name="budget">How much may still be read.</param>
    /// <param name="problems">Takes the problems.</param>
    public static (IReadOnlyList<Scope> Scopes, IReadOnlyList<(string RealPath, SourceText Source)> Files, bool IsWhole) Load(
        Form family, string familyPath, ReadBudget budget, ProblemList problems)
    {
        if (!family.Has(FamilyKeys.Use))
            return ([new Scope(null, family, null, "")], [(familyPath, family.Sheet.Source)], true);
        if (familyPath.Length == 0 || familyPath.Contains('\0', StringComparison.Ordinal))
            familyPath = "family.yaml";
        var loader = new ModuleLoader(familyPath, budget, problems);
        var file = new OpenFile(ModulePaths.Real(familyPath), family.Sheet.Source.File);
        loader.files.Add((file.RealPath, family.Sheet.Source));
        loader.Take(new Scope(null, family, null, ""), [file]);
        return (loader.scopes, loader.files, loader.isWhole);
    }

    // Calls itself as deep as modules use modules, which has a limit.
    private void Take(Scope scope, IReadOnlyList<OpenFile> open)
    {
        scopes.Add(scope);
        isWhole &= Sections.IsWhole(scope.File, FamilyKeys.Use);
        foreach (Located<Form> use in scope.File.Get(FamilyKeys.Use, []))
        {
            if (!TakeUse(scope, use.Value, open))
                return;
        }
    }

    /// <summary>Takes one use in; answers whether another may follow.</summary>
    private bool TakeUse(Scope scope, Form use, IReadOnlyList<OpenFile> open)
    {
        if (use.Locate(FamilyKeys.Module) is not Located<string> module)
        {
            isWhole = false;
            return true;
        }

        if (++uses > budget.Limits.ModuleUses)
        {
            if (uses == budget.Limits.ModuleUses + 1)
                problems.Add(ModuleProblems.TooManyUses(module.Place, budget.Limits.ModuleUses));
            isWhole = false;
            return false;
        }

        // Ids that a use with a broken prefix brings cannot be known.
        isWhole &= !use.Has(FamilyKeys.Prefix) || use.TryGet(FamilyKeys.Prefix, out _);
        if (paths.Resolve(open[^1].RealPath, open[^1].Name, module, problems) is not OpenFile file)
            isWhole = false;
        else if (IndexOf(open, (file = OrShipped(file, module.Value, open[^1])).RealPath) is int circle and >= 0)
            Miss(ModuleProblems.Circle(module.Place, [.. open.Skip(circle).Select(each => each.Name), open[circle].Name]));
        else if (scope.Depth == budget.Limits.ModuleDepth)
            Miss(ModuleProblems.TooDeep(module.Place, budget.Limits.ModuleDepth));
        else if (NearShipped(file, module.Value) is { } near)
            Miss(SheetProblems.FileMissing(module.Value, module.Place, near));
        else if (Read(file, module.Place) is Form form)
            Take(new Scope(scope, form, use, scope.Prefix + use.Get(FamilyKeys.Prefix, "")), [.. open, file]);
        else
            isWhole = false;
        return true;
    }

    /// <summary>
    /// The file itself; or, where there is none of that name, the shipped module that is named: by its name alone, or by another shipped one. What lies on
    /// disk goes first, so that a copy that was kept with a family is what is read again.
    /// </summary>
    private OpenFile OrShipped(OpenFile file, string written, OpenFile user)
    {
        bool isByName = ModuleName.IsId(written);
        bool isOfShipped = user.ShippedText is not null || ModulePaths.IsShipped(user.RealPath);
        if (budget.Shipped is not { } shipped || !(isByName || isOfShipped) || (!ModulePaths.IsShipped(file.RealPath) && Path.Exists(file.RealPath)))
            return file;
        string name = isByName ? written : Path.GetFileNameWithoutExtension(file.RealPath);
        return shipped.TextOf(name) is { } text ? file with { Name = name, ShippedText = text } : file;
    }

    /// <summary>The shipped module that was likely meant by a name that is nowhere, or <c>null</c>.</summary>
    private string? NearShipped(OpenFile file, string written)
    {
        string name = written.EndsWith(".yaml", StringComparison.Ordinal) ? Path.GetFileNameWithoutExtension(written) : written;
        if (budget.Shipped is not { } shipped || file.ShippedText is not null || Path.Exists(file.RealPath) || !ModuleName.IsId(name))
            return null;
        return shipped.Modules.Contains(name) ? name : NearName.AllOf(name, shipped.Modules, most: 1).FirstOrDefault();
    }

    private void Miss(Problem problem)
    {
        problems.Add(problem);
        isWhole = false;
    }

    private Form? Read(OpenFile file, SourceSpan askedAt)
    {
        if (formOf.TryGetValue(file.RealPath, out Form? known))
            return known;
        Form? form = null;
        SourceText? read = file.ShippedText is { } text ? SourceFile.FromText(text, file.Name, budget, problems) : SourceFile.Read(file.RealPath, file.Name, budget, askedAt, problems);
        if (read is SourceText source)
        {
            files.Add((file.RealPath, source));
            form = FileForm.Read(source, FamilyKeys.ModuleFile, budget, problems);
        }

        formOf.Add(file.RealPath, form);
        return form;
    }

    private static int IndexOf(IReadOnlyList<OpenFile> open, string realPath)
    {
        for (int i = 0; i < open.Count; i++)
        {
            if (open[i].RealPath == realPath)
                return i;
        }

        return -1;
    }
}
