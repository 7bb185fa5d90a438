using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Spread;
using Contam.Support;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.References.Masters;

/// <summary>
/// The plan for one failure, and what a master of the trade would say of it. Parts are named by their ids; an order is
/// relative: <c>"head, piston, ring"</c> says that each comes before the next, whatever stands between.
/// </summary>
internal sealed class MastersPage
{
    private MastersPage(Family family, PlanDocument plan)
    {
        Family = family;
        Plan = plan;
    }

    public Family Family { get; }

    public PlanDocument Plan { get; }

    /// <summary>The plan with looks that decide, as the bench gets it.</summary>
    public static MastersPage Of(string family, string failed, string debris)
    {
        (Family read, PlanDocument plan) = Shipped(family, failed, debris, HowFar.MostLooks);
        return new MastersPage(read, plan);
    }

    /// <summary>A shipped family, and its plan by the house standard for one failure with so many looks.</summary>
    internal static (Family Family, PlanDocument Plan) Shipped(string family, string failed, string debris, int looks)
    {
        ShopStandard house = BuiltInStandards.HouseOverKinds;
        Family read = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{family}.yaml"), house.CatalogueOf()).Value!;
        return (read, Planner.Plan(new PlanRequest(read, house, [new PartId(failed)], [house.CatalogueOf().FindDebris(debris)!]) { MostLooks = looks, TakesFirstSchedule = true }));
    }

    /// <summary>They come off, each before the next.</summary>
    public void ComesOff(string inOrder) => InOrder(StepAction.Remove, inOrder);

    /// <summary>They go back, each before the next.</summary>
    public void GoesBack(string inOrder) => InOrder(StepAction.Refit, inOrder);

    /// <summary>They are looked at before anything is stripped, or as the first thing that is done with them.</summary>
    public void IsLookedAtBeforeStripping(string parts) => Assert.All(Words(parts), part => Assert.True(
        Plan.Steps.Any(step => step.Action == StepAction.Inspect && step.Phase == Phase.Confirm && IsAt(step, part)), $"no look at {part} before the strip"));

    /// <summary>Each is looked at, and before the next is.</summary>
    public void IsLookedAt(string inOrder) => InOrder(StepAction.Inspect, inOrder);

    /// <summary>They are renewed whenever they come off, and ordered.</summary>
    public void IsRenewed(string parts) => Assert.All(Words(parts), part =>
    {
        PlanStep[] renewed = [.. Plan.Steps.Where(step => step.Action == StepAction.Replace && IsAt(step, part))];
        Assert.True(renewed.Length > 0, $"{part} is not renewed");
        Assert.All(Plan.Steps.Where(step => step.Action == StepAction.Remove && IsAt(step, part)), off => Assert.Equal(off.OnlyIf, renewed[0].OnlyIf));
    });

    /// <summary>Nobody orders or renews them.</summary>
    public void IsKept(string parts) => Assert.All(Words(parts), part => Assert.DoesNotContain(Plan.Steps, step => step.Action == StepAction.Replace && IsAt(step, part)));

    /// <summary>Debris has no way to them, so that they are not worked on for its sake.</summary>
    public void IsNotListed(string parts) => Assert.All(Words(parts), part => Assert.DoesNotContain(Plan.Parts, one => one.Id == part && !one.Treatment.IsEmpty && one.Exposure.Any(line => line.Grade != Grade.Cleared)));

    /// <summary>Debris can have come to them.</summary>
    public void IsListed(string parts) => Assert.All(Words(parts), part => Assert.True(Plan.Parts.Any(one => one.Id == part && one.Exposure.Any(line => line.Grade != Grade.Cleared)), $"{part} is not on the list"));

    /// <summary>They stay where they are.</summary>
    public void Stays(string parts) => Assert.All(Words(parts), part => Assert.DoesNotContain(Plan.Steps, step => step.Action == StepAction.Remove && IsAt(step, part)));

    /// <summary>They come off only when a look found something.</summary>
    public void StaysUnlessFound(string parts) => Assert.All(Words(parts), part => Assert.All(Plan.Steps.Where(step => step.Action == StepAction.Remove && IsAt(step, part)), step => Assert.NotEmpty(step.OnlyIf)));

    /// <summary>One step says so.</summary>
    public PlanStep Says(string words) => Assert.Single(Plan.Steps, step => step.Text.Contains(words, StringComparison.Ordinal));

    /// <summary>The number of the first step that does this at a part; fails where there is none.</summary>
    public int StepOf(StepAction action, string part)
    {
        PlanStep? step = Plan.Steps.FirstOrDefault(one => one.Action == action && IsAt(one, part));
        Assert.True(step is not null, $"{part} has no step {action}");
        return step!.Number;
    }

    private void InOrder(StepAction action, string inOrder)
    {
        string[] parts = Words(inOrder);
        Assert.True(parts.Length > 1, "an order has at least two parts");
        for (int place = 1; place < parts.Length; place++)
        {
            int before = StepOf(action, parts[place - 1]);
            int after = StepOf(action, parts[place]);
            Assert.True(before < after, $"{action}: {parts[place - 1]} is step {before} and {parts[place]} is step {after}");
        }
    }

    private static bool IsAt(PlanStep step, string part) => step.Part == part || step.Parts.Contains(part);

    private static string[] Words(string text) => text.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
