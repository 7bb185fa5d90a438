using System.Diagnostics;
using Contam.Support;

namespace Contam.Jobs.Tests;

/// <summary>Which libraries a call of the command loads, in a process of its own.</summary>
/// <param name="Exit">The exit status.</param>
/// <param name="Out">What it printed.</param>
/// <param name="Error">What it complained of.</param>
/// <param name="Names">The libraries.</param>
internal sealed record LoadedAssemblies(int Exit, string Out, string Error, string[] Names)
{
    /// <summary>Calls the command with these words from the root of the repository.</summary>
    public static LoadedAssemblies By(JobBench bench, IEnumerable<string> words)
    {
        string loaded = bench.At("loaded");
        var start = new ProcessStartInfo("dotnet", ["exec", Path.Combine(AppContext.BaseDirectory, "Contam.Cli.dll"), .. words])
        {
            WorkingDirectory = RepositoryFiles.At(""),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["DOTNET_STARTUP_HOOKS"] = typeof(StartupHook).Assembly.Location;
        start.Environment["CONTAM_LOADED"] = loaded;
        using Process process = Process.Start(start)!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        string[] names = File.ReadAllLines(loaded);
        Assert.Contains("Contam.Cli", names);
        return new(process.ExitCode, said, error.Result, names);
    }
}
