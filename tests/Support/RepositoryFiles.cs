namespace Contam.Support;

/// <summary>Files of the repository, found from where its solution file stands, so that it does not matter where a test runs.</summary>
public static class RepositoryFiles
{
    private static readonly Lazy<string> FoundRoot = new(FindRoot);

    /// <summary>The full path of a file or folder, given with <c>/</c> from the root of the repository.</summary>
    public static string At(string path) => Path.Combine(FoundRoot.Value, path.Replace('/', Path.DirectorySeparatorChar));

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Contam.sln")))
                return folder.FullName;
        }

        throw new InvalidOperationException("the tests do not run from within the repository");
    }
}
