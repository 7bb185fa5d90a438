using Contam.Families;

namespace Contam.Problems;

/// <summary>The wording of what can be wrong with findings.</summary>
internal static class FindingProblems
{
    public static Problem NothingSaid(SourceSpan place, string part) => Wording.Error(
        ProblemCodes.MissingKey,
        place,
        $"the finding at {Wording.Quoted(part)} does not say what was seen",
        "add `found: true` or `found: false`, `failed: true` where the part itself has failed, or `cannot-tell: true`");

    public static Problem SaysBoth(SourceSpan place, string part) => Wording.Error(
        ProblemCodes.KeyDoesNotApply, place, $"the finding at {Wording.Quoted(part)} says what was seen and that it cannot be told", "keep one of the two");

    public static Problem DebrisMissing(SourceSpan place, string part) => Wording.Error(
        ProblemCodes.MissingKey, place, $"the finding at {Wording.Quoted(part)} does not say which debris was found", "add the debris, for instance `debris: metal`");
}
