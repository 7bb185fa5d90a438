namespace Contam.Jobs.Tests;

/// <summary>A tool that takes long to start is left unused: no command loads what it does not need.</summary>
public sealed class What_a_start_loads
{
    /// <summary>What only commands with jobs need.</summary>
    private static readonly string[] Records = ["Microsoft.Data.Sqlite", "SQLitePCLRaw.core", "Npgsql"];

    [Theory]
    [InlineData("--help")]
    [InlineData("plan", "--help")]
    [InlineData("completion", "bash")]
    public void Is_no_reader_and_no_hash_where_nothing_is_read(params string[] words)
    {
        string[] loaded = LoadedBy(words);
        Assert.Empty(loaded.Intersect([.. Records, "YamlDotNet", "QuikGraph", "System.Security.Cryptography", "System.Text.RegularExpressions"]));
    }

    [Fact]
    public void Is_no_database_for_a_plan()
    {
        string[] loaded = LoadedBy("plan", "systems/families/quay-diesel-v8.yaml", "--failed", "port-piston-1", "--debris", "metal");
        Assert.Contains("YamlDotNet", loaded);
        Assert.Empty(loaded.Intersect(Records));
    }

    private static string[] LoadedBy(params string[] words)
    {
        using JobBench bench = JobBench.WithJob();
        LoadedAssemblies loaded = LoadedAssemblies.By(bench, words);
        Assert.Equal((0, ""), (loaded.Exit, loaded.Error));
        Assert.NotEqual("", loaded.Out);
        return loaded.Names;
    }
}
