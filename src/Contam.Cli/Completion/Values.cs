using System.CommandLine;
using System.CommandLine.Completions;
using Contam.Families;
using Contam.Families.Reading.Sheets;
using Contam.Reports.Text;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Cli.Completion;

/// <summary>Values that could stand at the cursor, by what the help calls them: <c>FAMILY</c>, <c>PART[,PART]</c>, <c>FILE</c>.</summary>
/// <param name="before">The words before the cursor.</param>
/// <param name="typed">What has been typed of the value.</param>
internal sealed class Values(ParseResult before, string typed)
{
    // Nobody waits at a key for a larger file than this to be read.
    private const int LargestFamily = 1_000_000;

    public IReadOnlyList<Candidate> Of(Option option) => option.CompletionSources.Count > 0 ? OneOf(Known(option), isList: option.Arity.MaximumNumberOfValues > 1) : Of(option.HelpName ?? "");

    public IReadOnlyList<Candidate> Of(Argument argument) => argument.CompletionSources.Count > 0 ? OneOf(Known(argument), isList: false) : Of(argument.HelpName ?? argument.Name);

    private IReadOnlyList<Candidate> Of(string form) => form switch
    {
        "FAMILY" => Files(FamilyFiles.IsFamily),
        "FAMILIES" or "FOLDER|FILE" => Files(FamilyFiles.IsFamily),
        "A" or "B" or "OLD" or "NEW" => [.. OneOf([new Candidate("house", "the built-in standard")], isList: false), .. Files(IsYaml)],
        "FOLDER" => Files(_ => false),
        "FILE" => Files(_ => true),
        "PART=DEBRIS" or "PART[=DEBRIS]" or "PART=DEBRIS[:SIZE][,LOOKS]" => PartThenDebris(mustGoOn: !form.Contains("[=", StringComparison.Ordinal)),
        "NAME=NUMBER" => OneOf(LimitOption.All.Select(limit => new Candidate(limit.Name + "=")), isList: false),
        "CIRCUIT" => OneOf(FromFamily(family => family.Circuits.Select(circuit => new Candidate(circuit.Name))), isList: false),
        "LIMIT" => OneOf(FromFamily(family => family.Limits.Select(limit => new Candidate(limit.Id))), isList: false),
        "DEBRIS" or "metal[,rubber]" => OneOf(Debris(), isList: form != "DEBRIS"),
        _ when form.StartsWith("PART", StringComparison.Ordinal) => OneOf(Parts(), isList: form.Contains("[,", StringComparison.Ordinal)),
        _ when form.EndsWith(".json", StringComparison.Ordinal) => Files(file => file.EndsWith(".json", StringComparison.OrdinalIgnoreCase)),
        _ => [],
    };

    private static IEnumerable<Candidate> Known(Symbol symbol) => symbol.GetCompletions(CompletionContext.Empty).Select(item => new Candidate(item.Label, Completer.FirstLine(item.Detail)));

    /// <summary>Those that begin as what is typed; in a list parted by commas, as its last word, without the words that it holds already.</summary>
    private IReadOnlyList<Candidate> OneOf(IEnumerable<Candidate> all, bool isList)
    {
        int begin = isList ? typed.LastIndexOf(',') + 1 : 0;
        string head = typed[..begin];
        string[] given = head.Split(',');
        return [.. all.Where(one => one.Word.StartsWith(typed[begin..], StringComparison.Ordinal) && !(isList && given.Contains(one.Word))).Select(one => one with { Word = head + one.Word })];
    }

    private IReadOnlyList<Candidate> PartThenDebris(bool mustGoOn)
    {
        int equals = typed.IndexOf('=', StringComparison.Ordinal);
        if (equals < 0)
            return OneOf(Parts().Select(part => mustGoOn ? part with { Word = part.Word + "=" } : part), isList: false);
        string head = typed[..(equals + 1)];
        return OneOf(Debris().Select(one => one with { Word = head + one.Word }), isList: false);
    }

    private IEnumerable<Candidate> Parts() => FromFamily(family => family.Parts.Select(part => new Candidate(part.Id.Value, TextPage.Harmless(part.Name))));

    private IEnumerable<Candidate> Debris() => Standard() is { } standard ? standard.CatalogueOf().Debris.Select(one => new Candidate(one.Name)) : [];

    /// <summary>What the family that the words before name holds; nothing where none is named, or it cannot be read.</summary>
    private IEnumerable<Candidate> FromFamily(Func<Family, IEnumerable<Candidate>> of)
    {
        if (before.CommandResult.Command.Arguments.FirstOrDefault(argument => argument.Name is "FAMILY" or "A") is not { } named
            || before.GetResult(named)?.Tokens is not [var file, ..]
            || Standard() is not { } standard
            || Quiet().Family(AtHome(file.Value), standard) is not { } family)
            return [];
        return of(family);
    }

    private ShopStandard? Standard()
    {
        string? named = before.CommandResult.Command.Options.FirstOrDefault(option => option.Name == "--standard") is { } option && before.GetResult(option)?.Tokens is [var token, ..] ? token.Value : null;
        return Quiet().Standard(named is null ? null : AtHome(named));
    }

    private static Loading Quiet() => new(new Shell(TextWriter.Null, TextWriter.Null, TextLook.Plain)) { Limits = ReadLimits.Default with { FileBytes = LargestFamily } };

    /// <summary>Folders and these files that begin as what is typed, in ordinal order; hidden ones where a dot is typed.</summary>
    private IReadOnlyList<Candidate> Files(Func<string, bool> isWanted)
    {
        int begin = Math.Max(typed.LastIndexOf('/'), typed.LastIndexOf(Path.DirectorySeparatorChar)) + 1;
        string head = typed[..begin], start = typed[begin..];
        try
        {
            var search = new EnumerationOptions { AttributesToSkip = FileAttributes.System, IgnoreInaccessible = true };
            return
            [
                .. new DirectoryInfo(head.Length == 0 ? "." : AtHome(head)).EnumerateFileSystemInfos("*", search)
                    .Where(entry => entry.Name.StartsWith(start, StringComparison.Ordinal) && (start.Length > 0 || !entry.Name.StartsWith('.')) && !entry.Name.Any(char.IsControl))
                    .OrderBy(entry => entry.Name, StringComparer.Ordinal)
                    .Where(entry => entry is DirectoryInfo || entry is FileInfo { Length: > 0 } && isWanted(entry.FullName))
                    .Select(entry => new Candidate(head + entry.Name + (entry is DirectoryInfo ? "/" : ""))),
            ];
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException or ArgumentException or System.Security.SecurityException)
        {
            return [];
        }
    }

    private static bool IsYaml(string file) => file.EndsWith(".yaml", StringComparison.Ordinal) || file.EndsWith(".yml", StringComparison.Ordinal);

    /// <summary>A path that begins in the home folder, as a shell would pass it on.</summary>
    private static string AtHome(string path) => path.StartsWith("~/", StringComparison.Ordinal) ? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), path[2..]) : path;
}
