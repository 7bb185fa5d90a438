namespace Contam.Cli.Tests.Audits;

/// <summary>A folder of its own that goes again.</summary>
internal sealed class Folder : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");

    public string Path => folder.FullName;

    public string At(string path) => System.IO.Path.Combine(folder.FullName, path);

    public void Dispose() => folder.Delete(recursive: true);
}
