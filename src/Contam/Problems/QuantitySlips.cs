using System.Globalization;
using System.Text.RegularExpressions;
using Contam.Families.Quantities;

namespace Contam.Problems;

/// <summary>What people write for a quantity out of habit: a decimal comma, a range, a fraction of an inch. Each with what to write instead.</summary>
internal static partial class QuantitySlips
{
    /// <summary>What is wrong with a text that is one of these, and what to write; <c>null</c> where it is none.</summary>
    public static (string Text, string Mend)? Of(string written, Dimension dimension)
    {
        if (Range().Match(written) is { Success: true } range)
        {
            string unit = range.Groups["unit"].Value;
            string ends = dimension == Dimension.Length
                ? $"`{range.Groups["from"].Value} {unit}` for a clearance, `{range.Groups["to"].Value} {unit}` for what passes, is held or is shed"
                : $"`{range.Groups["from"].Value} {unit}` or `{range.Groups["to"].Value} {unit}`";
            return ($"{Wording.Quoted(written)} is a range, where one figure is due", $"write the end that is worse for the engine: {ends}");
        }

        if (Fraction().Match(written) is { Success: true } fraction && TryDecimal(fraction, out decimal value))
            return ($"a fraction stands in {Wording.Quoted(written)}", $"write it with a decimal point: `{value.ToString("0.######", CultureInfo.InvariantCulture)} {fraction.Groups["unit"].Value}`");
        if (AboutThis().Match(written) is { Success: true } about)
            return ($"{Wording.Quoted(written)} does not begin with its number", $"write the number and its unit alone: `{about.Groups["figure"].Value}`; a doubt belongs in a comment behind `#`");
        return WordsBehind().Match(written) is { Success: true } words && Quantity.TryParseExactly(words.Groups["figure"].Value, dimension, out _, out _)
            ? ($"words stand behind `{words.Groups["figure"].Value}`", $"write the number and its unit alone: `{words.Groups["figure"].Value}`; what else is to be said belongs in a comment behind `#`")
            : null;
    }

    /// <summary>What to write instead of a number with a comma in it.</summary>
    public static string WithoutComma(string written)
    {
        Match comma = Comma().Match(written);
        if (!comma.Success)
            return "write a decimal point; nothing parts thousands";
        string whole = comma.Groups["whole"].Value, rest = comma.Groups["rest"].Value;
        string unit = comma.Groups["unit"].Value is { Length: > 0 } said ? " " + said : "";
        return rest.Length == 3 && whole != "0"
            ? $"write a decimal point, `{whole}.{rest}{unit}`; or, where the comma parts thousands, nothing: `{whole}{rest}{unit}`"
            : $"write a decimal point: `{whole}.{rest}{unit}`";
    }

    private static bool TryDecimal(Match fraction, out decimal value)
    {
        value = 0;
        if (!decimal.TryParse(fraction.Groups["under"].Value, CultureInfo.InvariantCulture, out decimal under) || under == 0)
            return false;
        decimal whole = fraction.Groups["whole"].Value is { Length: > 0 } said ? decimal.Parse(said, CultureInfo.InvariantCulture) : 0;
        value = whole + (decimal.Parse(fraction.Groups["over"].Value, CultureInfo.InvariantCulture) / under);
        return true;
    }

    [GeneratedRegex(@"^(?<from>\d{1,9}(\.\d{1,9})?)\s*(-|\u2013|\u2014|\.\.\.?|to)\s*(?<to>\d{1,9}(\.\d{1,9})?) ?(?<unit>\p{L}[\p{L}0-9/]*)$", RegexOptions.CultureInvariant)]
    private static partial Regex Range();

    [GeneratedRegex(@"^((?<whole>\d{1,6})[ -])?(?<over>\d{1,6})/(?<under>\d{1,6}) ?(?<unit>\p{L}[\p{L}0-9/]*|"")$", RegexOptions.CultureInvariant)]
    private static partial Regex Fraction();

    [GeneratedRegex(@"^(ca\.?|c\.|about|approx\.?|around|~|\u2248|<=?|>=?|\u2264|\u2265|max\.?|min\.?|up to|over|under) ?(?<figure>\d{1,9}(\.\d{1,9})? ?\p{L}[\p{L}0-9/]*)$", RegexOptions.CultureInvariant)]
    private static partial Regex AboutThis();

    [GeneratedRegex(@"^(?<figure>\d{1,9}(\.\d{1,9})? ?\p{L}[\p{L}0-9/]*) [^0-9].*$", RegexOptions.CultureInvariant)]
    private static partial Regex WordsBehind();

    [GeneratedRegex(@"^(?<whole>\d{1,9}),(?<rest>\d{1,9}) ?(?<unit>\p{L}[\p{L}0-9/]*)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Comma();
}
