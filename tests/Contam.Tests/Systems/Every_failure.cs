using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Proof;
using Contam.Support;
using Contam.Tests.Procedure;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Systems;

/// <summary>Every part of every shipped family that can fail, with every debris that it sheds.</summary>
public class Every_failure
{
    private const int FewOfEach = 6;
    private static readonly ShopStandard House = BuiltInStandards.HouseOverKinds;

    public static TheoryData<string> Families => ShippedFamilies.Families;

    [Theory]
    [MemberData(nameof(Families))]
    public void Has_a_plan_that_is_verified_and_harms_nobody(string name)
    {
        (Family family, (Part Part, Debris Debris)[] failures) = FailuresOf(name);
        var refused = new List<string>();
        foreach ((Part part, Debris debris) in failures)
        {
            PlanDocument plan = Planner.Plan(new PlanRequest(family, House, [part.Id], [debris]) { TakesFirstSchedule = true });
            refused.AddRange(RefusedIn(plan, family).Concat(Harm(plan, family)).Select(why => $"{part.Id} {debris.Name}: {why}"));
        }

        Assert.NotEmpty(failures);
        Assert.Equal([], refused);
    }

    /// <summary>
    /// Plans with looks, each held against every way in which its looks can come out. A few of each family, evenly chosen; with the variable
    /// <c>CONTAM_EVERY_FAILURE</c> set all of them, which takes some two minutes.
    /// </summary>
    [Theory]
    [MemberData(nameof(Families))]
    public void Has_a_plan_that_holds_however_its_looks_come_out(string name)
    {
        (Family family, (Part Part, Debris Debris)[] failures) = FailuresOf(name);
        int step = Environment.GetEnvironmentVariable("CONTAM_EVERY_FAILURE") is null ? Math.Max(1, failures.Length / FewOfEach) : 1;
        int looks = 0;
        for (int i = step / 2; i < failures.Length; i += step)
        {
            (Part part, Debris debris) = failures[i];
            PlanDocument plan = Planner.Plan(new PlanRequest(family, House, [part.Id], [debris]) { MostLooks = HowFar.MostLooks, TakesFirstSchedule = true });
            Assert.Equal([], RefusedIn(plan, family).Concat(Harm(plan, family)).Select(why => $"{part.Id} {debris.Name}: {why}"));
            Assert.Equal(UsedBySteps(plan, family), plan.Order.Where(line => line.Why is "seal" or "replaced part").Select(line => $"{line.Quantity} {line.Item} {string.Join(' ', line.OnlyIf)}").Order(StringComparer.Ordinal));
            looks += plan.Looks.Length;
        }

        Assert.NotEqual(0, looks);
    }

    /// <summary>What a compressor's plan must come to: a few looks, and what is sure within 26 hours of the bench.</summary>
    [Fact]
    public void Of_the_outboards_compressor_leaves_at_most_26_hours_that_are_sure()
    {
        Family family = FailuresOf("estuary-v6-outboard").Family;
        PlanDocument plan = Planner.Plan(new PlanRequest(family, House, [new PartId("compressor")], [Debris.Metal]) { MostLooks = HowFar.MostLooks });

        Assert.InRange(plan.Looks.Length, 2, 8);
        Assert.InRange(plan.Hours.BenchAllClean, 10, 26);
        Assert.True(plan.Hours.BenchExpected < plan.Hours.Bench);
    }

    // A gearcase has no oil pump to show a pressure, and no engine to crank; its clutch is a dog.
    [Theory]
    [InlineData("outboard-gearcase", "gear-level", "gear-pressure crank first-run cycle-hydraulic")]
    [InlineData("harbour-reverse-gear", "gear-pressure", "gear-level crank first-run cycle-hydraulic")]
    [InlineData("stern-trim-unit", "cycle-hydraulic", "gear-level gear-pressure crank first-run")]
    [InlineData("harbour-diesel-i4", "first-run", "gear-level gear-pressure cycle-hydraulic")]
    public void Is_proved_in_the_words_of_the_machine_that_the_family_says(string name, string proof, string others)
    {
        (Family family, (Part Part, Debris Debris)[] failures) = FailuresOf(name);
        foreach ((Part part, Debris debris) in failures)
        {
            string?[] frame = [.. Planner.Plan(new PlanRequest(family, House, [part.Id], [debris]) { TakesFirstSchedule = true }).Steps.Where(step => step.Phase == Phase.Prove).Select(step => step.Frame)];
            Assert.Contains(proof, frame);
            Assert.Empty(frame.Intersect(others.Split(' ')));
        }
    }

