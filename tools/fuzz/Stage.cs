namespace Contam.Fuzz;

/// <summary>
/// A folder of its own in which texts are read: a <c>systems</c> folder with a few modules, and outside it modules that nobody may read. Each of
/// those brings parts whose ids begin with <c>stolen</c>, so that a read outside shows in whatever is answered.
/// </summary>
internal sealed class Stage : IDisposable
{
    private const string Side = """
        format: 1
        parts:
          side-pump: {kind: pump, sheds: {metal: common}}
          side-washer-#: {kind: hose, count: 2}
        circuits:
          oil: {runs: [[side-pump, side-washer-#]]}

        """;

    private readonly string folder = Directory.CreateTempSubdirectory("contam-fuzz-").FullName;
    private readonly Dictionary<string, string> texts = new(StringComparer.Ordinal);

    public Stage()
    {
        Write("systems/modules/side.yaml", Side);
        Write("systems/modules/circle.yaml", "format: 1\nuse: [{module: circle.yaml}]\n");
        Write("systems/families/side.yaml", Side);
        Write("stolen.yaml", "format: 1\nparts: {stolen: {kind: hose}}\nstolen-key: 1\n");
        if (!OperatingSystem.IsWindows())
        {
            File.CreateSymbolicLink(PathOf("systems/modules/link.yaml"), PathOf("stolen.yaml"));
            File.CreateSymbolicLink(PathOf("systems/modules/zero.yaml"), "/dev/zero");
            Directory.CreateSymbolicLink(PathOf("systems/families/out"), folder);
        }

        // Texts that bear no name of their own are read under these.
        FamilyPath = PathOf("systems/families/f.yaml");
        ModulePath = PathOf("systems/modules/m.yaml");
    }

    /// <summary>Where a family stands.</summary>
    public string FamilyPath { get; }

    /// <summary>Where a module stands.</summary>
    public string ModulePath { get; }

    /// <summary>Any other file.</summary>
    public string OtherPath => PathOf("systems/standards/s.yaml");

    /// <summary>The text of a file that may be read, by its name in places; <c>null</c> where a place may not name it.</summary>
    public string? TextOf(string file) => texts.GetValueOrDefault(file);

    /// <summary>What a file is taken to hold from now on, without writing it.</summary>
    public void Says(string path, string text) => texts[path] = text;

    /// <summary>Puts these bytes into a file.</summary>
    public static void Put(string path, byte[] bytes)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, bytes);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private string PathOf(string file) => Path.Combine(folder, file);

    private void Write(string file, string text)
    {
        Put(PathOf(file), System.Text.Encoding.UTF8.GetBytes(text));
        if (!file.StartsWith("stolen", StringComparison.Ordinal))
            texts[PathOf(file)] = text;
    }
}
