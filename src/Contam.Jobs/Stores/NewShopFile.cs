namespace Contam.Jobs.Stores;

/// <summary>
/// Makes a shop file that is there whole or not at all, and that its owner alone may read. It is made under another name and then given its own, so that two
/// who make it at once get one, and an empty file is never a shop that somebody is just making.
/// </summary>
internal static class NewShopFile
{
    private const UnixFileMode OwnersAlone = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>Makes the file; where somebody was quicker, that one's stays.</summary>
    /// <param name="file">Where it is to be.</param>
    /// <param name="fill">Puts the tables into the file of this name.</param>
    /// <param name="translate">A fault in our words; <c>null</c> where it is one of the program.</param>
    /// <returns>Whether it is this one that is there now.</returns>
    /// <exception cref="ShopException">It cannot be made.</exception>
    public static bool Make(string file, Action<string> fill, Func<Exception, ShopException?> translate)
    {
        string beside = $"{Path.GetFullPath(file)}.{Path.GetRandomFileName()}.new";
        try
        {
            if (Path.GetDirectoryName(beside) is { } folder && !Directory.Exists(folder))
                MakeFolder(folder);
            using (new FileStream(beside, Options()))
            {
                // Made with its permissions; SQLite gives the same to the files that it lays beside it.
            }

            fill(beside);
            if (File.Exists(file))
                return false;
            File.Move(beside, file, overwrite: false);
            return true;
        }
        catch (IOException) when (File.Exists(file))
        {
            // Somebody was quicker.
            return false;
        }
        catch (Exception fault) when (fault is not ShopException && translate(fault) is not null)
        {
            throw translate(fault)!;
        }
        finally
        {
            foreach (string left in new[] { beside, beside + "-wal", beside + "-shm", beside + "-journal" })
                Remove(left);
        }
    }

    private static FileStreamOptions Options()
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = OwnersAlone;
        return options;
    }

    private static void MakeFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(folder, OwnersAlone | UnixFileMode.UserExecute);
    }

    private static void Remove(string file)
    {
        try
        {
            File.Delete(file);
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException)
        {
            // What is left over harms nobody, and the fault that is told is the one before.
        }
    }
}
