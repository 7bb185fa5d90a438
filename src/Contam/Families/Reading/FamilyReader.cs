using System.Collections.Immutable;
using Contam.Families.Reading.Shapes;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>
/// Reads family files with their modules. Every problem of all files is told in one go. Takes the file of a hostile stranger: it answers with
/// problems, never with an exception, and costs no more than its limits allow.
/// </summary>
public static class FamilyReader
{
    /// <summary>Reads a family file and its modules from disk.</summary>
    /// <param name="path">Where it is; places bear this name, with <c>/</c> between folders.</param>
    /// <param name="catalogue">The kinds and debris that it may name.</param>
    /// <param name="limits">How much is taken in; <c>null</c> for the defaults.</param>
    /// <param name="shipped">Modules that may be used by their name alone where no file bears it; <c>null</c> for none.</param>
    /// <returns>The family, or what is wrong. Where the file itself cannot be had, that one problem has no place.</returns>
    public static Outcome<Family> ReadFile(string path, Catalogue catalogue, ReadLimits? limits = null, IShippedFiles? shipped = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(catalogue);
        var budget = new ReadBudget(limits ?? ReadLimits.Default) { Shipped = shipped };
        var problems = new ProblemList(budget.Limits.Problems);
        SourceText? source = SourceFile.Read(path, SourceFile.NameOf(path), budget, null, problems);
        return Read(source, path, catalogue, budget, problems);
    }

    /// <summary>Reads a family that comes with the program, all its modules too; nothing is read from disk.</summary>
    /// <param name="name">Its name, which places bear.</param>
    /// <param name="text">Its text.</param>
    /// <param name="catalogue">The kinds and debris that it may name.</param>
    /// <param name="shipped">Its modules.</param>
    /// <param name="limits">How much is taken in; <c>null</c> for the defaults.</param>
    public static Outcome<Family> ReadShipped(string name, string text, Catalogue catalogue, IShippedFiles shipped, ReadLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(catalogue);
        ArgumentNullException.ThrowIfNull(shipped);
        var budget = new ReadBudget(limits ?? ReadLimits.Default) { Shipped = shipped };
        var problems = new ProblemList(budget.Limits.Problems);
        return Read(SourceFile.FromText(text, name, budget, problems), ModulePaths.ShippedPath(name), catalogue, budget, problems);
    }

    /// <summary>Reads a family from a text. Modules that it uses are read from disk.</summary>
    /// <param name="text">The text.</param>
    /// <param name="fileName">The name that places bear; modules are looked for relative to it.</param>
    /// <param name="catalogue">The kinds and debris that it may name.</param>
    /// <param name="limits">How much is taken in; <c>null</c> for the defaults.</param>
    /// <param name="shipped">Modules that may be used by their name alone where no file bears it; <c>null</c> for none.</param>
    public static Outcome<Family> ReadText(string text, string fileName, Catalogue catalogue, ReadLimits? limits = null, IShippedFiles? shipped = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(catalogue);
        var budget = new ReadBudget(limits ?? ReadLimits.Default) { Shipped = shipped };
        var problems = new ProblemList(budget.Limits.Problems);
        SourceText? source = SourceFile.FromText(text, SourceFile.NameOf(fileName), budget, problems);
        return Read(source, fileName, catalogue, budget, problems);
    }

    /// <summary>
    /// What is wrong with a module, read for itself and with the modules that it uses. Ids that it does not bring may be those of a family that
    /// uses it, so they are not told.
    /// </summary>
    /// <param name="path">Where it is; places bear this name, with <c>/</c> between folders.</param>
    /// <param name="catalogue">The kinds and debris that it may name.</param>
    /// <param name="limits">How much is taken in; <c>null</c> for the defaults.</param>
    /// <param name="shipped">Modules that may be used by their name alone where no file bears it; <c>null</c> for none.</param>
    public static ImmutableArray<Problem> CheckModule(string path, Catalogue catalogue, ReadLimits? limits = null, IShippedFiles? shipped = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(catalogue);
        var budget = new ReadBudget(limits ?? ReadLimits.Default) { Shipped = shipped };
        var problems = new ProblemList(budget.Limits.Problems);
        if (SourceFile.Read(path, SourceFile.NameOf(path), budget, null, problems) is SourceText source
            && FileForm.Read(source, FamilyKeys.ModuleFile, budget, problems) is Form form)
            Assemble(form, path, catalogue, budget, problems, isAll: false);
        return problems.ToSorted();
    }

