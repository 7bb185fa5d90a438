using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Contam.Families;
using Contam.Jobs.Entries;
using Contam.Jobs.Work;
using Contam.Plans;
using Contam.Proof;
using Contam.Treatment.Reading;

namespace Contam.Jobs.Documents;

/// <summary>The plan that an opening gives, made from the texts that the job keeps; and whether another text is the same plan.</summary>
internal static partial class Planned
{
    /// <summary>The plan; <c>null</c> where nothing accounts for what was found.</summary>
    /// <exception cref="ArgumentException">The question names nothing that failed and nothing that was found.</exception>
    public static PlanDocument? Of(KeptSystem kept, KeptQuestion question, ImmutableArray<SeenAt> looks)
    {
        Catalogue catalogue = kept.Standard.CatalogueOf();
        Debris Find(string name) => catalogue.FindDebris(name) ?? throw new ArgumentException($"there is no debris {name}");
        var request = new PlanRequest(kept.Family, kept.Standard, question.Failures(Find), [.. question.Debris.Select(Find)])
        {
            Findings = [.. looks.Select(look => Rework.FindingOf(look, catalogue))],
            Technicians = question.Technicians,
            MostLooks = question.MostLooks ?? 0,
            LookAt = question.LookAt is { } places ? [.. places.Select(place => new PartId(place))] : null,
        };
        PlanRequest? asked = question.Share is { } share ? FailedFromFindings.Take(request, share) : request;
        return asked is null ? null : Planner.Plan(asked);
    }

    /// <summary>Why no work may be begun with this plan, as a clause; <c>null</c> where it may. By code that shares nothing with what made it.</summary>
    public static string? WhyNot(PlanDocument plan, KeptSystem kept)
    {
        Verification verification = PlanVerifier.Verify(plan, kept.Family, kept.Standard.CatalogueOf().Debris);
        if (verification.Claims.FirstOrDefault(claim => !claim.Holds) is { } broken)
            return broken.Where;
        for (int index = 0; index < plan.Steps.Length; index++)
        {
            PlanStep step = plan.Steps[index];
            if (step.Number != index + 1 || step.After.Any(first => first < 1 || first >= step.Number))
                return FormattableString.Invariant($"step {index + 1} does not come after the steps that it waits for");
            // What may be left for after the first start is decided by this alone, so it is not taken on trust.
            bool isAfterRun = step.DueAfterRunningHours is not null;
            if (isAfterRun && (step.Phase != Phase.Prove || step.Action != StepAction.Prove))
                return FormattableString.Invariant($"step {step.Number} is said to be due after the first run, and is no step that proves the engine");
            if (!isAfterRun && step.After.Any(first => plan.Steps[first - 1].DueAfterRunningHours is not null))
                return FormattableString.Invariant($"step {step.Number} comes before the first start, and waits for one that comes after it");
        }

        return null;
    }

    /// <summary>
    /// Where a text first differs from the plan that was due, as a clause; <c>null</c> where it is that plan, byte for byte. Only the folder of a rule's file
    /// may differ, which is how it was typed; and what the text says of reviews of the family does not count, as it changes nothing in the work and the job does not keep it.
    /// </summary>
    public static string? Difference(string brought, string due)
    {
        if (WithoutFolders(brought) == WithoutFolders(due))
            return null;
        string[] here = WithoutFolders(brought).Split('\n');
        string[] there = WithoutFolders(due).Split('\n');
        int line = 0;
        while (line < here.Length && line < there.Length && here[line] == there[line])
            line++;
        return FormattableString.Invariant($"line {line + 1} has {Piece(here, line)}, and planning again gives {Piece(there, line)}");
    }

    private static string Piece(string[] lines, int line)
    {
        string text = line < lines.Length ? lines[line].Trim() : "nothing more";
        return text.Length <= 80 ? text : text[..80] + "…";
    }

    private static string WithoutFolders(string plan) => Reviewed().Replace(RuleFile().Replace(plan, "${key}${name}"), "");

    // A line of its own closes it: within texts a new line is written otherwise.
    [GeneratedRegex(""",\n  "review": \{\n(?:    [^\n]*\n)*  \}(?=\n\}\s*$)""", RegexOptions.CultureInvariant)]
    private static partial Regex Reviewed();

    [GeneratedRegex("""(?<key>"file": ")[^"\n]*[/\\](?<name>[^"/\\\n]*")""", RegexOptions.CultureInvariant)]
    private static partial Regex RuleFile();
}
