using System.Text;

namespace Contam.Cli.Starting;

/// <summary>A folder that is written whole or not at all.</summary>
internal static class NewFolder
{
    /// <summary>Writes these files, each under its path inside the folder.</summary>
    /// <exception cref="WrongUseException">The folder is there already, or cannot be written. Nothing is left behind.</exception>
    public static void Write(string folder, IEnumerable<(string Path, string Text)> files)
    {
        string whole = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (Path.Exists(whole))
            throw new WrongUseException($"{folder} is there already, and nothing was written over. Name a folder that is not there yet.");
        string? parent = Path.GetDirectoryName(whole);
        if (parent is null || !Directory.Exists(parent))
            throw new WrongUseException($"{folder} cannot be made, because the folder that is to hold it is not there. Make that first, or name another place.");
        string beside = Path.Combine(parent, $".{Path.GetFileName(whole)}.part-{Environment.ProcessId}");
        try
        {
            foreach ((string path, string text) in files)
            {
                string file = Path.Combine(beside, path);
                Directory.CreateDirectory(Path.GetDirectoryName(file)!);
                File.WriteAllText(file, text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            }

            Directory.Move(beside, whole);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Discard(beside);
            throw new WrongUseException($"{folder} cannot be written: {fault.Message} Nothing was left there. Name a place that you may write to.");
        }
    }

    private static void Discard(string folder)
    {
        try
        {
            if (Directory.Exists(folder))
                Directory.Delete(folder, recursive: true);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // What could not be written can hardly be taken away; the first failure is what the person needs to read.
        }
    }
}
