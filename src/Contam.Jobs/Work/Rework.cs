using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Jobs.Entries;
using Contam.Plans;
using Contam.Reports.Text;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Jobs.Work;

/// <summary>What a new plan changes in a job.</summary>
public sealed class PlanChange
{
    internal PlanChange()
    {
    }

    /// <summary>The new plan.</summary>
    internal PlanDocument Plan { get; init; } = null!;

    /// <summary>The looks that it was made with and that the plan before was not.</summary>
    internal ImmutableArray<LookTaken> Answers { get; init; } = [];

    /// <summary>The steps that will hold.</summary>
    internal WorkSteps Steps { get; init; } = null!;

    /// <summary>Steps that are new, by number.</summary>
    internal ImmutableArray<WorkStep> Added { get; init; } = [];

    /// <summary>Steps that were done and are open again, by number, each with why.</summary>
    internal ImmutableArray<(WorkStep Step, string Because)> Reopened { get; init; } = [];

    /// <summary>Steps that are gone, by their old number; done or not.</summary>
    internal ImmutableArray<WorkStep> Dropped { get; init; } = [];

    /// <summary>Steps of the plan before that stay due: a part that is off must go back.</summary>
    internal ImmutableArray<CarriedStep> Carried { get; init; } = [];

    /// <summary>How many steps are done and stay so.</summary>
    internal int StayDone { get; init; }

    /// <summary>What the finds say against clean looks, and of further sources, and did not say before; a sentence each.</summary>
    internal ImmutableArray<string> Contradicted { get; init; } = [];

    /// <summary>Parts that are reached now and were not, in the order of the family.</summary>
    internal ImmutableArray<PlanPart> PartsAdded { get; init; } = [];

    /// <summary>Parts that were reached, or not cleared, and need nothing now; in the order of the family.</summary>
    internal ImmutableArray<PlanPart> PartsDropped { get; init; } = [];

    /// <summary>Whether the work stays as it is.</summary>
    public bool ChangesNothing => Added.IsEmpty && Reopened.IsEmpty && Dropped.IsEmpty;
}

/// <summary>
/// Plans the work of a job again with what was seen since. What is done stays done, unless a find dirties it again (see <see cref="Dirtying"/>) or it
/// was done on the strength of something that is open now (see <see cref="Reopening"/>). A part that is off goes back, also where the new plan has
/// no more work at it.
/// </summary>
internal static class Rework
{
    private const int MostNamed = 5;

