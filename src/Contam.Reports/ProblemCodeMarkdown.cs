using System.Text;
using Contam.Problems;

namespace Contam.Reports;

/// <summary>All that <c>check</c> can say, as a Markdown document: every code with what it means, an example and the mend.</summary>
public static class ProblemCodeMarkdown
{
    /// <summary>The document, closed by a newline.</summary>
    public static string Write()
    {
        var page = new StringBuilder();
        page.Append("""
            # What `check` can say

            Every message of `contam check` ends with a code in brackets.
            An *error* is a file that cannot be used as it is; `check` ends with 1.
            A *warning* is something that is likely forgotten; `check` ends with 0, and with 1 under `--strict`.
            `contam check --explain CODE` prints one of these entries.

            This page is written by the program from its own list, so it holds every code there is.

            """);
        foreach ((string heading, IEnumerable<ProblemCode> codes) in Sections())
        {
            page.Append("\n## ").Append(heading).Append('\n');
            foreach (ProblemCode code in codes)
                Entry(page, code);
        }

        return page.ToString();
    }

    /// <summary>The codes in three groups, errors first, each in the order of the list.</summary>
    internal static IEnumerable<(string Heading, IEnumerable<ProblemCode> Codes)> Sections() =>
    [
        ("Errors", ProblemCodes.All.Where(code => code.Severity == Severity.Error)),
        ("Warnings", ProblemCodes.All.Where(code => code.Severity == Severity.Warning && !code.IsLint)),
        ("Lints: warnings that may be meant so", ProblemCodes.Lints),
    ];

    /// <summary>What sort of message it is, in a word.</summary>
    internal static string Sort(ProblemCode code) => code.Severity == Severity.Error ? "error" : code.IsLint ? "lint" : "warning";

    /// <summary>How a lint is silenced in one place.</summary>
    internal static string WhereMeant(string code) => code == LintCodes.DoesNotClose
        ? "Say so on the circuit or on the part, with the reason:"
        : code == LintCodes.DeadEnd ? "Say so on the part or on the circuit, with the reason:" : "Say so on the part, with the reason:";

    private static void Entry(StringBuilder page, ProblemCode code)
    {
        page.Append("\n### `").Append(code.Code).Append("`\n\n").Append(Prose(code.Meaning)).Append("\n\n```yaml\n").Append(code.Example).Append("\n```\n\n*Mend:* ").Append(Prose(code.Mend)).Append('\n');
        if (code.MayBeMeant is { } reason)
            page.Append('\n').Append(WhereMeant(code.Code)).Append(" `meant: {").Append(code.Code).Append(": ").Append(reason).Append("}`\n");
    }

    // The texts are our own: their back-quotes are markup, and nothing else in them is, but for what Markdown takes for a tag or emphasis.
    private static string Prose(string text) => text.Replace("<", "&lt;", StringComparison.Ordinal).Replace("*", "\\*", StringComparison.Ordinal);
}
