using System.CommandLine;
using Contam.Reports.Text;

namespace Contam.Cli;

/// <summary>Options that every command understands.</summary>
internal static class CommonOptions
{
    private static readonly Option<bool> NoColor = new("--no-color") { Description = "plain text, also in a terminal", Recursive = true };

    private static readonly Option<string> Units = OneOf("--units", "units of sizes and volumes", "metric", "imperial");

    private static readonly Option<bool> Stack = new("--stack") { Description = "after a fault of contam, show where in the program it happened", Recursive = true };

    public static void AddTo(RootCommand root)
    {
        Units.Recursive = true;
        root.Options.Add(NoColor);
        root.Options.Add(Units);
        root.Options.Add(Stack);
        LimitOption.AddTo(root);
    }

    /// <summary>How the answer of this call looks.</summary>
    public static TextLook LookOf(ParseResult call, Shell shell) => shell.Look with
    {
        HasColour = shell.Look.HasColour && !call.GetValue(NoColor),
        IsImperial = call.GetValue(Units) == "imperial",
    };

    public static bool WantsStack(ParseResult call) => call.GetValue(Stack);

    /// <summary>An option that takes one of a few words; the first is the default.</summary>
    public static Option<string> OneOf(string name, string description, params string[] words)
    {
        var option = new Option<string>(name) { Description = $"{description}: {string.Join(", ", words)}", DefaultValueFactory = _ => words[0], HelpName = string.Join('|', words) };
        option.AcceptOnlyFromAmong(words);
        return option;
    }
}
