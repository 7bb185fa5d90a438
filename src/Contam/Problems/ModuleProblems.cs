using Contam.Families;

namespace Contam.Problems;

/// <summary>The wording of what can be wrong with the use of modules.</summary>
internal static class ModuleProblems
{
    public static Problem NotRelative(SourceSpan place, string written) => Wording.Error(
        ProblemCodes.ModulePath, place, $"{Wording.Quoted(written)} is not a path relative to this file", "write folders with `/` between them, for instance `modules/wet-sump-oil.yaml`");

    public static Problem Outside(SourceSpan place, string written, bool hasRoot) => Wording.Error(
        ProblemCodes.ModuleOutside,
        place,
        $"{Wording.Quoted(written)} lies outside {(hasRoot ? "the `systems` folder" : "the folder of the family file")}",
        "move the module inside it");

    public static Problem Circle(SourceSpan place, IReadOnlyList<string> files) => Wording.Error(
        ProblemCodes.ModuleCircle,
        place,
        $"these modules use each other: {string.Join(" -> ", files.Select(Wording.Quoted))}",
        "take one of the uses out");

    public static Problem TooDeep(SourceSpan place, int most) => Wording.Error(
        ProblemCodes.TooMany, place, $"modules use modules more than {Wording.Number(most)} deep", "use them from the family file");

    public static Problem TooManyUses(SourceSpan place, int most) => Wording.Error(
        ProblemCodes.TooMany, place, $"modules are used more than {Wording.Number(most)} times", "");

    public static Problem UnknownCount(SourceSpan place, string name, string? near) => Wording.Error(
        ProblemCodes.UnknownPart, place, $"the module has no repeated part {Wording.Quoted(name)}", Wording.DidYouMean(near, "name one of its parts that end in `-#`, without the `-#`"));

    public static Problem UnknownAdjust(SourceSpan place, string id, string? near) => Wording.Error(
        ProblemCodes.UnknownPart, place, $"no module brings a part {Wording.Quoted(id)}", Wording.DidYouMean(near, "name one as this file sees it, with its prefix"));

    public static Problem AdjustOwn(SourceSpan place, string id, SourceSpan described) => Wording.Error(
        ProblemCodes.AdjustOwn, place, $"{Wording.Quoted(id)} is described in this file and not brought by a module", "change it where it is described", described);
}
