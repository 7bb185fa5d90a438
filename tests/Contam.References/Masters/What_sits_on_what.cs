using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Support;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.References.Masters;

/// <summary>
/// Every failure of every family, walked step by step against how its metal sits: what stands on a part is off before it and on after it, what rides on a part
/// is parted from it on the bench, and some kinds have a carrier that the trade knows without being told. Common practice, no source.
/// </summary>
public sealed class What_sits_on_what
{
    private static readonly ShopStandard House = BuiltInStandards.HouseOverKinds;

    // A piston cannot leave its bore under a head, nor rings a piston that is in it; a diaphragm lies in its pump or regulator.
    private static readonly (string Kind, string[] Carriers)[] Usual = [("ring-pack", ["piston"]), ("piston", ["cylinder-head"]), ("diaphragm", ["pump", "regulator"])];

    public static TheoryData<string> Families => [.. Directory.GetFiles(RepositoryFiles.At("systems/families"), "*.yaml").Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Families))]
    public void Is_kept_by_every_strip_and_every_refit(string name)
    {
        Family family = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), House.CatalogueOf()).Value!;
        var broken = new List<string>();
        int plans = 0;
        foreach (Part part in family.Parts)
        {
            foreach (Debris debris in House.CatalogueOf().Debris.Where(debris => part.ShedOf(debris) is not null))
            {
                PlanDocument plan = Planner.Plan(new PlanRequest(family, House, [part.Id], [debris]) { TakesFirstSchedule = true });
                broken.AddRange(Broken(plan, family).Select(what => $"{part.Id} {debris.Name}: {what}"));
                plans++;
            }
        }

        Assert.NotEqual(0, plans);
        Assert.Equal([], broken);
    }

    /// <summary>The walk itself: steps in another order are told.</summary>
    [Fact]
    public void Is_missed_where_steps_change_places()
    {
        MastersPage page = MastersPage.Of("outboard-gearcase", "pinion", "metal");
        Assert.Equal([], Broken(page.Plan, page.Family));
        Assert.Contains("strip: propeller-shaft before propeller-hub", Broken(Swapped(page.Plan, StepAction.Remove, "propeller-shaft", "propeller-hub"), page.Family));
        Assert.Contains("refit: bearing-carrier before reverse-gear", Broken(Swapped(page.Plan, StepAction.Refit, "bearing-carrier", "reverse-gear"), page.Family));
    }

    private static PlanDocument Swapped(PlanDocument plan, StepAction action, string one, string other)
    {
        PlanStep first = plan.Steps.Single(step => step.Action == action && step.Part == one);
        PlanStep second = plan.Steps.Single(step => step.Action == action && step.Part == other);
        return plan with { Steps = plan.Steps.Replace(first, first with { Part = other }).Replace(second, second with { Part = one }) };
    }

    private static IEnumerable<string> Broken(PlanDocument plan, Family family)
    {
        Dictionary<string, int> off = Numbers(plan, StepAction.Remove);
        Dictionary<string, int> on = Numbers(plan, StepAction.Refit);
        foreach (Part part in family.Parts)
        {
            foreach (PartId below in part.StandsOn)
            {
                if (IsBefore(off, below.Value, part.Id.Value))
                    yield return $"strip: {below} before {part.Id}";
                if (IsBefore(on, part.Id.Value, below.Value))
                    yield return $"refit: {part.Id} before {below}";
            }

            string[] usual = Usual.FirstOrDefault(one => one.Kind == part.Kind.Name).Carriers ?? [];
            IEnumerable<PartId> carriers = part.Access.Where(other => usual.Contains(family[other].Kind.Name, StringComparer.Ordinal));
            foreach (PartId carrier in part.RidesOn is { } own ? carriers.Prepend(own) : carriers)
            {
                if (IsBefore(off, part.Id.Value, carrier.Value))
                    yield return $"strip: {part.Id} before {carrier}";
                if (IsBefore(on, carrier.Value, part.Id.Value))
                    yield return $"refit: {carrier} before {part.Id}";
            }
        }
    }

    private static Dictionary<string, int> Numbers(PlanDocument plan, StepAction action) => plan.Steps.Where(step => step.Action == action)
        .SelectMany(step => step.Parts.Append(step.Part ?? "").Where(part => part.Length > 0).Select(part => (Part: part, step.Number)))
        .GroupBy(one => one.Part, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Min(one => one.Number), StringComparer.Ordinal);

    private static bool IsBefore(Dictionary<string, int> numbers, string one, string other) => numbers.TryGetValue(one, out int first) && numbers.TryGetValue(other, out int second) && first < second;
}
