using System.Text;

namespace Contam.Cli.Completion;

/// <summary>The scripts that shells read, one for each.</summary>
internal static class ShellScripts
{
    public const string Bash = "bash";

    public const string PowerShell = "pwsh";

    /// <summary>The shells that there is a script for.</summary>
    public static readonly IReadOnlyList<string> Shells = [Bash, "zsh", "fish", PowerShell];

    /// <summary>The script of one of <see cref="Shells"/>.</summary>
    public static string For(string shell)
    {
        using Stream stream = typeof(ShellScripts).Assembly.GetManifestResourceStream($"completion/contam.{shell}")
            ?? throw new InvalidOperationException($"the completion script for {shell} is missing from the command");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
