using Contam.Families.Reading;

namespace Contam.Cli;

/// <summary>What a file is, by the key that names it. Only to choose the reader, which then says everything else.</summary>
internal static class FileSort
{
    public const string Family = "family";
    public const string Standard = "standard";
    public const string Module = "module";

    // The key that names a sheet stands near its top; comments before it are long at times.
    private const int Beginning = 65536;

    /// <summary>
    /// <see cref="Standard"/> or <see cref="Family"/> where a line begins with that key. A sheet with neither is a <see cref="Module"/>; what
    /// begins with no sheet at all, or cannot be read, is asked to be a <see cref="Family"/>.
    /// </summary>
    public static string Of(string file)
    {
        string[] lines = FileBeginning.Of(file, Beginning).Split('\n');
        bool Names(string key) => lines.Any(line => line.StartsWith(key, StringComparison.Ordinal));
        return Names("standard:") ? Standard : Names("family:") || !Names("format:") ? Family : Module;
    }
}
