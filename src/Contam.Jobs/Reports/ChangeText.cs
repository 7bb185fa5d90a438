using Contam.Jobs.Entries;
using Contam.Jobs.Work;
using Contam.Reports.Text;

namespace Contam.Jobs.Reports;

/// <summary>What a new plan changes in a job, for the person who must say yes or no to it.</summary>
public static class ChangeText
{
    /// <summary>Writes the change.</summary>
    public static void Write(PlanChange change, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(change);
        var page = new TextPage(writer, look);
        foreach (string sentence in change.Contradicted)
            page.Paragraph(sentence);
        foreach (LookTaken clean in change.Answers.Where(look => !look.Seen.Found))
            page.Paragraph($"It counts as clean: {JobText.Sentence(clean)}");
        if (change.ChangesNothing)
        {
            page.Subheading($"The work stays as it is. {JobText.Count(change.StayDone)} steps are done and stay so.");
            return;
        }

        page.Subheading($"{Steps(change.Added.Length)} new, {JobText.Count(change.Reopened.Length)} open again, {JobText.Count(change.Dropped.Length)} gone; {JobText.Count(change.StayDone)} are done and stay so.");
        if (!change.PartsAdded.IsEmpty)
            page.Paragraph($"Reached now: {string.Join(", ", change.PartsAdded.Select(part => part.Id))}.");
        if (!change.PartsDropped.IsEmpty)
            page.Paragraph($"No longer in it: {string.Join(", ", change.PartsDropped.Select(part => part.Id))}.");
        foreach ((WorkStep step, string because) in change.Reopened)
            page.Row(0, ("again", 5), (JobText.Count(step.Number), 4), ($"{because}: {step.Text}", 0));
        foreach (WorkStep step in change.Added)
            page.Row(0, ("new", 5), (JobText.Count(step.Number), 4), (step.Text, 0));
        foreach (WorkStep step in change.Dropped)
            page.Row(0, ("gone", 5), ("", 4), (step.Text, 0));
        foreach (CarriedStep step in change.Carried)
            page.Row(0, ("stays", 5), ("", 4), ($"{step.Part} is off, and goes back: {step.Text}", 0));
        page.Paragraph("Step numbers are those of the new plan.");
    }

    private static string Steps(int count) => count == 1 ? "1 step" : $"{JobText.Count(count)} steps";
}
