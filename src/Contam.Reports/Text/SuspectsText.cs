using System.Collections.Immutable;
using System.Globalization;
using Contam.Diagnosis;
using Contam.Families;

namespace Contam.Reports.Text;

/// <summary>Where debris could be coming from, why, and where to look next, for a person.</summary>
public static class SuspectsText
{
    private const int MostLooks = 8;
    private const double SmallShare = 0.01;
    private const int DeepestIndent = 32;

    /// <summary>Writes the suspects, the next looks and the looking plan.</summary>
    public static void Write(SuspectAnswer answer, LookingPlan plan, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(plan);
        var page = new TextPage(writer, look);
        var names = new Names(answer.Question.Family);
        Family family = answer.Question.Family;
        page.Subheading($"Where it comes from: {answer.Question.Debris.Name}");
        page.Paragraph(family.Title.Length > 0 ? $"{family.Title} ({family.Id})" : family.Id);
        Seen(page, answer, names);
        Suspects(page, answer, names);
        Together(page, answer, names);
        NextLooks(page, answer, names);
        page.Heading("Looking plan");
        Plan(page, plan, names);
        if (answer.Question.History is { } history)
            LookHistoryText.Write(page, history, family, [answer.Question.Debris]);
    }

    /// <summary>The shares alone, equal neighbours folded, the largest first.</summary>
    /// <param name="page">Where they go.</param>
    /// <param name="answer">The suspects.</param>
    /// <param name="before">The suspects before the last finding, to show how they moved; <c>null</c> for none.</param>
    /// <param name="most">How many rows at most.</param>
    public static void WriteShares(TextPage page, SuspectAnswer answer, SuspectAnswer? before, int most)
    {
        ArgumentNullException.ThrowIfNull(page);
        ArgumentNullException.ThrowIfNull(answer);
        var names = new Names(answer.Question.Family);
        var shareBefore = before?.Suspects.ToDictionary(suspect => suspect.Part, suspect => SuspectWords.Percent(suspect.Share));
        List<List<Suspect>> groups = Folded(answer.Suspects, names, suspect => SuspectWords.Percent(suspect.Share) + shareBefore?[suspect.Part]);
        foreach (List<Suspect> group in groups.Take(most))
        {
            string share = SuspectWords.Percent(group[0].Share) + (group.Count > 1 ? " each" : "");
            string was = shareBefore?[group[0].Part] is { } earlier && earlier != SuspectWords.Percent(group[0].Share) ? $" (was {earlier})" : "";
            page.Row(2, (share, 17), (names.FoldedAtStart(group.Select(suspect => suspect.Part.Value)) + was, 0));
        }

        if (groups.Count > most)
            page.Row(2, ("", 17), (string.Create(CultureInfo.InvariantCulture, $"and {groups.Skip(most).Sum(group => group.Count)} more"), 0));
    }

    /// <summary>Tells of finds that clean looks contradict.</summary>
    public static void WriteContradictions(TextPage page, SuspectAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(page);
        ArgumentNullException.ThrowIfNull(answer);
        var names = new Names(answer.Question.Family);
        foreach (SuspectContradiction one in answer.Contradictions)
            page.Paragraph(SuspectWords.Contradicted(one, names), indent: 2);
    }

    private static void Seen(TextPage page, SuspectAnswer answer, Names names)
    {
        Finding[] findings = [.. answer.Question.Findings.Where(finding => finding.Debris == answer.Question.Debris)];
        page.Heading("What was seen");
        if (findings.Length == 0)
            page.Paragraph("Nothing yet. The shares below say only how usual each part is.", indent: 2);
        foreach (Finding finding in findings)
            page.Row(2, (names.Of(finding.Part.Value), 26), (SuspectWords.Seen(finding, page.Look), 0));
        WriteContradictions(page, answer);
        foreach (Finding finding in answer.Unexplained)
            page.Paragraph($"No way leads to {names.InSentence(finding.Part.Value)} from any part that sheds {finding.Debris.Name}. Is a joint or a source missing in the family file, or is this left from an earlier failure?", indent: 2);
    }

    private static void Suspects(TextPage page, SuspectAnswer answer, Names names)
    {
        page.Heading("Suspects");
        if (answer.Suspects.IsEmpty)
            page.Paragraph($"The family names no part that sheds {answer.Question.Debris.Name}.", indent: 2);
        Suspect[] shown = [.. answer.Suspects.TakeWhile((suspect, i) => i == 0 || suspect.Share >= SmallShare)];
        foreach (List<Suspect> group in Folded(shown, names, suspect => SuspectWords.Percent(suspect.Share) + string.Join(' ', SuspectWords.Reasons(suspect, answer.Question, names, page.Look))))
        {
            string share = SuspectWords.Percent(group[0].Share) + (group.Count > 1 ? " each" : "");
            string reasons = string.Join(' ', SuspectWords.Reasons(group[0], answer.Question, names, page.Look));
            page.Row(2, (share, 13), ($"{names.FoldedAtStart(group.Select(suspect => suspect.Part.Value))}. {reasons}", 0));
        }

        if (answer.Suspects.Length > shown.Length)
        {
            page.Row(2, ("", 13), (string.Create(
                CultureInfo.InvariantCulture,
                $"{answer.Suspects.Length - shown.Length} more under 1 %, {SuspectWords.Percent(answer.Suspects.Skip(shown.Length).Sum(suspect => suspect.Share))} together."), 0));
        }
    }

