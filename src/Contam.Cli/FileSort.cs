using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;

namespace Contam.Cli;

/// <summary>What a file is, by the key that names it. Only to choose the reader, which then says everything else.</summary>
internal static class FileSort
{
    public const string Family = "family";
    public const string Standard = "standard";
    public const string Module = "module";

    // The key that names a sheet stands near its top; comments before it are long at times.
    private const int Beginning = 65536;

    /// <summary>What a sheet says that it is, with its article; <c>null</c> for what is no sheet.</summary>
    public static string? Says(string file)
    {
        if (OtherForm.OfFile(file) is { } form)
            return form;
        string[] lines = FileBeginning.Of(file, Beginning).Split('\n');
        bool Names(string key) => lines.Any(line => line.StartsWith(key, StringComparison.Ordinal));
        return Names("standard:") ? "a standard" : Names("family:") ? "a family file" : Names("format:") ? "a module" : null;
    }

    /// <summary>Whether a file begins as what this command writes as JSON.</summary>
    public static bool IsAnswer(string beginning) =>
        beginning.TrimStart().StartsWith('{') && beginning.IndexOf("\"format\"", StringComparison.Ordinal) is >= 0 and < 200 and var at && beginning.IndexOf("\"contam-", at, StringComparison.Ordinal) is var name && name > 0 && name - at < 20;

    /// <summary>Whether a line begins with a section that families and modules have.</summary>
    public static bool BeginsSections(string file) => FileBeginning.Of(file, Beginning).Split('\n')
        .Any(line => line.StartsWith("parts:", StringComparison.Ordinal) || line.StartsWith("circuits:", StringComparison.Ordinal) || line.StartsWith("use:", StringComparison.Ordinal));

    /// <summary>
    /// <see cref="Standard"/> or <see cref="Family"/> where a line begins with that key. A sheet with neither is a <see cref="Module"/>; what
    /// begins with no sheet at all, or cannot be read, is asked to be a <see cref="Family"/>.
    /// </summary>
    public static string Of(string file)
    {
        string[] lines = FileBeginning.Of(file, Beginning).Split('\n');
        bool Names(string key) => lines.Any(line => line.StartsWith(key, StringComparison.Ordinal));
        return Names("standard:") ? Standard : Names("family:") || Names("machine:") || !Names("format:") ? Family : Module;
    }
}
