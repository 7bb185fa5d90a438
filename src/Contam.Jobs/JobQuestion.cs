using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Reading.Sheets;
using Contam.Plans;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Jobs;

/// <summary>What a job is opened from: family, standard, what failed and what was seen. The plan follows from it; nobody brings one along.</summary>
/// <param name="Family">The family, as read from files.</param>
/// <param name="Standard">The standard, its layers joined.</param>
/// <param name="StandardSources">The texts of the standard, each laid over those before it.</param>
/// <param name="Failures">The parts that have failed, with what each shed; empty where they are taken from what was found.</param>
/// <param name="Debris">All that they shed, at least one. Empty where it is said of every failed part that it shed nothing, and nothing was found.</param>
public sealed record JobQuestion(Family Family, ShopStandard Standard, ImmutableArray<SourceCopy> StandardSources, ImmutableArray<PartFailure> Failures, ImmutableArray<Debris> Debris)
{
    /// <summary>What was seen before the job.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>How many technicians work at once.</summary>
    public int Technicians { get; init; } = 1;

    /// <summary>Where no part is named: the share from which a suspect counts as failed, above 0 and at most 1.</summary>
    public double Share { get; init; } = 0.05;

    /// <summary>The most looks that may decide how far to go, from 0 to <see cref="HowFar.MostLooks"/>; 0 for a job in which all that could be reached is treated.</summary>
    public int MostLooks { get; init; } = HowFar.MostLooks;

    /// <summary>The places of the deciding looks, held fixed; <c>null</c> to have them chosen.</summary>
    public ImmutableArray<PartId>? LookAt { get; init; }

    /// <summary>How much was taken in of the files.</summary>
    public ReadLimits Limits { get; init; } = ReadLimits.Default;

    /// <summary>The question that a plan says it answers. The plan itself is not taken on trust: see <see cref="JobBook.Prepare"/>.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="family">The family that it is said to be for.</param>
    /// <param name="standard">The standard that it is said to be by.</param>
    /// <param name="standardSources">Its texts.</param>
    /// <returns>The question; <c>null</c> where it names a part or debris that there is not.</returns>
    public static JobQuestion? Of(PlanDocument plan, Family family, ShopStandard standard, ImmutableArray<SourceCopy> standardSources)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(standard);
        Catalogue catalogue = standard.CatalogueOf();
        Debris?[] debris = [.. plan.Debris.Select(catalogue.FindDebris)];
        ImmutableArray<PlanFailure> failed = plan.FromFindings is null ? plan.Failed : [];
        if ((debris.Length == 0 && (failed.IsEmpty || !plan.Findings.IsEmpty)) || debris.Contains(null)
            || failed.Any(failure => failure.Debris.Any(one => !plan.Debris.Contains(one)) || failure.UpToUm is not (null or (> 0 and < double.PositiveInfinity)))
            || failed.Select(failure => new PartId(failure.Part)).Concat(plan.Findings.Select(finding => new PartId(finding.Part))).Any(part => family.Find(part) is null)
            || plan.Findings.Any(finding => catalogue.FindDebris(finding.Debris) is null) || plan.Hours.Technicians is < 1 or > 100 || plan.FromFindings is { Share: not (> 0 and <= 1) })
            return null;
        ImmutableArray<PartFailure> failures = PlanFailures.AllShedTheSame(failed, plan.Debris)
            ? [.. failed.Select(failure => new PartFailure(new PartId(failure.Part)))]
            : [.. failed.Select(failure => failure.Asked(name => catalogue.FindDebris(name)!))];
        var question = new JobQuestion(family, standard, standardSources, failures, [.. debris.Select(one => one!)])
        {
            Findings = [.. plan.Findings.Select(finding => new Finding(new PartId(finding.Part), catalogue.FindDebris(finding.Debris)!, finding.Found)
            {
                Size = finding.SizeUm is { } size ? ParticleSize.FromMicrometres(size) : null,
                By = finding.By,
                When = finding.When,
            })],
            Technicians = plan.Hours.Technicians,
            MostLooks = plan.Looks.IsEmpty ? 0 : HowFar.MostLooks,
        };
        return plan.FromFindings is { } share ? question with { Share = share.Share } : question;
    }
}

/// <summary>Whose engine it is, and who is in charge of it.</summary>
/// <param name="Customer">Whose engine.</param>
/// <param name="Engine">Which: boat, number, side.</param>
/// <param name="Technician">Who is in charge.</param>
public sealed record JobHead(string Customer, string Engine, string Technician);

/// <summary>A plan that somebody brings along. It is taken only where the question gives the very same, and every clean finding in it is confirmed.</summary>
/// <param name="Text">The whole text of the file.</param>
/// <param name="Confirmed">Who stands for which clean finding.</param>
public sealed record PlanFile(string Text, ImmutableArray<Confirmation> Confirmed);
