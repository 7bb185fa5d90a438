using Contam.Families;
using Contam.Problems;

namespace Contam.Tests.Families.Reading;

/// <summary>A fresh folder with a few files, deleted afterwards.</summary>
internal sealed class TestFolder : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("contam-").FullName;

    public TestFolder(IEnumerable<(string File, string Text)> files)
    {
        foreach ((string file, string text) in files)
            Write(file, text);
    }

    public string PathOf(string file) => Path.Combine(folder, file);

    public void Write(string file, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(PathOf(file))!);
        File.WriteAllText(PathOf(file), text);
    }

    /// <summary>The same problem with names that begin in the folder.</summary>
    public Problem Shortened(Problem problem) => problem with
    {
        Place = problem.Place is SourceSpan place ? place with { File = Shortened(place.File) } : null,
        Text = Shortened(problem.Text),
        Mend = Shortened(problem.Mend),
        Related = [.. problem.Related.Select(place => place with { File = Shortened(place.File) })],
    };

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private string Shortened(string text) => text.Replace(folder.Replace('\\', '/') + "/", "", StringComparison.Ordinal);
}
