namespace Contam.Cli;

/// <summary>What a file is, by the key that names it. Only to choose the reader, which then says everything else.</summary>
internal static class FileSort
{
    public const string Family = "family";
    public const string Standard = "standard";

    /// <summary><see cref="Standard"/> where a line begins with that key, else <see cref="Family"/>, also where the file cannot be read.</summary>
    public static string Of(string file)
    {
        try
        {
            return File.ReadLines(file).Take(200).Any(line => line.StartsWith("standard:", StringComparison.Ordinal)) ? Standard : Family;
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Family;
        }
    }
}
