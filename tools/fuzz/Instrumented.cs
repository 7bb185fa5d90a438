namespace Contam.Fuzz;

/// <summary>A copy of this program whose readers count the branches that they take.</summary>
internal static class Instrumented
{
    private static readonly string[] Seen = ["Contam.Families.", "Contam.Problems.", "Contam.Treatment.Reading."];

    /// <summary>Makes the copy in a folder beside this program, and answers with the folder.</summary>
    public static string Copy()
    {
        string from = AppContext.BaseDirectory;
        string to = Path.Combine(from, "instrumented");
        if (Directory.Exists(to))
            Directory.Delete(to, recursive: true);
        Directory.CreateDirectory(to);
        foreach (string file in Directory.EnumerateFiles(from))
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
        SharpFuzz.Fuzzer.Instrument(Path.Combine(to, "Contam.dll"), type => Seen.Any(begin => type.StartsWith(begin, StringComparison.Ordinal)), SharpFuzz.Options.Value);
        SharpFuzz.Fuzzer.Instrument(Path.Combine(to, "YamlDotNet.dll"), type => type is "YamlDotNet.Core.Parser" or "YamlDotNet.Core.Scanner", SharpFuzz.Options.Value);
        return to;
    }
}
