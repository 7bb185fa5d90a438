using System.Collections.Immutable;
using Contam.Families;
using Contam.Procedure;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Plans;

/// <summary>The one door that makes a plan: family and failure in, ordered clean-out out.</summary>
public static class Planner
{
    /// <summary>
    /// Makes the plan. The same request always gives the same plan.
    /// </summary>
    /// <exception cref="ArgumentException">There is neither a failed part nor a find of the debris asked for, no debris although something may have been shed, or debris that is not asked about, or no technician.</exception>
    /// <exception cref="KeyNotFoundException">A failed part or a finding names a part that the family does not have.</exception>
    /// <exception cref="OrderCycleException">The access of parts goes round in a circle; the reader refuses such a family.</exception>
    public static PlanDocument Plan(PlanRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        Check(request);
        Family family = request.Family;
        ImmutableArray<PartFailure> failures = request.Failures.InOrderOf(family);
        ImmutableArray<PartId> failed = failures.PartsOf();
        ImmutableArray<Debris> debris = [.. request.Debris.Distinct()];
        ImmutableArray<DebrisSpread> spreads = SpreadsOf(request);
        var branching = Branching.Of(request);
        ImmutableArray<PartTreatment> asked = branching?.Treatments ?? Treating.Decide(family, spreads, failed, new RuleBook(request.Standard));
        var procedureRequest = new ProcedureRequest(family, request.Standard, failures, spreads, asked);
        if (branching is not null)
            procedureRequest = procedureRequest with { Looks = branching.Looks(family), When = branching.When() };
        ProcedureDraft draft = ProcedureBuilder.Build(procedureRequest);
        var bearing = new Bearing(family, spreads);
        var steps = new PlanSteps(procedureRequest, draft, bearing, request, branching);

        return new PlanDocument
        {
            Family = new PlanFamily(family.Id, family.Title, family.Sha256),
            Standard = new PlanStandard(request.Standard.Id, request.Standard.Sha256),
            Failed = PlanFailures.Of(failures, debris),
            Debris = [.. debris.Select(one => one.Name)],
            FromFindings = request.FromFindings,
            Notes = FailureNotes.Of(request),
            Findings = PlanParts.Findings(request.Findings, spreads),
            Cautions = PlanSteps.Cautions(CautionBook.Place(request.Standard, steps.Graph, bearing)),
            Parts = PlanParts.Of(spreads, draft, bearing, branching),
            Conditional = PlanParts.Conditional(family, spreads),
            Clear = family.Parts.Length - asked.Length,
            Methods = steps.Methods,
            Before = steps.Before,
            Looks = branching?.Of(steps.LookJobs, steps.Steps) ?? [],
            Disproofs = branching?.Disproofs() ?? [],
            Steps = steps.Steps,
            Order = [.. OrderList.Of(procedureRequest, draft).Select(line => new PlanOrderLine(line.Item, line.Quantity, line.Why, line.Unit, line.Lead?.TotalDays) { OnlyIf = Branching.Letters(line.When.OnlyIf) })],
            Sequence = request.Sequence,
            Hours = steps.Hours with { WorkingDay = new WorkTimes(request.Standard).WorkingDayMinutes / 60 },
            Evidence = PlanParts.Evidence(spreads),
            Review = request.Review,
        };
    }

    /// <summary>How far each debris that is asked for has gone, by the reading that the plan goes by.</summary>
    public static ImmutableArray<DebrisSpread> SpreadsOf(PlanRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        ImmutableArray<PartFailure> failures = request.Failures.InOrderOf(request.Family);
        return [.. request.Debris.Distinct().Select(one => Spreading.Of(new SpreadQuestion(request.Family, failures, one)
        {
            Findings = request.Findings,
            AcceptsCleanFindings = request.Standard.CleanFindings != CleanFindings.Never,
        }))];
    }

    private static void Check(PlanRequest request)
    {
        bool nothingShed = !request.Failures.IsDefaultOrEmpty && request.Failures.All(failure => failure.ShedNothing);
        if (request.Debris.IsDefaultOrEmpty && !nothingShed)
            throw new ArgumentException("a plan needs at least one debris", nameof(request));
        if (request.Failures.FirstOrDefault(failure => failure.Debris?.Any(debris => !request.Debris.Contains(debris)) == true) is { } left)
            throw new ArgumentException($"{left.Part} shed something that the plan is not asked about", nameof(request));
        if (request.Technicians < 1)
            throw new ArgumentException("a plan needs at least one technician", nameof(request));
        foreach (Finding finding in request.Findings)
            _ = request.Family[finding.Part];
        if (request.Failures.IsDefaultOrEmpty && !request.Findings.Any(finding => finding.Found && request.Debris.Contains(finding.Debris)))
            throw new ArgumentException("a plan needs a failed part, or a place where the debris was found", nameof(request));
    }
}
