using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Contam.Cli.Tests;

/// <summary>
/// Files that mean harm, given to the program itself with no more than 512 MB of memory to take. Each ends with a message that has a place or, where
/// the file is not even read, its name; never with a fault of the program, and never with nothing.
/// </summary>
public sealed class Hostile_files_of_all_sizes
{
    private const int Huge = 500_000_000;
    private const int Allowed = 4 * 1024 * 1024;
    private const string Head = "format: 1\nfamily: f\n";

    // What stands before, and what is repeated until the file is as large as it may be.
    [Theory]
    [InlineData(Head, "a", "engine.yaml:3:1: error: this line does not fit what stands before it [syntax]")]
    [InlineData(Head, "a: 1\n", "engine.yaml:4:1: error: the key `a` stands twice, first on line 3 [duplicate-key]")]
    [InlineData(Head + "x: [", "*a, ", "engine.yaml:3:5: error: an alias (`*name`) is not used in these files [alias]")]
    [InlineData(Head + "x: [", "a,", "engine.yaml:3:999991: error: the file and its modules hold more than 500000 values [file-too-large]")]
    [InlineData(Head + "x:\n ", "? ", "engine.yaml:4:128: error: lists and mappings stand more than 64 deep in one another [too-deep]")]
    [InlineData(Head + "x: {", "a", "error: the `{` of line 3 is not closed, or a comma is missing before this [bracket-not-closed]")]
    [InlineData("", "\t", "engine.yaml:1:1: error: the file says nothing [file-empty]")]
    [InlineData("standard: s\n", "a: 1\n", "engine.yaml:3:1: error: the key `a` stands twice, first on line 2 [duplicate-key]")]
    public void As_large_as_a_file_may_be(string before, string repeated, string message)
    {
        string text = before + string.Concat(Enumerable.Repeat(repeated, (Allowed - before.Length) / repeated.Length));

        (int exit, string told) = Check(file => File.WriteAllText(file, text));

        Assert.Equal(1, exit);
        Assert.Contains(message, told, StringComparison.Ordinal);
    }

    // It takes no room on the disk, and is one line all the same: a reader that asks for a line of it asks for all.
    [Fact]
    public void One_line_of_half_a_thousand_million_characters()
    {
        (int exit, string told) = Check(file =>
        {
            using FileStream stream = File.Create(file);
            stream.SetLength(Huge);
        });

        Assert.Equal((2, "error: `engine.yaml` is too large: a file and its modules may have 4194304 bytes together [file-too-large]\n  check that it is the right file\n"), (exit, told));
    }

    [Fact]
    public void A_pipe_that_nobody_writes_to()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() || OperatingSystem.IsMacOS(), "there are no such files on this system");

        (int exit, string told) = Check(file =>
        {
            using Process made = Process.Start("mkfifo", file);
            made.WaitForExit();
        });

        Assert.Equal((2, "error: `engine.yaml` is a pipe or a device [file-unreadable]\n  save its text as a file and name that\n"), (exit, told));
    }

    private static (int Exit, string Told) Check(Action<string> write)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");
        try
        {
            string file = Path.Combine(folder.FullName, "engine.yaml");
            write(file);
            string host = Environment.ProcessPath is { } path && Path.GetFileNameWithoutExtension(path) == "dotnet" ? path : "dotnet";
            var start = new ProcessStartInfo(host, ["exec", typeof(ContamCommand).Assembly.Location, "check", file])
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                StandardOutputEncoding = Encoding.UTF8,
                StandardErrorEncoding = Encoding.UTF8,
            };
            start.Environment["DOTNET_GCHeapHardLimit"] = (512 * 1024 * 1024).ToString("x", CultureInfo.InvariantCulture);
            using Process process = Process.Start(start)!;
            Task<string> error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
            string answer = process.StandardOutput.ReadToEnd();
            string told = answer + error.GetAwaiter().GetResult();
            process.WaitForExit();
            return (process.ExitCode, told.Replace(file, "engine.yaml", StringComparison.Ordinal));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
