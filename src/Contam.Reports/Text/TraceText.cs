using System.Globalization;
using Contam.Diagnosis;

namespace Contam.Reports.Text;

/// <summary>What a person reads who is led from look to look.</summary>
public static class TraceText
{
    /// <summary>Asks for a look.</summary>
    public static void WriteLook(TextPage page, NextLook look, SuspectQuestion question)
    {
        ArgumentNullException.ThrowIfNull(page);
        ArgumentNullException.ThrowIfNull(look);
        ArgumentNullException.ThrowIfNull(question);
        string how = question.Family[look.Part].Inspect is { How.Length: > 0 } inspect ? $": {inspect.How}" : "";
        page.Gap();
        page.Subheading($"Look at {new Names(question.Family).InSentence(look.Part.Value)} for {question.Debris.Name}");
        page.Paragraph(string.Create(CultureInfo.InvariantCulture, $"{look.Minutes:0.#} min{how}."), indent: 2);
    }

    /// <summary>Says that looking ends.</summary>
    /// <param name="page">Where it goes.</param>
    /// <param name="answer">The suspects as they stand.</param>
    /// <param name="isSure">Whether the first of them is taken for the source; else no look tells more.</param>
    public static void WriteEnd(TextPage page, SuspectAnswer answer, bool isSure)
    {
        ArgumentNullException.ThrowIfNull(page);
        ArgumentNullException.ThrowIfNull(answer);
        page.Gap();
        page.Paragraph(isSure
            ? $"{new Names(answer.Question.Family).Of(answer.Suspects[0].Part.Value)} has {SuspectWords.Percent(answer.Suspects[0].Share)} of the suspicion: it is taken for the source."
            : "No look that is left tells anything much.");
    }
}
