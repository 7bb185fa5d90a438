using System.Diagnostics;

namespace Contam.Jobs.Tests.Stores;

/// <summary>Real disks and real users, for what can go wrong with them.</summary>
internal sealed class RealDisk : IDisposable
{
    private readonly string folder;

    private RealDisk(string folder)
    {
        this.folder = folder;
    }

    /// <summary>A disk in memory of so many kilobytes. Only root may mount one; else the test is skipped and says so.</summary>
    public static RealDisk Small(string folder, int kilobytes)
    {
        if (!OperatingSystem.IsLinux() || !Environment.IsPrivilegedProcess)
            RealMachine.SkipUnlessInCi("only root can mount the small disk that this test fills");
        Directory.CreateDirectory(folder);
        if (Run("mount", "-t", "tmpfs", "-o", $"size={kilobytes}k", "tmpfs", folder) is { Exit: not 0 } refused)
            RealMachine.SkipUnlessInCi($"this machine does not let a disk be mounted: {refused.Error}");
        return new RealDisk(folder);
    }

    public void Dispose() => Run("umount", folder);

    /// <summary>A call that starts the command as a user who is not root and owns nothing; the user of the tests where that is not root.</summary>
    public static string[] AsNobody(params string[] words) => Environment.IsPrivilegedProcess
        ? ["setpriv", "--reuid=65534", "--regid=65534", "--clear-groups", "env", "HOME=/tmp", "dotnet", .. Command(words)]
        : ["dotnet", .. Command(words)];

    /// <summary>A call that starts the command as a process no file of which may grow beyond so many kilobytes.</summary>
    public static string[] WithFilesUpTo(int kilobytes, params string[] words) =>
        // Signals of the limit are ignored, so that it comes as an error. The runtime's own code file in memory would be a file, too.
        ["bash", "-c", "trap '' XFSZ; ulimit -f \"$1\"; shift; exec env DOTNET_EnableWriteXorExecute=0 dotnet \"$@\"", "limited", JobBench.Number(kilobytes), .. Command(words)];

    public static string[] AsUsual(params string[] words) => ["dotnet", .. Command(words)];

    /// <summary>Runs a call to its end, with lines that are typed; stops typing when it no longer reads.</summary>
    public static Answer Run(string[] call, params IEnumerable<string> typed)
    {
        using Process process = Process.Start(new ProcessStartInfo(call[0], call[1..]) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = "/" })!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        try
        {
            foreach (string line in typed)
                process.StandardInput.WriteLine(line);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It has ended.
        }

        process.WaitForExit();
        return new Answer(process.ExitCode, output.Result, error.Result);
    }

    private static Answer Run(string program, params string[] words) => Run([program, .. words], []);

    private static string[] Command(string[] words) => ["exec", Path.Combine(AppContext.BaseDirectory, "Contam.Cli.dll"), .. words];
}
