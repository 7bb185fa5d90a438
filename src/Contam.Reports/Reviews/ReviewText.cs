using Contam.Reports.Text;
using Contam.Reviews;

namespace Contam.Reports.Reviews;

/// <summary>A review as text to print and tick.</summary>
public static class ReviewText
{
    /// <summary>Writes it.</summary>
    public static void Write(FamilyReview review, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(look);
        var page = new TextPage(writer, look);
        // Each line of a tree has a box before it.
        var sheet = new ReviewSheet(review, look with { Width = page.Width - 4 });
        page.Subheading(sheet.Title);
        page.Paragraph(sheet.Scope);
        page.Paragraph(ReviewSheet.Purpose);
        foreach (ReviewSection section in sheet.Sections)
        {
            page.Heading(section.Title);
            page.Paragraph(section.Items.IsEmpty ? "None." : section.About);
            foreach (string item in section.Items)
            {
                if (section.Trees)
                    page.Verbatim("[ ] " + item);
                else
                    page.Paragraph(item, indent: 4, lead: "[ ]");
            }
        }

        page.Heading("Signed");
        foreach (string line in ReviewSheet.Signature)
            page.Verbatim(line);
        page.Paragraph(sheet.HowToSign);
    }
}
