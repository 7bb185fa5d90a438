using System.Collections.Immutable;
using Contam.Audits;

namespace Contam.Reports.Audits;

/// <summary>A comparison as Markdown: a table for each plan that differs.</summary>
public static class ComparisonMarkdown
{
    /// <summary>Writes it.</summary>
    public static void Write(ComparisonAnswer comparison, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(writer);
        writer.Write($"# {PlanMarkdown.Escape(ComparisonWords.Title(comparison))}\n\n{PlanMarkdown.Escape(ComparisonWords.Verdict(comparison))}\n");
        foreach (ComparedFailure failure in comparison.Failures.Where(failure => failure.Plans.IsChanged))
        {
            writer.Write($"\n## {PlanMarkdown.Escape(ComparisonWords.Failure(failure))}\n\n{PlanMarkdown.Escape(ComparisonWords.Figures(failure.Plans))}.\n");
            if (failure.Plans.Parts.IsEmpty)
                continue;
            writer.Write($"\n| parts | {PlanMarkdown.Escape(comparison.First)} | {PlanMarkdown.Escape(comparison.Second)} | because |\n| --- | --- | --- | --- |\n");
            foreach ((string parts, string first, string second, string because) in ComparisonWords.Alike(failure.Plans))
                writer.Write($"| {PlanMarkdown.Escape(parts)} | {PlanMarkdown.Escape(first)} | {PlanMarkdown.Escape(second)} | {PlanMarkdown.Escape(because)} |\n");
        }

        Only(writer, comparison.First, comparison.OnlyFirst);
        Only(writer, comparison.Second, comparison.OnlySecond);
    }

    private static void Only(TextWriter writer, string where, ImmutableArray<FailureName> names)
    {
        if (!names.IsEmpty)
            writer.Write($"\nOnly in {PlanMarkdown.Escape(where)}: {PlanMarkdown.Escape(ComparisonWords.Names(names))}.\n");
    }
}
