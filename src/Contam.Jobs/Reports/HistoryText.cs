using Contam.Diagnosis;
using Contam.Jobs.History;
using Contam.Reports.Text;

namespace Contam.Jobs.Reports;

/// <summary>How often debris was looked for and found at a part, for a person.</summary>
public static class HistoryText
{
    /// <summary>Writes the answer.</summary>
    public static void Write(HistoryAnswer answer, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var page = new TextPage(writer, look);
        LookCount all = answer.All;
        page.Subheading(all.Looks == 0
            ? $"{answer.Part}: no look in any job says how often debris comes here."
            : $"{answer.Part}: looked at in {JobText.Count(all.Looks)} {(all.Looks == 1 ? "job" : "jobs")} whose debris could come here, and found in {JobText.Count(all.Found)}.");
        foreach (HistoryRow row in answer.Rows)
            page.Row(2, ($"{JobText.Count(row.Count.Found)} of {JobText.Count(row.Count.Looks)}", 10), ($"{row.Debris}, {string.Join(" and ", row.Failed)} failed, {row.Family}", 0));
        if (answer.NotCounted.IsEmpty)
            return;
        page.Heading("Not counted");
        foreach (PassedOver passed in answer.NotCounted)
            page.Row(2, (JobText.Count(passed.Count.Looks), 4), ($"{Why(passed.Worth)}{(passed.Count.Found > 0 ? $"; found in {JobText.Count(passed.Count.Found)}" : "")}", 0));
    }

    /// <summary>Why a look does not count.</summary>
    internal static string Why(PastLookWorth worth) => worth switch
    {
        PastLookWorth.SourceUnknown => "where the debris came from is not known",
        PastLookWorth.NotExposed => "by the family the debris could not come here at full size",
        PastLookWorth.FailedItself => "the part itself had failed",
        PastLookWorth.AfterWork => "the part had been worked on before the look",
        PastLookWorth.Again => "a further look at the same engine",
        _ => "what the job keeps cannot be read",
    };
}
