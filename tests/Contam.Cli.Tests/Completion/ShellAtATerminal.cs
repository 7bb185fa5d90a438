using System.Diagnostics;
using System.Text;

namespace Contam.Cli.Tests.Completion;

/// <summary>
/// A shell at a terminal, set up by its own start-up file as the README says. Nothing is typed before the shell has said that it is ready, and nothing is believed before the shell
/// has said it: a key of its own makes it show what stands in its line, which it does only when the keys before are done with.
/// </summary>
internal sealed class ShellAtATerminal : IDisposable
{
    /// <summary>What stands before an answer on the screen; nothing that is typed holds it.</summary>
    public const string Before = "{{";

    /// <summary>What stands after an answer on the screen.</summary>
    public const string After = "}}";

    // Far beyond what a loaded machine needs; only a shell that hangs gets there.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private const string Ready = "ready>";
    private const string ShowLine = "\a";

    private readonly Process process;
    private readonly StringBuilder screen = new();
    private readonly CancellationTokenSource limit = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
    private int read;

    private ShellAtATerminal(Process process)
    {
        this.process = process;
        limit.CancelAfter(Patience);
    }

    /// <summary>The shell of this name in a folder that is its home too, with the commands of one more folder; the test is skipped where there is none.</summary>
    public static async Task<ShellAtATerminal> In(string folder, string name, string commands)
    {
        foreach (string needed in new[] { name, "script" })
        {
            if (File.Exists($"/usr/bin/{needed}"))
                continue;
            Assert.False(Environment.GetEnvironmentVariable("CI") == "true", $"CI must not skip this test: {needed} is not installed");
            Assert.Skip($"{needed} is not installed");
        }

        (string file, string text, string call) = name switch
        {
            "bash" => (".bashrc", $$"""
                PS1='{{Ready}}'
                bind 'set bell-style none'
                show_line() { printf '\n{{Before}}%s{{After}}\n' "$READLINE_LINE"; }
                bind -x '"\C-g": show_line'
                source <(contam completion bash)

                """, "bash --noprofile -i"),
            "zsh" => (".zshrc", $$"""
                PS1='{{Ready}}'
                unsetopt prompt_cr prompt_sp beep
                show_line() { print -r -- $'\n'"{{Before}}$BUFFER{{After}}" }
                zle -N show_line
                bindkey '^G' show_line
                autoload -Uz compinit && compinit -u
                source <(contam completion zsh)

                """, "zsh -d -i"),
            "fish" => ("config.fish", $$"""
                function fish_prompt; echo -n '{{Ready}}'; end
                function fish_greeting; end
                function show_line; printf '\n{{Before}}%s{{After}}\n' (commandline); commandline -f repaint; end
                bind \cg show_line
                contam completion fish | source

                """, "fish --no-config -C 'source ~/config.fish' -i"),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "no such shell"),
        };
        await File.WriteAllTextAsync(Path.Combine(folder, file), text);

        // script lends a terminal to a shell that has none.
        var start = new ProcessStartInfo("/usr/bin/script", ["-qefc", $"stty columns 400; exec {call}", "/dev/null"]) { WorkingDirectory = folder, RedirectStandardInput = true, RedirectStandardOutput = true };
        start.Environment["PATH"] = commands + ":" + Environment.GetEnvironmentVariable("PATH");
        start.Environment["HOME"] = folder;
        start.Environment["SHELL"] = "/bin/sh";
        start.Environment["TERM"] = "xterm";
        start.Environment.Remove("ZDOTDIR");
        var shell = new ShellAtATerminal(Process.Start(start)!);
        await shell.Until(Ready);
        return shell;
    }

    /// <summary>What stands in the line after these keys and the tabulator.</summary>
    public async Task<string> Completed(string keys)
    {
        await Type(keys + "\t" + ShowLine);
        await Until(Before);
        return await Until(After);
    }

    /// <summary>How the command was called when Enter was pressed.</summary>
    public async Task<string> Run()
    {
        await Type("\r");
        await Until(Before);
        string called = await Until(After);
        await Until(Ready);
        return called;
    }

    public void Dispose()
    {
        if (!process.HasExited)
            process.Kill(entireProcessTree: true);
        process.Dispose();
        limit.Dispose();
    }

    private async Task Type(string keys)
    {
        await process.StandardInput.WriteAsync(keys);
        await process.StandardInput.FlushAsync(limit.Token);
    }

    /// <summary>What is on the screen up to this text and has not been read yet; waits until it is there.</summary>
    private async Task<string> Until(string text)
    {
        char[] piece = new char[4096];
        int at;
        while ((at = screen.ToString().IndexOf(text, read, StringComparison.Ordinal)) < 0)
        {
            try
            {
                int count = await process.StandardOutput.ReadAsync(piece, limit.Token);
                Assert.True(count > 0, $"The shell ended before it showed `{text}`. The screen:\n{screen}");
                screen.Append(piece, 0, count);
            }
            catch (OperationCanceledException) when (!TestContext.Current.CancellationToken.IsCancellationRequested)
            {
                Assert.Fail($"The shell did not show `{text}`. The screen:\n{screen}");
            }
        }

        string before = screen.ToString(read, at - read);
        read = at + text.Length;
        return before;
    }
}
