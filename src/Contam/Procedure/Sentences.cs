using System.Globalization;
using Contam.Families;

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
        words.Count <= most ? List(words) : string.Join(", ", words.Take(most)) + string.Create(CultureInfo.InvariantCulture, $" and {words.Count - most} more");

    /// <summary>The names of parts as they stand in a sentence, neighbours that differ only in their number folded: <c>rail, injector 1–4 and cylinder 2</c>.</summary>
    public static string Names(IEnumerable<Part> parts) => List(FoldedNames(parts));

    /// <summary>The same as a list of words.</summary>
    public static IReadOnlyList<string> FoldedNames(IEnumerable<Part> parts)
    {
        var names = new List<string>();
        Part? first = null;
        Part? last = null;
        foreach (Part part in parts)
        {
            if (last is { RepeatOf: not null } && part.RepeatOf == last.RepeatOf && part.RepeatIndex == last.RepeatIndex + 1)
            {
                last = part;
                continue;
            }

            Close();
            first = last = part;
        }

        Close();
        return names;

        void Close()
        {
            if (first is null || last is null)
                return;
            string number = last.RepeatIndex.ToString(CultureInfo.InvariantCulture);
            names.Add(ReferenceEquals(first, last) ? InSentence(first.Name) : Plural(InSentence(first.Name)) + "–" + number);
        }
    }

    /// <summary>A name with its number, for several: <c>injector 1</c> to <c>injectors 1</c>, <c>bearing of the shaft 1</c> to <c>bearings of the shaft 1</c>.</summary>
    public static string Plural(string name)
    {
        int number = name.LastIndexOf(' ');
        if (number < 0 || !name.AsSpan(number + 1).ContainsAnyInRange('0', '9'))
            return name;
        string words = name[..number];
        int end = Prepositions.Select(preposition => words.IndexOf(preposition, StringComparison.Ordinal)).Where(at => at > 0).DefaultIfEmpty(words.Length).Min();
        string noun = words[..end];
        string plural = noun switch
        {
            [.., 's' or 'x'] => noun + "es",
            [.., 'c' or 's', 'h'] => noun + "es",
            [.., 'y'] when !"aeiou".Contains(noun[^2], StringComparison.Ordinal) => noun[..^1] + "ies",
            _ => noun + "s",
        };
        return plural + words[end..] + name[number..];
    }

    private static readonly string[] Prepositions = [" of ", " for ", " to ", " from ", " in ", " on ", " at ", " with ", " under "];

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

    /// <summary>A clause for the middle of a sentence: without its full stop, and without the word that comes before it where somebody wrote that too.</summary>
    public static string Clause(string text, string wordBefore = "")
    {
        string clause = text.Trim().TrimEnd('.');
        return wordBefore.Length > 0 && clause.StartsWith(wordBefore + " ", StringComparison.OrdinalIgnoreCase) ? clause[(wordBefore.Length + 1)..].TrimStart() : clause;
    }
}