    /// <summary>The change that these looks bring, together with those of the job that no plan has been made with yet.</summary>
    /// <param name="state">How the job stands.</param>
    /// <param name="family">The family, as the job keeps it.</param>
    /// <param name="standard">The standard, as the job keeps it.</param>
    /// <param name="looks">Looks beyond those in the state; parts and debris are of the family and the standard.</param>
    public static PlanChange Of(JobState state, Family family, ShopStandard standard, ImmutableArray<LookTaken> looks)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(standard);
        Catalogue catalogue = standard.CatalogueOf();
        ImmutableArray<LookTaken> answers = [.. state.Unanswered, .. looks];
        PlanDocument plan = WithLooks(RequestOf(state, family, standard, catalogue, answers));
        ImmutableArray<CarriedStep> carried = CarriedInto(state, plan);
        WorkSteps now = WorkSteps.Of(plan, carried);
        var opened = new List<OpenAgain>();
        foreach (LookTaken find in answers.Where(look => look.Seen.Found))
            opened.AddRange(Dirtying.Of(state, family, find, catalogue.FindDebris(find.Seen.Debris)!).Where(one => now.Find(one.Key) is not null && opened.All(other => other.Key != one.Key)));
        foreach (PlanFinding disproved in NewlyVoid(state, plan))
            opened.AddRange(Dirtying.OfVoid(state, family, disproved.Part, catalogue.FindDebris(disproved.Debris)!).Where(one => now.Find(one.Key) is not null && opened.All(other => other.Key != one.Key)));
        // A tick of a plan before the last says nothing of what has come since: nobody looked after a step that was in no plan.
        opened.AddRange(now.All.Where(step => state.TickOf.ContainsKey(step.Key) && state.Steps.Find(step.Key) is null && opened.All(other => other.Key != step.Key))
            .Select(step => new OpenAgain(step.Key, "it was done for an earlier plan, and was in none since")));
        if (MoreToOrder(state.Plan, plan) is { } more && state.TickOf.ContainsKey(StepKey.Order) && now.Find(StepKey.Order) is not null)
            opened.Add(new OpenAgain(StepKey.Order, more));
        Reopening.Follow(state, state with { Plan = plan, Steps = now, LooksStand = LookTable.Unsaid(plan), Outcomes = ImmutableDictionary<string, Decided>.Empty }, family, opened);
        return Describe(state, plan, now, carried, opened, answers);
    }

    /// <summary>The entry that takes a change.</summary>
    public static Replanned Entry(PlanChange change, string plan, DateTimeOffset at, string by)
    {
        ArgumentNullException.ThrowIfNull(change);
        return new Replanned
        {
            At = at,
            By = by,
            Plan = EntryChain.Sha256(plan),
            Answers = [.. change.Answers.Select(look => look.Sequence)],
            Reopened = [.. change.Reopened.Select(one => new OpenAgain(one.Step.Key, one.Because))],
            Carried = change.Carried,
        };
    }

    private static PlanChange Describe(
        JobState state, PlanDocument plan, WorkSteps now, ImmutableArray<CarriedStep> carried, List<OpenAgain> opened, ImmutableArray<LookTaken> answers)
    {
        var before = state.Plan.Parts.Where(NeedsWork).Select(part => part.Id).ToHashSet(StringComparer.Ordinal);
        var after = plan.Parts.Where(NeedsWork).Select(part => part.Id).ToHashSet(StringComparer.Ordinal);
        return new PlanChange
        {
            Plan = plan,
            Answers = answers,
            Steps = now,
            Added = [.. now.All.Where(step => state.Steps.Find(step.Key) is null)],
            Reopened = [.. opened.Select(one => (Step: now.Find(one.Key)!, one.Because)).OrderBy(one => one.Step.Number)],
            Dropped = [.. state.Steps.All.Where(step => now.Find(step.Key) is null)],
            Carried = carried,
            StayDone = now.All.Count(step => state.IsDone(step) && opened.All(one => one.Key != step.Key)),
            Contradicted = [.. ContradictionWords.Sentences(plan, id => id).Except(ContradictionWords.Sentences(state.Plan, id => id), StringComparer.Ordinal)],
            PartsAdded = [.. plan.Parts.Where(part => NeedsWork(part) && !before.Contains(part.Id))],
            PartsDropped = [.. state.Plan.Parts.Where(part => NeedsWork(part) && !after.Contains(part.Id))],
        };
    }

    /// <summary>The clean findings that the new plan calls void and the old one did not, each place and debris once.</summary>
    private static IEnumerable<PlanFinding> NewlyVoid(JobState before, PlanDocument after) => after.Findings
        .Where(finding => finding.Void && !before.Plan.Findings.Any(old => old.Void && old.Part == finding.Part && old.Debris == finding.Debris))
        .Where(finding => !before.Plan.Looks.Any(look => before.StandingOf(look.Id) == LookStanding.Void && look.Places.Contains(finding.Part) && look.Debris.Contains(finding.Debris)))
        .DistinctBy(finding => (finding.Part, finding.Debris));

    /// <summary>What the new plan's order list has more of than the old one's, as the reason why ordering is open again; <c>null</c> for nothing.</summary>
    private static string? MoreToOrder(PlanDocument before, PlanDocument after)
    {
        string[] more =
        [
            .. after.Order.GroupBy(line => (line.Item, line.Unit))
                .Where(item => item.Sum(line => line.Quantity) > before.Order.Where(line => line.Item == item.Key.Item && line.Unit == item.Key.Unit).Sum(line => line.Quantity))
                .Select(item => item.Key.Item),
        ];
        return more.Length == 0 ? null : $"more is to be ordered: {string.Join(", ", more.Take(MostNamed))}{(more.Length > MostNamed ? $" and {(more.Length - MostNamed).ToString(CultureInfo.InvariantCulture)} more" : "")}";
    }

    private static bool NeedsWork(PlanPart part) => !part.Treatment.IsEmpty;

    /// <summary>
    /// The plan, with looks as the job was opened with. Of places that were named those stay that still decide something; where they cannot be looks together, all
    /// that could be reached is treated.
    /// </summary>
    private static PlanDocument WithLooks(PlanRequest request)
    {
        if (request.LookAt is not { } named)
            return Planner.Plan(request);
        ImmutableArray<PartId> deciding = [.. named.Where(place => IsDeciding(request, place))];
        return (deciding.IsEmpty ? null : Tried(request with { LookAt = deciding })) ?? Planner.Plan(request with { LookAt = null, MostLooks = 0 });
    }

    private static bool IsDeciding(PlanRequest request, PartId place)
    {
        try
        {
            return !HowFar.Of(request, lookAt: [place]).Looks.IsEmpty;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }

    private static PlanDocument? Tried(PlanRequest request)
    {
        try
        {
            return Planner.Plan(request);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static PlanRequest RequestOf(JobState state, Family family, ShopStandard standard, Catalogue catalogue, ImmutableArray<LookTaken> answers)
    {
        ImmutableArray<LookTaken> counted = [.. state.Looks.Where(look => look.IsAnswered), .. answers];
        var asked = state.Plan.Debris.Concat(answers.Where(look => look.Seen.Found).Select(look => look.Seen.Debris)).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<Debris> debris = [.. catalogue.Debris.Where(debris => asked.Contains(debris.Name))];
        return new PlanRequest(
            family,
            standard,
            FailuresOf(state.Plan, family, catalogue, answers, debris),
            debris)
        {
            Findings = [.. counted.Select(look => FindingOf(look.Seen, catalogue))],
            Technicians = state.Plan.Hours.Technicians,
            MostLooks = state.Opened.Question?.MostLooks ?? 0,
            LookAt = state.Opened.Question?.LookAt is { } places ? [.. places.Where(place => !counted.Any(look => look.Seen.Part == place)).Select(place => new PartId(place))] : null,
        };
    }

    /// <summary>
    /// What the plan says of its failures, and what the looks say of further ones. A failure that shed everything the plan was about may have shed what is only
    /// found now as well; one that was said to have shed some of it, or nothing, did not. A part found to have failed shed what was found, and of the rest what its family says;
    /// where that says nothing of it, all.
    /// </summary>
    private static ImmutableArray<PartFailure> FailuresOf(PlanDocument plan, Family family, Catalogue catalogue, ImmutableArray<LookTaken> answers, ImmutableArray<Debris> debris)
    {
        ImmutableArray<Debris> added = debris.RemoveAll(one => plan.Debris.Contains(one.Name));
        IEnumerable<PartFailure> mayHaveShedMore = added.IsEmpty || plan.Debris.IsEmpty ? []
            : plan.Failed.GroupBy(failure => failure.Part, StringComparer.Ordinal)
                .Where(part => plan.Debris.All(one => part.Any(failure => failure.Debris.Contains(one))))
                .Select(part => new PartFailure(new PartId(part.Key)) { Debris = added });
        IEnumerable<PartFailure> found = answers.Where(look => look.Seen.Failed).Select(look => new PartId(look.Seen.Part)).Distinct().Select(part => new PartFailure(part)
        {
            Debris = debris.RemoveAll(one => !family[part].Sheds.IsEmpty && family[part].ShedOf(one) is null && !answers.Any(look => look.Seen.Found && look.Seen.Part == part.Value && look.Seen.Debris == one.Name)),
        });
        return [.. plan.Failures(name => catalogue.FindDebris(name)!), .. mayHaveShedMore, .. found];
    }

    /// <summary>A look as a finding, with all that was said of it.</summary>
    internal static Finding FindingOf(SeenAt seen, Catalogue catalogue) => new(new PartId(seen.Part), catalogue.FindDebris(seen.Debris) ?? throw new ArgumentException($"there is no debris {seen.Debris}"), seen.Found)
    {
        Size = seen.SizeUm is { } size ? ParticleSize.FromMicrometres(size) : null,
        Form = Enum.TryParse(seen.Form, ignoreCase: true, out DebrisForm form) ? form : null,
        Magnetic = seen.Magnetic,
        By = seen.LookedBy,
        When = seen.LookedWhen,
    };

    /// <summary>The refits of parts that are off and that the new plan would not put back, part by part: of those that share a step some may be planned.</summary>
    private static ImmutableArray<CarriedStep> CarriedInto(JobState state, PlanDocument plan)
    {
        var planned = plan.Steps.Where(step => step.Action == StepAction.Refit).SelectMany(step => StepKey.PartsOf(step)).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. from step in state.Steps.All
               where step.Action == StepAction.Refit && !state.IsDone(step)
               from part in step.Parts
               where !planned.Contains(part) && (step.IsCarried || state.MustGoBack(part))
               select new CarriedStep(
                   StepKey.OfRefit(part),
                   part,
                   step.Parts.Length == 1 ? step.Text : $"{part}: {step.Text}",
                   step.Minutes / step.Parts.Length,
                   [.. step.After.Select(number => state.Steps.Find(number)!.Key)]),
        ];
    }
}
