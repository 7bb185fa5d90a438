using System.Globalization;
using Contam.Diagnosis;
using Contam.Families;

namespace Contam.Reports.Text;

/// <summary>Why a part is suspected, in sentences that a customer follows; the same in text and JSON.</summary>
internal static class SuspectWords
{
    /// <summary>A sentence on how usual it is, and one for each finding that says something.</summary>
    public static IEnumerable<string> Reasons(Suspect suspect, SuspectQuestion question, Names names, TextLook look)
    {
        string debris = suspect.Shed.Debris.Name;
        yield return suspect.Shed.Likely switch
        {
            Likelihood.Common => $"It is a usual source of {debris}.",
            Likelihood.Occasional => $"It sheds {debris} now and then.",
            _ => $"It seldom sheds {debris}.",
        };
        foreach (Evidence evidence in suspect.Evidence)
        {
            if (Sentence(suspect, evidence, question, names, look) is { } sentence)
                yield return sentence;
        }
    }

    /// <summary>A share for people.</summary>
    public static string Percent(double share) => share is > 0 and < 0.0005 ? "under 0.1 %" : string.Create(CultureInfo.InvariantCulture, $"{share * 100:0.#} %");

    /// <summary>What was seen, without where.</summary>
    public static string Seen(Finding finding, TextLook look)
    {
        if (!finding.Found)
            return $"clean of {finding.Debris.Name}";
        string[] looks = [.. Looks(finding, look)];
        return $"{finding.Debris.Name} found{(looks.Length == 0 ? "" : $" ({string.Join(", ", looks)})")}";
    }

    private static IEnumerable<string> Looks(Finding finding, TextLook look)
    {
        if (finding.Size is { IsUnlimited: false } size)
            yield return UnitText.Size(size.Micrometres, look);
        if (finding.Form is { } form)
            yield return form.ToString().ToLowerInvariant();
        if (finding.Magnetic is { } magnetic)
            yield return magnetic ? "magnetic" : "not magnetic";
    }

    private static string? Sentence(Suspect suspect, Evidence evidence, SuspectQuestion question, Names names, TextLook look)
    {
        Finding finding = evidence.Finding;
        string debris = finding.Debris.Name;
        bool isHere = finding.Part == suspect.Part;
        string place = names.InSentence(finding.Part.Value);
        string found = isHere ? $"{Capital(debris)} was found at this very part" : $"{Capital(debris)} was found at {place}";
        return evidence.Sort switch
        {
            EvidenceSort.Fits when isHere => found + ".",
            EvidenceSort.Fits => finding.Size is { } size ? $"{found}, and its {debris} gets there, pieces of {UnitText.Size(size.Micrometres, look)} too." : $"{found}, and its {debris} gets there.",
            EvidenceSort.LooksOtherwise => $"{found}, but {Otherwise(finding, suspect.Shed)}.",
            EvidenceSort.HeldBack => $"{found}, but {HeldBack(suspect, evidence, look)}.",
            EvidenceSort.NoWay => $"{found}, but no way leads there from it.",
            EvidenceSort.CleanThoughExposed => $"{(isHere ? "It" : Capital(place))} was clean, {(isHere ? "and would not be" : $"where its {debris} would have come")}; a look there {HowSure(question, finding.Part)}.",
            EvidenceSort.CleanBehindBarrier => $"{Capital(place)} was clean, but a barrier stands before it, so that this says nothing.",
            _ => null,
        };
    }

    private static string Otherwise(Finding finding, Shed shed)
    {
        var differ = new List<string>();
        if (finding.Form is { } form && shed.Form is { } sheds && form != sheds)
            differ.Add($"it sheds {sheds.ToString().ToLowerInvariant()} and these were {form.ToString().ToLowerInvariant()}");
        if (finding.Magnetic is { } magnetic && shed.Magnetic is { } isMagnetic && magnetic != isMagnetic)
            differ.Add(isMagnetic ? "what it sheds is magnetic and this was not" : "what it sheds is not magnetic and this was");
        return string.Join(", and ", differ);
    }

    private static string HeldBack(Suspect suspect, Evidence evidence, TextLook look)
    {
        double arrives = evidence.Arrives!.Value.Micrometres;
        if (arrives == 0)
            return "a barrier on every way there holds all of it";
        string size = UnitText.Size(evidence.Finding.Size!.Value.Micrometres, look);
        return arrives >= suspect.Shed.UpTo.Micrometres
            ? $"it sheds nothing larger than {UnitText.Size(arrives, look)}, and these pieces were {size}"
            : $"a barrier on every way there lets on {UnitText.Size(arrives, look)} at most, and these pieces were {size}";
    }

    /// <summary>A find that clean looks contradict, as a sentence.</summary>
    public static string Contradicted(SuspectContradiction one, Names names) =>
        $"{Capital(one.Find.Debris.Name)} was found at {names.InSentence(one.Find.Part.Value)}, and no suspect can have sent it there if {names.Folded(one.Clean.Select(part => part.Value))} {(one.Clean.Length == 1 ? "was" : "were")} clean. One of the two is wrong, or the family file lacks a source: look there again.";

    private static string HowSure(SuspectQuestion question, PartId part)
    {
        if (question.History?.At(part, question.Debris) is { Looks: > 0 } count)
            return string.Create(CultureInfo.InvariantCulture, $"showed it in {count.Found} of {count.Looks} jobs here, which with its word makes {Percent(question.History.ChanceToShow(question.Family[part], question.Debris))}");
        return HowSure(question.Family[part].Inspect);
    }

    private static string HowSure(Inspection? look) => look?.Shows switch
    {
        Shows.Good => "shows it well",
        Shows.Fair => "shows it fairly well",
        _ => "easily misses it",
    };

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
