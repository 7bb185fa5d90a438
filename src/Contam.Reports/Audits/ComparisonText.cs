using System.Collections.Immutable;
using Contam.Audits;
using Contam.Reports.Text;

namespace Contam.Reports.Audits;

/// <summary>A comparison as text for people: what differs in each plan and why. Plans that do not differ are counted.</summary>
public static class ComparisonText
{
    /// <summary>Writes it. Where one failure alone was compared, what is the same is listed too.</summary>
    public static void Write(ComparisonAnswer comparison, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var page = new TextPage(writer, look);
        page.Subheading(ComparisonWords.Title(comparison));
        page.Paragraph(ComparisonWords.Verdict(comparison));
        bool isOne = comparison.Failures.Length == 1 && comparison.OnlyFirst.IsEmpty && comparison.OnlySecond.IsEmpty;
        foreach (ComparedFailure failure in comparison.Failures.Where(failure => isOne || failure.Plans.IsChanged))
        {
            page.Gap();
            page.Subheading(ComparisonWords.Failure(failure));
            page.Paragraph(ComparisonWords.Figures(failure.Plans), 2);
            if (isOne && failure.Plans.Same.Length > 0)
                page.Paragraph($"The same: {string.Join(", ", failure.Plans.Same)}", 2);
            foreach ((string parts, string first, string second, string because) in ComparisonWords.Alike(failure.Plans))
            {
                page.Paragraph($"{parts}: {first} | {second}", 4, "  - ");
                page.Paragraph(because, 6);
            }
        }

        Only(page, comparison.First, comparison.OnlyFirst);
        Only(page, comparison.Second, comparison.OnlySecond);
    }

    private static void Only(TextPage page, string where, ImmutableArray<FailureName> names)
    {
        if (names.IsEmpty)
            return;
        page.Gap();
        page.Paragraph($"Only in {where}: {ComparisonWords.Names(names)}");
    }
}