    private static void Together(TextPage page, SuspectAnswer answer, Names names)
    {
        if (answer.Together.IsEmpty)
            return;
        page.Heading("More than one source");
        page.Paragraph($"No single part accounts for all that was found. {(answer.TogetherIsSmallest ? "The fewest parts that do" : "These do, perhaps not the fewest")}{(answer.TogetherIsComplete ? "" : ", not all such sets shown")}:", indent: 2);
        foreach (ImmutableArray<PartId> set in answer.Together)
            page.Paragraph(string.Join(" and ", set.Select(part => names.InSentence(part.Value))), indent: 4);
        page.Paragraph("The shares above are for one source at a time.", indent: 2);
    }

    private static void NextLooks(TextPage page, SuspectAnswer answer, Names names)
    {
        ImmutableArray<NextLook> looks = Looking.Next(answer);
        page.Heading("Where to look next");
        if (looks.IsEmpty)
            page.Paragraph("No look that is left tells one suspect from another.", indent: 2);
        foreach (NextLook next in looks.Take(MostLooks))
        {
            string rate = next.BitsPerMinute is { } bits ? string.Create(CultureInfo.InvariantCulture, $", {bits:0.####} a minute") : "";
            page.Row(2, (names.Of(next.Part.Value), 26), (string.Create(
                CultureInfo.InvariantCulture,
                $"{next.Minutes:0.#} min; tells {next.Bits:0.###} bits{rate}; found there with a chance of {SuspectWords.Percent(next.ChanceFound)}"), 0));
        }

        if (looks.Length > MostLooks)
            page.Paragraph(string.Create(CultureInfo.InvariantCulture, $"{looks.Length - MostLooks} more places tell less for each minute."), indent: 2);
    }

    private static void Plan(TextPage page, LookingPlan plan, Names names)
    {
        string how = plan.IsExact
            ? string.Create(CultureInfo.InvariantCulture, $"No other plan takes less time: {plan.ExpectedMinutes:0.#} min of looking are to be expected.")
            : string.Create(CultureInfo.InvariantCulture, $"With {plan.Places} places, more than {Looking.MostExactPlaces}, the look that tells most for each minute is taken every time; another plan may take less.")
              + (plan.ExpectedMinutes is { } minutes ? string.Create(CultureInfo.InvariantCulture, $" {minutes:0.#} min are to be expected.") : "");
        page.Paragraph($"{how} It ends where one suspect has {SuspectWords.Percent(plan.Sure)} or more, or no look is left that tells anything much.", indent: 2);
        Branch(page, plan.Root, names, "", 2);
    }

    // As deep as the tree, which has 40 looks at most.
    private static void Branch(TextPage page, LookingNode node, Names names, string lead, int indent)
    {
        int shown = Math.Min(indent, DeepestIndent);
        string leaders = names.Folded(node.Leaders.Select(part => part.Value));
        string share = $"{SuspectWords.Percent(node.LeaderShare)}{(node.Leaders.Length > 1 ? " each" : "")}";
        if (node.Look is not { } look)
        {
            page.Paragraph(
                lead + node.End switch
                {
                    LookingEnd.Sure => $"it is {leaders} ({share})",
                    LookingEnd.GoesOn => $"ask again; first so far: {leaders} ({share})",
                    _ when node.Leaders.IsEmpty => "nothing to tell",
                    _ => $"no look tells more; first: {leaders} ({share})",
                },
                shown + 2,
                new string(' ', shown));
            return;
        }

        page.Paragraph(string.Create(CultureInfo.InvariantCulture, $"{lead}look at {names.InSentence(look.Part.Value)}, {look.Minutes:0.#} min"), shown + 2, new string(' ', shown));
        Branch(page, node.Found!, names, "found: ", indent + 2);
        Branch(page, node.Clean!, names, "clean: ", indent + 2);
    }

    private static List<List<Suspect>> Folded(IEnumerable<Suspect> suspects, Names names, Func<Suspect, string> keyOf) =>
        RepeatFolding.Fold(suspects, suspect => names.NumberOf(suspect.Part.Value), suspect => names.RepeatOf(suspect.Part.Value) + " " + keyOf(suspect));
}
