using System.Diagnostics;
using Contam.Support;

namespace Contam.Cli.Tests.Completion;

/// <summary>Somebody types into a shell in a terminal, presses the tabulator, and runs what stands there then.</summary>
public sealed class In_a_real_shell : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");

    /// <summary>A folder with a family, a folder whose name holds a blank with the same, and a command that answers the shell as contam does and else writes down how it was called.</summary>
    public In_a_real_shell()
    {
        string family = RepositoryFiles.At("systems/families/outboard-gearcase.yaml");
        File.Copy(family, At("outboard-gearcase.yaml"));
        Directory.CreateDirectory(At("our engines"));
        File.Copy(family, At("our engines/outboard-gearcase.yaml"));
        Directory.CreateDirectory(At("bin"));
        File.WriteAllText(At("ran"), "");
        File.WriteAllText(At("bin/contam"), $"""
            #!/bin/sh
            if [ "$1" = completion ]; then exec dotnet exec '{Path.Combine(AppContext.BaseDirectory, "Contam.Cli.dll")}' "$@"; fi
            for word; do printf '[%s]' "$word"; done >> '{At("ran")}'
            echo >> '{At("ran")}'

            """);
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(At("bin/contam"), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    public static TheoryData<string, string> Shells => new()
    {
        { "bash --noprofile --norc -i", "source <(contam completion bash)" },
        { "zsh -f -i", "autoload -Uz compinit; compinit -u; source <(contam completion zsh)" },
        { "fish --no-config -i", "contam completion fish | source" },
    };

    [Theory]
    [MemberData(nameof(Shells))]
    public async Task Commands_options_families_and_parts_are_completed(string shell, string set)
    {
        string[] ran = await Typed(
            shell,
            set,
            "contam pl\toutb\t--fai\tpini\t",
            "contam plan our\tout\t--failed=pini\t",
            "contam plan outb\t--failed pinion,upper-pl\t--deb\tme\t",
            "contam plan outb\t--found upper-pl\tmet\t",
            "contam gau\toutb\tpropeller-shaft-r\t");

        Assert.Equal(
            [
                "[plan][outboard-gearcase.yaml][--failed][pinion]",
                "[plan][our engines/outboard-gearcase.yaml][--failed=pinion]",
                "[plan][outboard-gearcase.yaml][--failed][pinion,upper-plug][--debris][metal]",
                "[plan][outboard-gearcase.yaml][--found][upper-plug=metal]",
                "[gauge][outboard-gearcase.yaml][propeller-shaft-run-out]",
            ],
            ran);
    }

    public void Dispose() => folder.Delete(recursive: true);

    private string At(string name) => Path.Combine(folder.FullName, name);

    /// <summary>How contam was called when these lines were typed, each followed by Enter, and then <c>exit</c>.</summary>
    private async Task<string[]> Typed(string shell, params string[] lines)
    {
        string program = shell.Split(' ')[0];
        foreach (string needed in new[] { program, "script" })
        {
            if (File.Exists($"/usr/bin/{needed}"))
                continue;
            Assert.False(Environment.GetEnvironmentVariable("CI") == "true", $"CI must not skip this test: {needed} is not installed");
            Assert.Skip($"{needed} is not installed");
        }

        // script lends a terminal to a shell that has none.
        var start = new ProcessStartInfo("/usr/bin/script", ["-qefc", shell, "/dev/null"]) { WorkingDirectory = folder.FullName, RedirectStandardInput = true, RedirectStandardOutput = true };
        start.Environment["PATH"] = At("bin") + ":" + Environment.GetEnvironmentVariable("PATH");
        start.Environment["HOME"] = folder.FullName;
        start.Environment["TERM"] = "xterm";
        using Process process = Process.Start(start)!;
        await process.StandardInput.WriteAsync(string.Concat(lines.Append("exit").Select(line => line + "\n")));
        process.StandardInput.Close();
        await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return await File.ReadAllLinesAsync(At("ran"), TestContext.Current.CancellationToken);
    }
}
