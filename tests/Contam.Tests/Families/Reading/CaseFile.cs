namespace Contam.Tests.Families.Reading;

/// <summary>
/// A page of cases as text: <c>== name</c> begins a case, <c>--- file</c> a file in it, <c>--- told</c> what is told of it, one problem a line.
/// <c>--- family</c> is <c>f.yaml</c> with its first two lines written for it, <c>--- standard</c> likewise <c>s.yaml</c>; the first file is the one that is read.
/// In files <c>⇥</c> is a tab, <c>␍</c> a carriage return, <c>␀</c> a NUL, <c>␇</c> a bell, <c>␠</c> a space at a line's end, <c>␤</c> a line separator, <c>⇄</c> a turn of the writing direction.
/// </summary>
internal sealed record Case(string Name, IReadOnlyList<(string File, string Text)> Files, string Told)
{
    public bool IsStandard => Files[0].File == "s.yaml";
}

internal static class CaseFile
{
    /// <summary>Set to write what is told into the pages instead of comparing it; never in a pipeline.</summary>
    public static bool IsUpdating => Environment.GetEnvironmentVariable("CONTAM_UPDATE_CASES") == "1";

    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    public static string PathOf(string page) => Path.Combine(Root, "tests", "Contam.Tests", page);

    public static IReadOnlyList<Case> Read(string page)
    {
        var cases = new List<Case>();
        foreach (string text in File.ReadAllText(PathOf(page)).Split("\n== ").Skip(1))
        {
            string[] sections = text.Split("\n--- ");
            var files = new List<(string, string)>();
            string told = "";
            foreach (string section in sections.Skip(1))
            {
                int end = section.IndexOf('\n', StringComparison.Ordinal);
                (string head, string body) = end < 0 ? (section, "") : (section[..end], section[(end + 1)..]);
                if (head == "told")
                    told = body.TrimEnd('\n');
                else if (head == "family")
                    files.Add(("f.yaml", "format: 1\nfamily: f\n" + Unescaped(body)));
                else if (head == "standard")
                    files.Add(("s.yaml", "format: 1\nstandard: s\n" + Unescaped(body)));
                else
                    files.Add((head, Unescaped(body)));
            }

            cases.Add(new Case(sections[0].Trim(), files, told));
        }

        return cases;
    }

    /// <summary>Writes what is told of a case into its page.</summary>
    public static void Update(string page, string name, string told)
    {
        string all = File.ReadAllText(PathOf(page));
        int start = all.IndexOf($"\n== {name}\n", StringComparison.Ordinal);
        int next = all.IndexOf("\n== ", start + 1, StringComparison.Ordinal);
        string one = next < 0 ? all[start..] : all[start..next];
        int mark = one.IndexOf("\n--- told", StringComparison.Ordinal);
        string files = (mark < 0 ? one : one[..mark]).TrimEnd('\n');
        string updated = files + "\n--- told\n" + (told.Length == 0 ? "" : told + "\n");
        File.WriteAllText(PathOf(page), all[..start] + updated + (next < 0 ? "" : all[next..]));
    }

    private static string Unescaped(string text) => text
        .Replace('⇥', '\t').Replace('␍', '\r').Replace('␀', '\0').Replace('␇', '\u0007').Replace('␠', ' ').Replace('␤', '\u2028').Replace('⇄', '\u202E');

    private static string FindRoot()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Contam.sln")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("the tests do not run inside the repository");
    }
}
