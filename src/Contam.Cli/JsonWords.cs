using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Contam.Reports.Text;

namespace Contam.Cli;

/// <summary>What is wrong with a JSON text, in words for whoever has the file: line and key, and nothing of how the program is built.</summary>
internal static partial class JsonWords
{
    /// <summary>A clause without a full stop.</summary>
    public static string Of(Exception fault)
    {
        string message = Tail().Replace(fault.Message, "").TrimEnd(' ', '.');
        if (fault is not JsonException json)
            return TextPage.Harmless(message);
        string where = json.LineNumber is { } line ? string.Create(CultureInfo.InvariantCulture, $"line {line + 1}{(json.Path is { Length: > 2 } path ? $", at {path[2..]}" : "")}: ") : "";
        return TextPage.Harmless(where + Said(message));
    }

    private static string Said(string message)
    {
        if (message.Contains("missing required properties", StringComparison.Ordinal))
            return Named().Matches(message) is { Count: > 1 } names ? $"{names[^1].Groups["name"].Value} is missing" : "something that must be there is missing";
        if (message.Contains("could not be mapped", StringComparison.Ordinal))
            return Named().Match(message) is { Success: true } stranger ? $"{stranger.Groups["name"].Value} is not known there" : "a key is not known there";
        return message.Contains("Contam.", StringComparison.Ordinal) || message.Contains("System.", StringComparison.Ordinal) || message.Contains(".NET", StringComparison.Ordinal)
            ? "the value is not of the form that is due there"
            : message;
    }

    [GeneratedRegex(@"\s*(Path: \$\S*\s*\|\s*)?LineNumber: \d+ \| BytePositionInLine: \d+\.?\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Tail();

    [GeneratedRegex("'(?<name>[^']{1,80})'", RegexOptions.CultureInvariant)]
    private static partial Regex Named();
}
