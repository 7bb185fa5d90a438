using Contam.Families;

namespace Contam.Problems;

/// <summary>The wording of what can be wrong with a shop standard beyond the shape of its values.</summary>
internal static class StandardProblems
{
    public static Problem Placeholder(SourceSpan place, string written, bool isClosed, string? near, IEnumerable<string> names) => Wording.Error(
        ProblemCodes.UnknownPlaceholder,
        place,
        isClosed ? $"there is no placeholder {Wording.Quoted(written)}" : $"the brace {Wording.Quoted(written)} belongs to no placeholder",
        near is null ? "placeholders are " + Wording.AllOf(names.Select(name => $"{{{name}}}")) : $"did you mean `{{{near}}}`?");

    public static Problem UnknownMethod(SourceSpan place, string id, string? near) => Wording.Error(
        ProblemCodes.UnknownMethod, place, $"there is no method {Wording.Quoted(id)}", Wording.DidYouMean(near, "describe it under `methods`"));

    public static Problem RulesDiffer(SourceSpan place, string what, SourceSpan first) => Wording.Error(
        ProblemCodes.RulesDiffer,
        place,
        $"a second rule for {what} differs from that on line {Wording.Number(first.Line)}",
        "keep one of the two, or make one more specific",
        first);

    public static Problem SharesDiffer(SourceSpan place, string what, SourceSpan first) => Wording.Error(
        ProblemCodes.RulesDiffer,
        place,
        $"a second share for {what} differs from that on line {Wording.Number(first.Line)}",
        "keep one of the two, or make one more specific",
        first);

    public static Problem BuiltInDebris(SourceSpan place, string name) => Wording.Error(
        ProblemCodes.BuiltInDebris, place, $"{Wording.Quoted(name)} is built in and cannot be described anew", "give the shop's own debris another name");
}
