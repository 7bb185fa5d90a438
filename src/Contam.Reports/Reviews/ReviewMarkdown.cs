using System.Globalization;
using System.Text;
using Contam.Reports.Text;
using Contam.Reviews;

namespace Contam.Reports.Reviews;

/// <summary>A review as a Markdown checklist. Whatever a person wrote is escaped; the trees stand in a fence that no name can end.</summary>
public static class ReviewMarkdown
{
    /// <summary>Writes it.</summary>
    public static void Write(FamilyReview review, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(writer);
        var sheet = new ReviewSheet(review, look);
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"# {PlanMarkdown.Escape(sheet.Title)}\n\n{PlanMarkdown.Escape(sheet.Scope)}\n\n{PlanMarkdown.Escape(ReviewSheet.Purpose)}\n");
        foreach (ReviewSection section in sheet.Sections)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {PlanMarkdown.Escape(section.Title)}\n\n{PlanMarkdown.Escape(section.Items.IsEmpty ? "None." : section.About)}\n\n");
            if (section.Trees)
                page.Append(CultureInfo.InvariantCulture, $"```text\n{string.Concat(section.Items.Select(item => $"[ ] {item.Replace('`', '\'')}\n"))}```\n");
            else
                page.Append(string.Concat(section.Items.Select(item => $"- [ ] {PlanMarkdown.Escape(item)}\n")));
        }

        page.Append(CultureInfo.InvariantCulture, $"\n## Signed\n\n{string.Concat(ReviewSheet.Signature.Select(line => $"{PlanMarkdown.Escape(line)}\n\n"))}{PlanMarkdown.Escape(sheet.HowToSign)}\n");
        writer.Write(page);
    }
}
