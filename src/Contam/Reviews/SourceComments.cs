using Contam.Families;

namespace Contam.Reviews;

/// <summary>The comments of the files that a family was read from. A comment is what stands behind <c>#</c> outside of quotes, as in YAML.</summary>
internal sealed class SourceComments(Family family)
{
    private readonly Dictionary<string, string[]> linesOf = family.Sources
        .GroupBy(source => NameOf(source.Name), StringComparer.Ordinal)
        .Where(group => group.Count() == 1)
        .ToDictionary(group => group.Key, group => group.First().Text.Split('\n'), StringComparer.Ordinal);

    /// <summary>The comment in the line of a place; empty where there is none, or the file is not at hand.</summary>
    public string At(SourceSpan place) =>
        place.File is { } file && linesOf.TryGetValue(NameOf(file), out string[]? lines) && place.Line >= 1 && place.Line <= lines.Length ? CommentOf(lines[place.Line - 1]) : "";

    /// <summary>All comments with these words, in the order of the files.</summary>
    public IEnumerable<(string Text, SourceSpan Place)> Saying(string words)
    {
        foreach (SourceCopy source in family.Sources)
        {
            string[] lines = source.Text.Split('\n');
            for (int line = 0; line < lines.Length; line++)
            {
                string comment = CommentOf(lines[line]);
                if (comment.Contains(words, StringComparison.OrdinalIgnoreCase))
                    yield return (comment, new SourceSpan(source.Name, line + 1, 1));
            }
        }
    }

    private static string NameOf(string path) => path[(path.LastIndexOf('/') + 1)..];

    private static string CommentOf(string line)
    {
        char quote = '\0';
        for (int at = 0; at < line.Length; at++)
        {
            char one = line[at];
            if (quote != '\0')
                quote = one == quote ? '\0' : quote;
            else if (one is '"' or '\'' && (at == 0 || " [{:,".Contains(line[at - 1], StringComparison.Ordinal)))
                quote = one;
            else if (one == '#' && (at == 0 || char.IsWhiteSpace(line[at - 1])))
                return line[(at + 1)..].Trim();
        }

        return "";
    }
}
