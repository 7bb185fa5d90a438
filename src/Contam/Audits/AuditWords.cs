using Contam.Families;
using Contam.Problems;

namespace Contam.Audits;

/// <summary>The wording of what an audit sees.</summary>
internal static class AuditWords
{
    public static AuditMessage PlanRefused(Family family, Part part, Debris debris, string where) => Say(
        AuditCodes.PlanRefused, family, $"{part.Id.Value} {debris.Name}", part.Place, $"the plan for {debris.Name} from {Wording.Quoted(part.Id.Value)} is refused: {where}", "do not work by it, and report it as a fault of contam with the family file");

    public static AuditMessage NoRule(Family family, Part part, string name, string[] debris) => Say(
        AuditCodes.NoRule, family, name, part.Place,
        $"{Wording.AllOf(debris)} {(debris.Length == 1 ? "reaches" : "reach")} {Wording.Quoted(name)}, and the standard has no rule for the kind {Wording.Quoted(part.Kind.Name)}",
        "write a rule for it in the shop's standard");

    public static AuditMessage GeneralRule(Family family, Part part, string name, string[] debris) => Say(
        AuditCodes.GeneralRule, family, name, part.Place,
        $"{Wording.AllOf(debris)} {(debris.Length == 1 ? "reaches" : "reach")} {Wording.Quoted(name)}, and only a rule for the debris at large fits the kind {Wording.Quoted(part.Kind.Name)}",
        "write a rule for the kind");

    public static AuditMessage NoWayIn(Family family, Part part, string name) => Say(
        AuditCodes.NoWayIn, family, name, part.Place, $"nothing leads into {Wording.Quoted(name)}, and nothing ever reaches it", "write the run or link by which fluid comes to it");

    public static AuditMessage NeverReached(Family family, Part part, string name) => Say(
        AuditCodes.NeverReached, family, name, part.Place, $"no failure of another part carries anything to {Wording.Quoted(name)}", "see that no joint is forgotten, and no part before it that sheds");

    public static AuditMessage CriticalWithoutProof(Family family, Part part, string name, string[] debris) => Say(
        AuditCodes.CriticalWithoutProof, family, name, part.Place,
        $"{Wording.Quoted(name)} is critical, and nothing shows it to be well after {Wording.OneOf(debris)}",
        "write a rule that tests or replaces it, a limit that is measured at it, or a look that shows well");

    public static AuditMessage NoLookBefore(Family family, Part part, string name, string[] failures) => Say(
        AuditCodes.NoLookBefore, family, name, part.Place,
        $"{Wording.Quoted(name)} is exposed by {failures[0]} {(failures[0] == "1" ? "failure" : "failures")}, and before none is there a place to look that would spare it",
        "give it, or what leads to it, an `inspect` that shows well");

    public static AuditMessage ReachesMost(Family family, Part part, string name, Debris debris, string reached) => Say(
        AuditCodes.ReachesMost, family, $"{name} {debris.Name}", part.Place,
        $"{debris.Name} from {Wording.Quoted(name)} reaches {reached} of {Wording.Number(family.Parts.Length)} parts", "");

    public static AuditMessage StepWithoutTime(Family family, Part part, string name, string[] actions) => Say(
        AuditCodes.StepWithoutTime, family, name, part.Place,
        $"nobody says how long it takes to {Wording.AllOf(actions)} {Wording.Quoted(name)}", "write `minutes` at the part or its kind, or the `days` that it is sent out");

    public static string Word(StepAction action) => action == StepAction.SendOut ? "send out" : action.ToString().ToLowerInvariant();

    public static AuditMessage Say(string code, Family? family, string about, SourceSpan? place, string text, string mend) =>
        new(AuditCodes.Of(code).Severity, code, family?.Id, about, place, text, mend);
}
