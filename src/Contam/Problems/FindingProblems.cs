using Contam.Families;

namespace Contam.Problems;

/// <summary>The wording of what can be wrong with findings.</summary>
internal static class FindingProblems
{
    public static Problem NothingSaid(SourceSpan place, string part) => Wording.Error(
        ProblemCodes.MissingKey,
        place,
        $"the finding at {Wording.Quoted(part)} does not say what was seen",
        "add `found: true` or `found: false`, or `failed: true` where the part itself has failed");

    public static Problem DebrisMissing(SourceSpan place, string part) => Wording.Error(
        ProblemCodes.MissingKey, place, $"the finding at {Wording.Quoted(part)} does not say which debris was found", "add the debris, for instance `debris: metal`");
}
