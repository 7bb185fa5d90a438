using Contam.Families;

namespace Contam.Problems;

/// <summary>The wording of values that do not fit where they stand.</summary>
internal static class ShapeProblems
{
    public static Problem Nothing(SourceSpan place, string due) =>
        Wording.Error(ProblemCodes.Nothing, place, $"nothing is written here; {due} is due", "write a value, or leave the key out");

    public static Problem WrongShape(SourceSpan place, string due, string found, string mend) =>
        Wording.Error(ProblemCodes.WrongShape, place, $"{due} is due, got {found}", mend);

    public static Problem UnknownKey(SourceSpan place, string key, string called, string? near, IEnumerable<string> keys) => Wording.Error(
        ProblemCodes.UnknownKey, place, $"{called} has no key {Wording.Quoted(key)}", Wording.DidYouMean(near, $"it has {Wording.AllOf(keys)}"));

    public static Problem FormerKey(SourceSpan place, string key, string called, string mend) =>
        Wording.Error(ProblemCodes.UnknownKey, place, $"{called} has no key {Wording.Quoted(key)} any more", mend);

    /// <summary>A decimal comma between braces or brackets, which parts the number in two.</summary>
    public static Problem CommaInNumber(SourceSpan place, string written) => Wording.Error(
        ProblemCodes.DecimalComma, place, $"a comma stands in the number {Wording.Quoted(written)}", QuantitySlips.WithoutComma(written));

    /// <summary>Ids in a list with nothing but a space between them.</summary>
    public static Problem CommaMissing(SourceSpan place, string written, IReadOnlyList<string> words) => Wording.Error(
        ProblemCodes.BadId, place, $"a comma is missing in {Wording.Quoted(written)}", $"write {Wording.Quoted(string.Join(", ", words))}");

    /// <summary>A colon right before its value, which makes one word of the two.</summary>
    public static Problem NoSpaceAfterColon(SourceSpan place, string written) => Wording.Error(
        ProblemCodes.WrongShape, place, $"no space stands after the `:` of {Wording.Quoted(written)}", $"write {Wording.Quoted(written.Insert(written.IndexOf(':', StringComparison.Ordinal) + 1, " "))}");

    public static Problem CommaInText(SourceSpan place, string rest) => Wording.Error(
        ProblemCodes.CommaInText, place, $"a comma cuts the text off before {Wording.Quoted(rest)}", "put a text that holds a comma in quotes when it stands between braces");

    public static Problem MissingKey(SourceSpan place, string called, string key, string example) =>
        Wording.Error(ProblemCodes.MissingKey, place, $"{called} needs the key `{key}`", $"for instance `{key}: {example}`");

    public static Problem NoKey(SourceSpan place, string called, IEnumerable<string> keys) =>
        Wording.Error(ProblemCodes.MissingKey, place, $"{called} needs a key", $"give at least one of {Wording.AllOf(keys)}");

    public static Problem BadId(SourceSpan place, string written, string called, bool mayRepeat, string? mended) => Wording.Error(
        ProblemCodes.BadId,
        place,
        $"{Wording.Quoted(written)} cannot be {called}",
        written.IndexOf(" {", StringComparison.Ordinal) is int brace and > 0
            ? $"put a `:` after {Wording.Quoted(written[..brace])}"
            : Wording.DidYouMean(mended, "write a letter, then lower-case letters, digits and single hyphens" + (mayRepeat ? "; `-#` at the end for a repeated part" : "")));

    public static Problem BadPrefix(SourceSpan place, string written) => Wording.Error(
        ProblemCodes.BadId, place, $"{Wording.Quoted(written)} cannot be a prefix", "write lower-case letters and digits with a hyphen at the end, for instance `port-`");

    public static Problem BadChoice(SourceSpan place, string written, string called, IEnumerable<string> choices, string? near) => Wording.Error(
        ProblemCodes.BadChoice, place, $"{called} is {Wording.OneOf(choices)}, got {Wording.Quoted(written)}", Wording.DidYouMean(near, "write one of these words"));

    public static Problem BadFlag(SourceSpan place, string written, string otherwise)
    {
        string mend = written.ToLowerInvariant() switch
        {
            "true" or "false" when written is "true" or "false" => "take the quotes off",
            "yes" or "on" or "y" or "true" => "write `true`",
            "no" or "off" or "n" or "false" => "write `false`",
            _ => otherwise,
        };
        return Wording.Error(ProblemCodes.BadFlag, place, $"`true` or `false` is due, got {Wording.Quoted(written)}", mend);
    }

    public static Problem BadNumber(SourceSpan place, string written, string due) =>
        Wording.Error(ProblemCodes.BadNumber, place, $"{due} is due, got {Wording.Quoted(written)}", "write digits alone, without quotes");

    public static Problem BadNumberOf(SourceSpan place, string written, string unit, double most) => Wording.Error(
        ProblemCodes.BadNumber,
        place,
        $"a number of {unit} is due, got {Wording.Quoted(written)}",
        $"the key names the unit: write digits alone, without quotes, if need be with a point; at most {Wording.Number(most)}");

    public static Problem EmptyList(SourceSpan place, string called) =>
        Wording.Error(ProblemCodes.EmptyList, place, $"{called} is due, got an empty list", "write at least one, or leave the key out");

    public static Problem RunWithoutBrackets(SourceSpan place, string written) => Wording.Error(
        ProblemCodes.WrongShape, place, $"{Wording.Quoted(written)} stands among the runs, where a list of parts is due", "put each run in brackets of its own: `runs: [[a, b], [b, c]]`");

    public static Problem NeitherAllNorSize(SourceSpan place, string due, string written) => Wording.Error(
        ProblemCodes.BadChoice, place, $"{due} is due, got {Wording.Quoted(written)}", "write `all`, or a number and its unit, for instance `30 um`");

    public static Problem TwiceInList(SourceSpan place, string written, SourceSpan first) =>
        Wording.Error(ProblemCodes.TwiceInList, place, $"{Wording.Quoted(written)} stands twice in this list", "keep one of the two", first);
}
