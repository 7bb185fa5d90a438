using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>
/// Where modules are, and where they may be: in the nearest folder called <c>systems</c> around the family file, or, where there is none, in the
/// family file's own folder and in a folder <c>modules</c> beside that, which is no link. Links are followed before that is judged.
/// </summary>
internal sealed class ModulePaths
{
    private const int MostLinks = 40;
    private const int LongestPath = 1000;
    private const string ShippedRoot = "files that come with contam";
    private readonly string root;
    private readonly string? modulesBeside;
    private readonly bool hasSystemsRoot;

    /// <summary>For modules of this family file.</summary>
    public ModulePaths(string familyPath)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(familyPath)) ?? Path.GetFullPath(familyPath);
        string? systems = folder;
        while (systems is not null && Path.GetFileName(systems) != "systems")
            systems = Path.GetDirectoryName(systems);
        hasSystemsRoot = systems is not null;
        root = Real(systems ?? folder);
        if (!hasSystemsRoot && Path.GetDirectoryName(root) is { } above && Path.Combine(above, "modules") is var beside && Directory.Exists(beside) && Real(beside) == beside)
            modulesBeside = beside;
    }

    /// <summary>Where a family that comes with the program is taken to be: in a folder that no disk has, laid out as the repository is.</summary>
    public static string ShippedPath(string family) => Path.GetFullPath(Path.Combine("/", ShippedRoot, "systems", "families", family + ".yaml"));

    /// <summary>Whether a file is one that comes with the program, by where it is.</summary>
    public static bool IsShipped(string realPath) => realPath.Contains(Path.DirectorySeparatorChar + ShippedRoot + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    /// <summary>The file that a use names, or <c>null</c> after a problem was raised.</summary>
    /// <param name="userPath">Where the file that uses it is.</param>
    /// <param name="userName">That file's name in places.</param>
    /// <param name="module">The module as written.</param>
    /// <param name="problems">Takes the problems.</param>
    public OpenFile? Resolve(string userPath, string userName, Located<string> module, ProblemList problems)
    {
        string written = module.Value;
        bool isRelative = written.Length is > 0 and <= LongestPath && !written.Contains('\\', StringComparison.Ordinal) && !Path.IsPathRooted(written)
            && !written.Contains(':', StringComparison.Ordinal) && written.AsSpan().IndexOfAnyInRange('\0', '\u001F') < 0;
        if (!isRelative)
        {
            problems.Add(ModuleProblems.NotRelative(module.Place, written));
            return null;
        }

        string path = Real(Path.GetFullPath(Path.Combine(Path.GetDirectoryName(userPath)!, written)));
        if (path != root && !IsIn(root, path) && !(modulesBeside is not null && IsIn(modulesBeside, path)))
        {
            problems.Add(ModuleProblems.Outside(module.Place, written, hasSystemsRoot));
            return null;
        }

        return new OpenFile(path, NameOf(userName, written));
    }

    private static bool IsIn(string folder, string path) => path.StartsWith(Path.TrimEndingDirectorySeparator(folder) + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    /// <summary>A path with every link on it followed. What cannot be looked at is left as it is; reading it will tell.</summary>
    public static string Real(string path)
    {
        string full = Path.GetFullPath(path);
        string drive = Path.GetPathRoot(full) ?? "";
        var due = new Stack<string>(full[drive.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).Reverse());
        string real = drive;
        int links = 0;
        while (due.TryPop(out string? step))
        {
            string next = Path.Combine(real, step);
            if (links < MostLinks && LinkTarget(next) is string target)
            {
                links++;
                string followed = Path.GetFullPath(Path.Combine(real, target));
                real = Path.GetPathRoot(followed) ?? "";
                foreach (string part in followed[real.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).Reverse())
                    due.Push(part);
            }
            else
            {
                real = next;
            }
        }

        return real;
    }

    /// <summary>A file as seen from another's folder, with <c>/</c> between folders; both by where they really are.</summary>
    public static string Relative(string fromFile, string file) =>
        Path.GetRelativePath(Path.GetDirectoryName(fromFile)!, file).Replace(Path.DirectorySeparatorChar, '/');

    private static string? LinkTarget(string path)
    {
        try
        {
            return new FileInfo(path).LinkTarget;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>The name of a module in places: relative to where the person named the family file, with steps up taken out.</summary>
    private static string NameOf(string userName, string written)
    {
        var steps = new List<string>();
        int slash = userName.LastIndexOf('/');
        string start = userName.StartsWith('/') ? "/" : "";
        string joined = (slash < 0 ? "" : userName[..(slash + 1)]) + written;
        foreach (string step in joined.Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            if (step == ".")
                continue;
            if (step == ".." && steps.Count > 0 && steps[^1] != "..")
                steps.RemoveAt(steps.Count - 1);
            else
                steps.Add(step);
        }

        return start + string.Join('/', steps);
    }
}
