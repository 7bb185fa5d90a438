using Contam.Plans;
using Contam.Spread;

namespace Contam.Reports.Text;

/// <summary>How finds that disprove clean looks, or speak for a further source, are told; the same in every report.</summary>
public static class ContradictionWords
{
    /// <summary>Why a clean look counts for nothing, as a clause.</summary>
    /// <param name="debris">The debris.</param>
    /// <param name="find">Where it was found, as it stands within a sentence.</param>
    public static string Void(string debris, string find) =>
        $"clears nothing, because {debris} was found at {find} and cannot have come there from a failed part if every look on its way was right";

    /// <summary>What a find says of a source, as a clause; empty where it says nothing.</summary>
    public static string Source(PlanFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return finding.Source switch
        {
            PlanFinding.OwnSource => "nothing leads there from a failed part, so it has a source of its own; look for that",
            PlanFinding.FurtherSource => "larger than anything that a failed part can send there; look for a further source",
            _ => "",
        };
    }

    /// <summary>The void looks of a plan and the finds with another source, a sentence each, in the order of its findings.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="nameOf">A part as it stands within a sentence.</param>
    public static IEnumerable<string> Sentences(PlanDocument plan, Func<string, string> nameOf)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(nameOf);
        foreach (PlanFinding finding in plan.Findings)
        {
            if (Sentence(finding, nameOf) is { } sentence)
                yield return sentence;
        }
    }

    /// <summary>What is to be said of a finding beyond what was seen; <c>null</c> for nothing.</summary>
    internal static string? Sentence(PlanFinding finding, Func<string, string> nameOf) =>
        finding.ContradictedBy is { } find && finding.Void ? $"The clean look at {nameOf(finding.Part)} {Void(finding.Debris, nameOf(find))}."
        : Source(finding) is { Length: > 0 } source ? $"The find of {finding.Debris} at {nameOf(finding.Part)}: {source}."
        : null;

    /// <summary>The same for an answer that is no plan.</summary>
    internal static IEnumerable<string> Sentences(IEnumerable<Contradiction> contradictions, Names names)
    {
        foreach (Contradiction one in contradictions)
        {
            string find = names.InSentence(one.Find.Part.Value);
            if (!one.Voids.IsEmpty)
                yield return $"The clean look at {names.Folded(one.Voids.Select(part => part.Value))} {Void(one.Find.Debris.Name, find)}.";
            if (one.Origin != FindOrigin.Failure)
                yield return $"The find of {one.Find.Debris.Name} at {find}: {Source(new PlanFinding { Part = one.Find.Part.Value, Debris = one.Find.Debris.Name, Source = one.Origin == FindOrigin.OwnSource ? PlanFinding.OwnSource : PlanFinding.FurtherSource })}.";
        }
    }
}
