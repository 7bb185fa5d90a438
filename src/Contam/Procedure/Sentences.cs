namespace Contam.Procedure;

/// <summary>How lists and sentences are put together, the same everywhere.</summary>
internal static class Sentences
{
    /// <summary><c>a</c>, <c>a and b</c>, <c>a, b and c</c>.</summary>
    public static string List(IEnumerable<string> words)
    {
        string[] all = [.. words];
        return all.Length switch
        {
            0 => "",
            1 => all[0],
            _ => string.Join(", ", all[..^1]) + " and " + all[^1],
        };
    }

    /// <summary>The first <paramref name="most"/> of a list, and how many more there are.</summary>
    public static string ListUpTo(int most, IReadOnlyCollection<string> words) =>
        words.Count <= most ? List(words) : string.Join(", ", words.Take(most)) + string.Create(System.Globalization.CultureInfo.InvariantCulture, $" and {words.Count - most} more");

    /// <summary>A name as it stands in the middle of a sentence: without its capital, unless it is an abbreviation.</summary>
    public static string InSentence(string name) =>
        name.Length > 1 && char.IsUpper(name[0]) && char.IsLower(name[1]) ? char.ToLowerInvariant(name[0]) + name[1..] : name;

    /// <summary>A sentence with its capital and its full stop.</summary>
    public static string Close(string text)
    {
        string trimmed = text.Trim();
        if (trimmed.Length == 0)
            return "";
        string opened = char.ToUpperInvariant(trimmed[0]) + trimmed[1..];
        return opened[^1] is '.' or '!' or '?' ? opened : opened + ".";
    }

    /// <summary>A clause for the middle of a sentence: without its full stop.</summary>
    public static string Clause(string text) => text.Trim().TrimEnd('.');
}
