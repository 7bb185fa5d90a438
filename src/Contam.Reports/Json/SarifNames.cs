using Contam.Problems;

namespace Contam.Reports.Json;

/// <summary>How files are called in a log that leaves the machine: never from its root.</summary>
internal sealed class SarifNames
{
    private readonly string folder;
    private readonly List<(string Named, string Shown)> rooted = [];

    public SarifNames(IEnumerable<Problem> problems, string folder)
    {
        this.folder = folder.Replace('\\', '/').TrimEnd('/') + "/";
        IEnumerable<string> files = problems.SelectMany(problem => problem.Related.Select(place => place.File).Append(problem.Place?.File ?? ""));
        // The longest first, so that no name is taken for the beginning of another.
        foreach (string file in files.Distinct(StringComparer.Ordinal).Where(IsRooted).OrderByDescending(file => file.Length).ThenBy(file => file, StringComparer.Ordinal))
            rooted.Add((file, NameOf(file)));
    }

    /// <summary>The file as a relative URI, every segment escaped.</summary>
    public string UriOf(string file) => string.Join('/', NameOf(file.Replace('\\', '/')).Split('/').Select(Uri.EscapeDataString));

    /// <summary>A text about a problem with every file that it names shown as in the log.</summary>
    public string Shown(Problem problem, string text)
    {
        foreach ((string named, string shown) in rooted)
            text = text.Replace(named, shown, StringComparison.Ordinal);
        // A file that could not be read has no place; its message quotes what was typed, cut where it is long.
        return problem.Place is null ? string.Join('`', text.Split('`').Select(piece => !IsRooted(piece) ? piece : piece.EndsWith('…') ? "…" : NameOf(piece))) : text;
    }

    private string NameOf(string file)
    {
        if (!IsRooted(file))
            return file;
        return folder.Length > 1 && file.StartsWith(folder, StringComparison.Ordinal) ? file[folder.Length..] : file[(file.LastIndexOf('/') + 1)..];
    }

    private static bool IsRooted(string file) => file.StartsWith('/') || (file.Length > 2 && char.IsAsciiLetter(file[0]) && file[1] == ':' && file[2] is '/' or '\\');
}
