using System.Text.RegularExpressions;

namespace Contam.Authoring;

/// <summary>Writes texts as YAML that reads back as the same text, within brackets and braces too.</summary>
public static partial class YamlWords
{
    /// <summary>The text plain where that is safe, else in single quotes. Line breaks and tabs become spaces; characters that no file may hold are left out.</summary>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string line = Hidden().Replace(Space().Replace(text, " "), "").Trim();
        return Plain().IsMatch(line) && !line.Contains(": ", StringComparison.Ordinal) && !line.Contains(" #", StringComparison.Ordinal) && !line.EndsWith(':') && line is not ("true" or "false" or "null")
            ? line
            : "'" + line.Replace("'", "''", StringComparison.Ordinal) + "'";
    }

    /// <summary>The items in brackets.</summary>
    public static string List(IEnumerable<string> items) => $"[{string.Join(", ", items.Select(Of))}]";

    [GeneratedRegex(@"^[\p{L}\p{N}][\p{L}\p{N}\p{M} ._/()%+°µ:#;'-]*$", RegexOptions.CultureInvariant)]
    private static partial Regex Plain();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    private static partial Regex Space();

    [GeneratedRegex(@"[\p{Cc}\uFEFF\u2028\u2029\u202A-\u202E\u2066-\u2069\uFFFE\uFFFF]|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])", RegexOptions.CultureInvariant)]
    private static partial Regex Hidden();
}
