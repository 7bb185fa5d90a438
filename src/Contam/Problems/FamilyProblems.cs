using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Problems;

/// <summary>The wording of what can be wrong with a family beyond the shape of its values.</summary>
internal static class FamilyProblems
{
    public static Problem Format(SourceSpan place, int format) => Wording.Error(
        ProblemCodes.WrongFormat, place, $"the file is of format {Wording.Number(format)}; this program reads format 1", "write `format: 1`, or use a newer version of this program");

    public static Problem UnknownKind(SourceSpan place, string name, string? near) =>
        Wording.Error(ProblemCodes.UnknownKind, place, $"there is no kind {Wording.Quoted(name)}", Wording.DidYouMean(near, "describe it in the shop standard, under `kinds`"));

    public static Problem UnknownDebris(SourceSpan place, string name, string? near, IEnumerable<string> known) =>
        Wording.Error(ProblemCodes.UnknownDebris, place, $"there is no debris {Wording.Quoted(name)}", Wording.DidYouMean(near, $"there is {Wording.AllOf(known)}; describe another in the shop standard, under `debris`"));

    public static Problem UnknownPart(SourceSpan place, string id, string? near) =>
        Wording.Error(ProblemCodes.UnknownPart, place, $"there is no part {Wording.Quoted(id)}", Wording.DidYouMean(near, "describe it under `parts`"));

    /// <summary>A number beyond how often a repeated part stands.</summary>
    public static Problem NumberBeyondCount(SourceSpan place, string id, string repeated, int count, SourceSpan described) => Wording.Error(
        ProblemCodes.UnknownPart,
        place,
        $"there is no part {Wording.Quoted(id)}: {Wording.Quoted(repeated)} stands {Times(count)}",
        $"write a number from 1 to {Wording.Number(count)}, or raise the count",
        described);

    public static Problem NotRepeated(SourceSpan place, string written, string plain, SourceSpan described) => Wording.Error(
        ProblemCodes.NotRepeated, place, $"{Wording.Quoted(plain)} is not a repeated part", $"write {Wording.Quoted(plain)} instead of {Wording.Quoted(written)}", described);

    public static Problem SealNotRepeated(SourceSpan place, string seal, string part) => Wording.Error(
        ProblemCodes.NotRepeated, place, $"{Wording.Quoted(part)} is not a repeated part, so {Wording.Quoted(seal)} has no number to put in", "write the seal without `#`");

    public static Problem UnknownCircuit(SourceSpan place, string name, string? near) => Wording.Error(
        ProblemCodes.UnknownCircuit, place, $"there is no circuit {Wording.Quoted(name)}", Wording.DidYouMean(near, "describe it under `circuits`"));

    public static Problem UnknownFluid(SourceSpan place, string id, string? near) => Wording.Error(
        ProblemCodes.UnknownFluid, place, $"there is no fluid {Wording.Quoted(id)}", Wording.DidYouMean(near, "describe it under `fluids`"));

    public static Problem DuplicateId(SourceSpan place, string what, string id, SourceSpan first) => Wording.Error(
        ProblemCodes.DuplicateId,
        place,
        $"the {what} {Wording.Quoted(id)} is described twice, first at {first}",
        "give one of the two another id",
        first);

    /// <summary>The same id from a module and from elsewhere.</summary>
    public static Problem DuplicateIdOfModule(SourceSpan place, string what, string id, SourceSpan first) => Wording.Error(
        ProblemCodes.DuplicateId,
        place,
        $"the {what} {Wording.Quoted(id)} is described twice, first at {first}",
        "give the use of the module a `prefix`, or one of the two another id",
        first);

    /// <summary>A module used twice without telling the uses apart.</summary>
    public static Problem UsedTwice(SourceSpan use, string id, SourceSpan first) => Wording.Error(
        ProblemCodes.DuplicateId,
        use,
        $"the module is used twice with nothing to tell the uses apart, so {Wording.Quoted(id)} comes twice",
        "give this use a `prefix`, or take it out",
        first);

    public static Problem UnknownLint(SourceSpan place, string code, string? near) => Wording.Error(
        ProblemCodes.UnknownLint, place, $"there is no lint {Wording.Quoted(code)}", Wording.DidYouMean(near, "write the code that stands in brackets behind the warning"));

    public static Problem CountMissing(SourceSpan place, string id) => Wording.Error(
        ProblemCodes.CountMissing, place, $"the repeated part {Wording.Quoted(id)} has no count", "say how often it stands, for instance `count: 4`");

    public static Problem CountMissingInModule(SourceSpan place, string id, SourceSpan use) => Wording.Error(
        ProblemCodes.CountMissing,
        use,
        $"the module's repeated part {Wording.Quoted(id)} has no count",
        $"say how often it stands here, for instance `counts: {{{id[..^2]}: 4}}`",
        place);