    private static Outcome<Family> Read(SourceText? source, string path, Catalogue catalogue, ReadBudget budget, ProblemList problems)
    {
        Family? family = null;
        if (source is not null && FileForm.Read(source, FamilyKeys.FamilyFile, budget, problems) is Form form)
            family = Assemble(form, path, catalogue, budget, problems);
        return new Outcome<Family>(problems.HasErrors ? null : family, problems.ToSorted());
    }

    private static Family? Assemble(Form form, string path, Catalogue catalogue, ReadBudget budget, ProblemList problems, bool isAll = true)
    {
        (IReadOnlyList<Scope> scopes, IReadOnlyList<(string RealPath, SourceText Source)> files, bool isWhole) = ModuleLoader.Load(form, path, budget, problems);
        isWhole &= isAll;
        EngineStates states = StatesOf(scopes);
        (ImmutableArray<Part> parts, JointDrafts joints, FluidTable fluids, ImmutableArray<Limit> limits) = Described(scopes, isWhole, catalogue, states, budget.Limits, problems);
        if (problems.HasErrors)
            return null;

        return new Family(form.Get(FamilyKeys.Family, ""), parts, joints.Circuits(parts), joints.Joints(parts))
        {
            Title = form.Get(FamilyKeys.Title, ""),
            About = form.Get(FamilyKeys.About, ""),
            Sha256 = HashOf(files),
            File = form.Sheet.Source.File,
            Sources = [.. files.Select((file, index) => new SourceCopy(index == 0 ? Path.GetFileName(files[0].RealPath) : ModulePaths.Relative(files[0].RealPath, file.RealPath), file.Source.Whole))],
            Machine = form.Get(FamilyKeys.Machine, Machine.Engine),
            States = states,
            Fluids = fluids.Fluids,
            Limits = limits,
        };
    }

    // For itself, so that the table of parts is let go of before the joints are made.
    private static (ImmutableArray<Part> Parts, JointDrafts Joints, FluidTable Fluids, ImmutableArray<Limit> Limits) Described(
        IReadOnlyList<Scope> scopes, bool isWhole, Catalogue catalogue, EngineStates states, ReadLimits limits, ProblemList problems)
    {
        var allowance = new Allowance(limits, problems);
        var duplicates = new Duplicates(problems);
        PartTable table = PartTable.Of(scopes, isWhole, limits, duplicates, problems);
        ImmutableArray<Part> parts = new PartBuilder(table, catalogue, allowance, problems).Build();
        parts = TogetherSets.Joined(parts);
        OrderCircles.Raise(parts, problems);
        FluidTable fluids = FluidTable.Of(scopes, isWhole, duplicates, problems);
        JointDrafts joints = JointBuilder.Read(scopes, isWhole, table, fluids, states, allowance, problems);
        return (parts, joints, fluids, new LimitBuilder(table, allowance, duplicates, problems).Build(scopes));
    }

    /// <summary>
    /// What the family file says; where it says nothing, every state that some module says, since fewer states would hide joints; else all.
    /// </summary>
    private static EngineStates StatesOf(IReadOnlyList<Scope> scopes)
    {
        EngineStates said = EngineStates.None;
        foreach (Scope scope in scopes)
        {
            said |= EngineStateWords.Union(scope.File.Get(FamilyKeys.EngineRunning, []));
            if (scope.Parent is null && said != EngineStates.None)
                return said;
        }

        return said == EngineStates.None ? EngineStates.All : said;
    }

    /// <summary>The one file's hash, or that of the list of every file's hash and its path relative to the family file.</summary>
    private static string HashOf(IReadOnlyList<(string RealPath, SourceText Source)> files) => files.Count == 1
        ? files[0].Source.Sha256
        : SourceText.HashOf(string.Concat(files.Select(file => $"{file.Source.Sha256}  {ModulePaths.Relative(files[0].RealPath, file.RealPath)}\n")));
}
