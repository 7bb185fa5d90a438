using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Reading.Sheets;
using Contam.Jobs.Entries;
using Contam.Plans;
using Contam.Proof;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Jobs.Documents;

/// <summary>What a job is opened with.</summary>
/// <param name="Plan">The plan.</param>
/// <param name="Family">The family that it is for, as read from files.</param>
/// <param name="Standard">The standard, its layers joined.</param>
/// <param name="StandardSources">Its texts, the lower first.</param>
public sealed record JobOpening(PlanDocument Plan, Family Family, ShopStandard Standard, ImmutableArray<SourceCopy> StandardSources)
{
    /// <summary>How much was taken in of the files.</summary>
    public ReadLimits Limits { get; init; } = ReadLimits.Default;

    /// <summary>Why no job may be opened with this plan, in a sentence without a full stop; <c>null</c> where one may.</summary>
    public string? WhyNot()
    {
        Verification verification = PlanVerifier.Verify(Plan, Family, Standard.CatalogueOf().Debris);
        if (verification.Claims.FirstOrDefault(claim => !claim.Holds) is { } broken)
            return broken.Where;
        if (Plan.Standard.Sha256 != Standard.Sha256)
            return "it was made by another standard than this";
        for (int index = 0; index < Plan.Steps.Length; index++)
        {
            PlanStep step = Plan.Steps[index];
            if (step.Number != index + 1 || step.After.Any(first => first < 1 || first >= step.Number))
                return FormattableString.Invariant($"step {index + 1} does not come after the steps that it waits for");
            // What may be left for after the first start is decided by this alone, so it is not taken on trust.
            bool isAfterRun = step.DueAfterRunningHours is not null;
            if (isAfterRun && (step.Phase != Phase.Prove || step.Action != StepAction.Prove))
                return FormattableString.Invariant($"step {step.Number} is said to be due after the first run, and is no step that proves the engine");
            if (!isAfterRun && step.After.Any(first => Plan.Steps[first - 1].DueAfterRunningHours is not null))
                return FormattableString.Invariant($"step {step.Number} comes before the first start, and waits for one that comes after it");
        }

        return null;
    }

    /// <summary>The first entry, and the texts that it names.</summary>
    public (Opened Entry, ImmutableArray<string> Texts) Entry(string customer, string engine, string technician, DateTimeOffset at, string by)
    {
        string plan = PlanJson.Write(Plan);
        ImmutableArray<string> texts = [plan, .. Family.Sources.Select(file => file.Text), .. StandardSources.Select(file => file.Text)];
        var opened = new Opened
        {
            At = at,
            By = by,
            Customer = customer,
            Engine = engine,
            Technician = technician,
            Plan = EntryChain.Sha256(plan),
            Family = [.. Family.Sources.Select(KeptFileOf)],
            Standard = [.. StandardSources.Select(KeptFileOf)],
            Limits = KeptLimits.Of(Limits),
            OnlySuspected = Plan.FromFindings is null ? null : true,
            Looks = [.. Plan.Findings.Select(LookOf)],
        };
        return (opened, texts);
    }

    private static KeptFile KeptFileOf(SourceCopy file) => new(file.Name, EntryChain.Sha256(file.Text));

    private static SeenAt LookOf(PlanFinding finding) => new(finding.Part, finding.Debris, finding.Found) { SizeUm = finding.SizeUm, LookedBy = finding.By, LookedWhen = finding.When };
}