    public static Problem CountNotRepeated(SourceSpan place, string id) => Wording.Error(
        ProblemCodes.NotRepeated, place, $"{Wording.Quoted(id)} has a count but is not a repeated part", $"write the part as {Wording.Quoted(id + "-#")}, or take the count out");

    public static Problem CountTooLarge(SourceSpan place, int count, int most) => Wording.Error(
        ProblemCodes.TooMany, place, $"a part stands at most {Wording.Number(most)} times, got {Wording.Number(count)}", "lower the count");

    public static Problem TooManyParts(SourceSpan place, int most) => Wording.Error(
        ProblemCodes.TooMany, place, $"from here on there are more than {Wording.Number(most)} parts, repeats written out", "lower the counts");

    public static Problem TooManyJoints(SourceSpan place, int most) => Wording.Error(
        ProblemCodes.TooMany,
        place,
        $"from here on there are more than {Wording.Number(most)} joints, limits, seals and parts in the way, repeats written out",
        "lower the counts");

    public static Problem CountsDiffer(SourceSpan place, string left, int leftCount, string right, int rightCount, params ImmutableArray<SourceSpan> described) => Wording.Error(
        ProblemCodes.CountsDiffer,
        place,
        $"{Wording.Quoted(left)} stands {Times(leftCount)} and {Wording.Quoted(right)} {Times(rightCount)}, so they cannot go number to number",
        "make the counts equal, or name the parts one by one",
        described);

    public static Problem JoinedToItself(SourceSpan place, string id) => Wording.Error(
        ProblemCodes.JoinedToItself, place, $"{Wording.Quoted(id)} is joined to itself", "take one of the two out, or name the part that was meant");

    public static Problem NeverOpen(SourceSpan place, IEnumerable<string> when, IEnumerable<string> states) => new(
        ProblemCodes.NeverOpen,
        Severity.Warning,
        place,
        $"this link is never open: it is open when {Wording.OneOf(when)}, and the engine is only ever {Wording.OneOf(states)}",
        "change `when`, or `engine-running`, or take the link out");

    public static Problem OneOfMany(SourceSpan place, string part, string key, string written, SourceSpan described) => Wording.Error(
        ProblemCodes.NotRepeated,
        place,
        $"`{key}` names one part, and {Wording.Quoted(part)} is not a repeated part, so {Wording.Quoted(written)} does not say which",
        "name one of them by its number",
        described);

    public static Problem TogetherWithItself(SourceSpan place, string part) => Wording.Error(
        ProblemCodes.JoinedToItself, place, $"{Wording.Quoted(part)} is renewed together with itself", "name the other parts of the set; each number of a repeated part by its own id");

    public static Problem NoSize(SourceSpan place, string debris, string key) => Wording.Error(
        ProblemCodes.NoSize, place, $"{Wording.Quoted(debris)} has no size, so `{key}` does not apply", "leave it out");

    public static Problem HeldWhollyOrNot(SourceSpan place, string debris) => Wording.Error(
        ProblemCodes.NoSize, place, $"{Wording.Quoted(debris)} has no size: it is held back wholly or not at all", "write `all`, or leave it out");

    public static Problem TemperatureTwice(SourceSpan place, SourceSpan first) => Wording.Error(
        ProblemCodes.TemperatureTwice, place, $"this is the same temperature as on line {Wording.Number(first.Line)}, column {Wording.Number(first.Column)}", "keep one of the two", first);

    public static Problem FluidsDiffer(SourceSpan place, string circuit, string fluid, string other, SourceSpan first) => Wording.Error(
        ProblemCodes.FluidsDiffer,
        place,
        $"the fluid of the circuit {Wording.Quoted(circuit)} is {Wording.Quoted(fluid)} here and {Wording.Quoted(other)} at {first}",
        "say it in one place",
        first);

    public static Problem BadThreshold(SourceSpan place, string written, string example) => Wording.Error(
        ProblemCodes.BadThreshold, place, $"`<=`, `<`, `>=` or `>` and a value are due, got {Wording.Quoted(written)}", $"for instance `{example}`");

    public static Problem BadCleanliness(SourceSpan place, string written) => Wording.Error(
        ProblemCodes.BadThreshold, place, $"a cleanliness code is due, got {Wording.Quoted(written)}", "write three numbers from 0 to 28 that do not rise, for instance `18/16/13`");

    public static Problem LimitsOverlap(SourceSpan place, string good, string reject, SourceSpan goodPlace) => Wording.Error(
        ProblemCodes.LimitsOverlap,
        place,
        $"a reading could be good ({Wording.Quoted(good)}) and rejected ({Wording.Quoted(reject)}) at once",
        "let the two run in opposite ways and not overlap",
        goodPlace);

    public static Problem NotAHold(SourceSpan place, string key) => Wording.Error(
        ProblemCodes.KeyDoesNotApply, place, $"`{key}` belongs to a pressure-drop or vacuum-drop alone", "take it out");

    private static string Times(int count) => count == 1 ? "once" : Wording.Number(count) + " times";
}
