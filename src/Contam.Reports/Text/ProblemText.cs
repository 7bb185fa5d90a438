using Contam.Problems;

namespace Contam.Reports.Text;

/// <summary>Problems for people, one after another: place, what is wrong, what to do.</summary>
public static class ProblemText
{
    /// <summary>Writes the problems in their order.</summary>
    public static void Write(IEnumerable<Problem> problems, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(problems);
        var page = new TextPage(writer, look with { Width = int.MaxValue });
        foreach (Problem problem in problems)
        {
            string place = problem.Place is { } at ? at + ": " : "";
            page.Paragraph($"{place}{(problem.Severity == Severity.Error ? "error" : "warning")}: {problem.Text} [{problem.Code}]");
            if (problem.Mend.Length > 0)
                page.Paragraph(problem.Mend, indent: 2);
            foreach (Families.SourceSpan related in problem.Related)
                page.Paragraph($"see also {related}", indent: 2);
        }
    }
}