    private static (Family Family, (Part Part, Debris Debris)[] Failures) FailuresOf(string name)
    {
        Family family = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), House.CatalogueOf()).Value!;
        return (family, [.. family.Parts.SelectMany(part => House.CatalogueOf().Debris.Where(debris => part.ShedOf(debris) is not null).Select(debris => (part, debris)))]);
    }

    private static IEnumerable<string?> RefusedIn(PlanDocument plan, Family family) =>
        PlanVerifier.Verify(plan, family, House.CatalogueOf().Debris).Claims.Where(claim => !claim.Holds).Select(claim => claim.Where);

    /// <summary>What the steps of each branch fit new: seals, and parts but for filters, of which two sets are ordered.</summary>
    private static IEnumerable<string> UsedBySteps(PlanDocument plan, Family family)
    {
        IEnumerable<(string Item, string Letters)> seals = plan.Steps.SelectMany(step => step.Seals.Select(seal => (seal.Replace('-', ' '), string.Join(' ', step.OnlyIf))));
        IEnumerable<(string Item, string Letters)> parts = plan.Steps.Where(step => step.Action == StepAction.Replace)
            .SelectMany(step => step.Parts.Append(step.Part ?? "").Select(id => (Part: family.Find(new PartId(id)), Step: step)))
            .Where(one => one.Part is { Kind.IsFilter: false } part && !(part.Assembly is { } whole && one.Step.Parts.Contains(whole.Value)))
            .Select(one => (NameOf(one.Part!), string.Join(' ', one.Step.OnlyIf)));
        return seals.Concat(parts).GroupBy(one => one).Select(one => $"{one.Count()} {one.Key.Item} {one.Key.Letters}").Order(StringComparer.Ordinal);
    }

    private static string NameOf(Part part)
    {
        string number = $" {part.RepeatIndex}";
        string name = part.RepeatOf is not null && part.Name.EndsWith(number, StringComparison.Ordinal) ? part.Name[..^number.Length] : part.Name;
        return char.IsUpper(name[0]) && name.Length > 1 && char.IsLower(name[1]) ? char.ToLowerInvariant(name[0]) + name[1..] : name;
    }

    /// <summary>
    /// What would hurt machine or man: it is run with the water inlet shut or without the fluid that was drained, or a bath that stands full is opened to look.
    /// </summary>
    private static IEnumerable<string> Harm(PlanDocument plan, Family family)
    {
        foreach (PlanStep shut in plan.Steps.Where(step => step.Circuit is { } circuit && FluidSort.Fits("raw-water", family, family.Circuits.First(one => one.Name == circuit))))
        {
            if (!plan.Steps.Any(step => step.Frame is "open-water" or "gear-water" && step.Number > shut.Number && plan.IsDoneWherever(step, shut)))
                yield return $"step {shut.Number} shuts the water, and no step opens it again before it runs";
        }

        var free = family.Fluids.Where(fluid => fluid.IsFree).Select(fluid => fluid.Id).ToHashSet();
        foreach (PlanStep drain in plan.Steps.Where(step => step.Circuit is not null && step.Drains is { IsEmpty: false }))
        {
            string fluid = family.Circuits.First(one => one.Name == drain.Circuit).Fluid ?? "";
            if (fluid.Length > 0 && !free.Contains(fluid) && !plan.Steps.Any(step => step.Phase == Phase.Prove && step.Text.Contains(fluid.Replace('-', ' '), StringComparison.OrdinalIgnoreCase) && plan.IsDoneWherever(step, drain)))
                yield return $"step {drain.Number} drains {fluid}, and no step fills it before it runs";
        }

        foreach (PlanStep drain in plan.Steps.Where(step => step is { Phase: Phase.Confirm, Action: StepAction.Inspect, Drains.IsEmpty: false }))
        {
            foreach (PlanStep look in plan.Steps.Where(step => step is { Phase: Phase.Confirm, About: LookAbout.Debris, Drains: null } && step.Number < drain.Number && !plan.Looks.Any(one => one.Step == step.Number)))
            {
                string[] opened = [.. look.Parts.Append(look.Part ?? "").Where(part => family.Find(new PartId(part)) is { LookOpens: true })];
                if (family.Circuits.Any(circuit => circuit.Parts.Any(part => opened.Contains(part.Value)) && circuit.Parts.Any(part => drain.Drains!.Value.Contains(part.Value))))
                    yield return $"step {look.Number} opens what step {drain.Number} only then drains";
            }
        }
    }
}
