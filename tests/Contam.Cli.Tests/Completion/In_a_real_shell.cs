using Contam.Support;

namespace Contam.Cli.Tests.Completion;

/// <summary>Somebody types into a shell in a terminal, presses the tabulator, and runs what stands there then.</summary>
public sealed class In_a_real_shell : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");

    /// <summary>A folder with a family, a folder whose name holds a blank with the same, and a command that answers the shell as contam does and else says how it was called.</summary>
    public In_a_real_shell()
    {
        string family = RepositoryFiles.At("systems/families/outboard-gearcase.yaml");
        File.Copy(family, At("outboard-gearcase.yaml"));
        Directory.CreateDirectory(At("our engines"));
        File.Copy(family, At("our engines/outboard-gearcase.yaml"));
        Directory.CreateDirectory(At("bin"));
        File.WriteAllText(At("bin/contam"), $"""
            #!/bin/sh
            if [ "$1" = completion ]; then exec dotnet exec '{Path.Combine(AppContext.BaseDirectory, "Contam.Cli.dll")}' "$@"; fi
            printf '{ShellAtATerminal.Before}'
            for word; do printf '[%s]' "$word"; done
            printf '{ShellAtATerminal.After}\n'

            """);
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(At("bin/contam"), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    public static TheoryData<string> Shells => ["bash", "zsh", "fish"];

    [Theory]
    [MemberData(nameof(Shells))]
    public async Task Commands_options_families_and_parts_are_completed(string name)
    {
        using ShellAtATerminal shell = await Started(name);

        Assert.Equal("contam plan ", await shell.Completed("contam pl"));
        Assert.Equal("contam plan outboard-gearcase.yaml ", await shell.Completed("outb"));
        Assert.Equal("contam plan outboard-gearcase.yaml --failed ", await shell.Completed("--fai"));
        Assert.Equal("contam plan outboard-gearcase.yaml --failed pinion,upper-plug ", await shell.Completed("pinion,upper-pl"));
        Assert.Equal("contam plan outboard-gearcase.yaml --failed pinion,upper-plug --debris ", await shell.Completed("--deb"));
        Assert.Equal("contam plan outboard-gearcase.yaml --failed pinion,upper-plug --debris metal ", await shell.Completed("me"));
        Assert.Equal("[plan][outboard-gearcase.yaml][--failed][pinion,upper-plug][--debris][metal]", await shell.Run());
    }

    [Theory]
    [MemberData(nameof(Shells))]
    public async Task A_name_with_a_blank_and_a_word_that_goes_on_are_completed(string name)
    {
        using ShellAtATerminal shell = await Started(name);

        // A folder and what ends with = go on without a blank.
        Assert.EndsWith("/", (await shell.Completed("contam plan our")).TrimEnd('\'', '"'), StringComparison.Ordinal);
        Assert.EndsWith("yaml ", (await shell.Completed("out")).Replace("'", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.EndsWith("--failed=upper-plug ", await shell.Completed("--failed=upper-pl"), StringComparison.Ordinal);
        Assert.EndsWith("--found upper-plug=", await shell.Completed("--found upper-pl"), StringComparison.Ordinal);
        Assert.EndsWith("--found upper-plug=metal ", await shell.Completed("met"), StringComparison.Ordinal);
        Assert.Equal("[plan][our engines/outboard-gearcase.yaml][--failed=upper-plug][--found][upper-plug=metal]", await shell.Run());
    }

    [Theory]
    [MemberData(nameof(Shells))]
    public async Task What_fits_several_words_is_completed_as_far_as_they_agree(string name)
    {
        using ShellAtATerminal shell = await Started(name);

        Assert.Equal("contam gauge outboard-gearcase.yaml propeller-shaft-run-out ", await shell.Completed("contam gauge outboard-gearcase.yaml propeller-shaft-r"));
        await shell.Run();
        Assert.Equal("contam st", await shell.Completed("contam st"));
        Assert.Equal("contam stop-line ", await shell.Completed("op"));
        Assert.Equal("[stop-line]", await shell.Run());
    }

    public void Dispose() => folder.Delete(recursive: true);

    private string At(string name) => Path.Combine(folder.FullName, name);

    private Task<ShellAtATerminal> Started(string name) => ShellAtATerminal.In(folder.FullName, name, At("bin"));
}
