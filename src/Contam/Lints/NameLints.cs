using Contam.Families;
using Contam.Problems;

namespace Contam.Lints;

/// <summary>Finds parts that may be one part described twice: their ids or names differ in nothing but the order of words, an <c>s</c> or a letter.</summary>
internal static class NameLints
{
    /// <summary>Words shorter than this differ in a letter without being slips (<c>port</c>, <c>part</c>).</summary>
    private const int ShortestSlip = 5;

    /// <summary>Of several that are alike, so many are compared with one another; no person calls more parts the same by mistake.</summary>
    private const int MostAlike = 20;

    /// <summary>
    /// Each pair is told once, at the part that stands later. Parts of one repeat, and ids that differ in a number or a single letter that counts
    /// (<c>hose-a</c>, <c>hose-b</c>), are not alike. Cost: the length of all ids and names, and the square of at most twenty alike.
    /// </summary>
    public static void Look(Family family, LintSink sink)
    {
        Part[] parts = [.. family.Parts.Where(part => part.RepeatIndex <= 1)];
        var told = new HashSet<(int, int)>();
        foreach (IGrouping<string, int> alike in Enumerable.Range(0, parts.Length).SelectMany(part => KeysOf(parts[part]).Select(key => (Key: key, Part: part)))
            .GroupBy(one => one.Key, one => one.Part, StringComparer.Ordinal))
        {
            int[] group = [.. alike.Distinct().Take(MostAlike)];
            for (int later = 1; later < group.Length; later++)
            {
                for (int earlier = 0; earlier < later; earlier++)
                {
                    (Part one, Part other) = (parts[group[earlier]], parts[group[later]]);
                    if (AreAlike(one, other) && told.Add((group[earlier], group[later])))
                        sink.At(LintCodes.NamesAlike, other, _ => LintProblems.NamesAlike(other.Place, IdOf(other), IdOf(one), one.Place));
                }
            }
        }
    }

    /// <summary>What two alike parts have in common: the words of the id, those of the name, or the id with one letter left out.</summary>
    private static IEnumerable<string> KeysOf(Part part)
    {
        string id = BaseOf(part);
        yield return "words " + SortedWords(id);
        yield return "words " + SortedWords(NameOf(part));
        yield return "slip " + id;
        for (int i = 0; i < id.Length; i++)
        {
            if (char.IsAsciiLetter(id[i]))
                yield return $"slip {id[..i]}{id[(i + 1)..]}";
        }
    }

    private static bool AreAlike(Part one, Part other)
    {
        if (SortedWords(NameOf(one)) == SortedWords(NameOf(other)) || SortedWords(BaseOf(one)) == SortedWords(BaseOf(other)))
            return true;
        // A slip of the pen keeps the kind; an intake and an outtake of different kinds are different parts.
        if (one.Kind.Name != other.Kind.Name)
            return false;
        string[] words = BaseOf(one).Split('-');
        string[] otherWords = BaseOf(other).Split('-');
        if (words.Length != otherWords.Length)
            return false;
        int[] differing = [.. Enumerable.Range(0, words.Length).Where(word => words[word] != otherWords[word])];
        return differing.Length == 1 && IsSlip(words[differing[0]], otherWords[differing[0]]);
    }

    private static bool IsSlip(string word, string other)
    {
        if (Math.Min(word.Length, other.Length) < ShortestSlip || !word.All(char.IsAsciiLetter) || !other.All(char.IsAsciiLetter))
            return false;
        int start = 0;
        while (start < word.Length && start < other.Length && word[start] == other[start])
            start++;
        int end = 0;
        while (end < word.Length - start && end < other.Length - start && word[^(end + 1)] == other[^(end + 1)])
            end++;
        (int left, int leftOther) = (word.Length - start - end, other.Length - start - end);
        bool isSwap = left == 2 && leftOther == 2 && word[start] == other[start + 1] && word[start + 1] == other[start];
        return Math.Max(left, leftOther) == 1 || isSwap;
    }

    private static string SortedWords(string text) => string.Join(
        ' ',
        text.ToLowerInvariant().Split([' ', '-', '_', ',', '.', '(', ')', '/'], StringSplitOptions.RemoveEmptyEntries)
            .Select(word => word.Length > 3 && word[^1] == 's' && word[^2] != 's' ? word[..^1] : word)
            .Order(StringComparer.Ordinal));

    private static string BaseOf(Part part) => part.RepeatOf ?? part.Id.Value;

    private static string IdOf(Part part) => part.RepeatOf is { } repeat ? repeat + "-#" : part.Id.Value;

    // A repeated part's name ends in its number.
    private static string NameOf(Part part) => part.RepeatOf is null ? part.Name : part.Name[..part.Name.LastIndexOf(' ')];
}
