using System.CommandLine;
using Contam.Audits;
using Contam.Reports.Audits;
using Contam.Reports.Json;

namespace Contam.Cli;

/// <summary>How the commands that compare answer.</summary>
internal static class ComparisonOutput
{
    public static Option<string> FormatOption() => CommonOptions.OneOf("--format", "form of the answer", "text", "json", "markdown");

    public static void Write(ComparisonAnswer comparison, string? format, ParseResult call, Shell shell)
    {
        if (format == "json")
            shell.Out.Write(ComparisonJson.Write(comparison));
        else if (format == "markdown")
            ComparisonMarkdown.Write(comparison, shell.Out);
        else
            ComparisonText.Write(comparison, shell.Out, CommonOptions.LookOf(call, shell));
    }
}
