using Contam.Families;
using Contam.Plans;
using static Contam.Tests.Procedure.ShippedPlans;

namespace Contam.Tests.Procedure;

/// <summary>What published manuals say of evidence: looked at before it is wiped, and kept. Held by plans of the shipped families.</summary>
public sealed class Facts_of_the_first_look
{
    /// <summary>
    /// TM 1-1500-204-23-3: a screen is taken out, looked at, and only then cleaned; FAA-H-8083-32, chapter 10 (title from memory): parts are not cleaned before a
    /// first look.
    /// </summary>
    [Fact]
    public void Nothing_is_cleaned_flushed_or_renewed_before_it_is_looked_at()
    {
        int seen = 0;
        foreach (Family family in Names.Select(Family))
        {
            foreach (PlanDocument plan in Of(family, each: 17))
            {
                foreach (PlanStep look in plan.Steps.Where(step => step is { Action: StepAction.Inspect, About: LookAbout.Debris }))
                {
                    PlanStep? wiped = plan.Steps.FirstOrDefault(step => step.Number < look.Number && step.Action is (StepAction.Clean or StepAction.Flush or StepAction.Replace) && step.PartsOf().Intersect(look.PartsOf()).Any());
                    Assert.True(wiped is null, $"{family.Id} {plan.Failed[0]}: step {wiped?.Number} before {look.Number}");
                    seen++;
                }
            }
        }

        Assert.True(seen > 500);
    }

    /// <summary>TM 5-3895-369-14: all parts are cleaned before they are inspected and measured.</summary>
    [Fact]
    public void Wear_is_looked_for_at_what_is_clean()
    {
        int seen = 0;
        foreach (Family family in Names.Select(Family))
        {
            foreach (PlanDocument plan in Of(family, each: 17))
            {
                foreach (PlanStep look in plan.Steps.Where(step => step.About == LookAbout.Condition))
                {
                    foreach (string part in look.PartsOf())
                        Assert.Contains(plan.Steps, step => step.Number < look.Number && step.Action is (StepAction.Clean or StepAction.Flush) && step.PartsOf().Contains(part));
                    seen++;
                }
            }
        }

        Assert.True(seen > 0);
    }

    /// <summary>TM 55-2840-241-23, paragraph 5-25a: what lies in a filter is looked at before the element is lifted out; it is kept in it until then.</summary>
    [Fact]
    public void A_filter_comes_off_with_what_is_in_it_and_is_cut_open_before_the_new_one()
    {
        Family family = Family("harbour-diesel-i4");
        PlanDocument plan = ShippedPlans.Of(family, "lift-pump", "metal", 0);
        PlanStep off = plan.Steps.First(step => step.Action == StepAction.Remove && step.PartsOf().Contains("fuel-filter"));
        PlanStep cut = plan.Steps.First(step => step.Action == StepAction.Inspect && step.PartsOf().Contains("fuel-filter"));
        PlanStep renewed = plan.Steps.First(step => step.Action == StepAction.Replace && step.PartsOf().Contains("fuel-filter"));

        Assert.Contains("Keep what is in it", off.Text, StringComparison.Ordinal);
        Assert.StartsWith("Cut", cut.Text, StringComparison.Ordinal);
        Assert.True(off.Number < cut.Number && cut.Number < renewed.Number);
    }

    /// <summary>
    /// TM 5-685/NAVFAC MO-912, appendix C: oil is drained warm, while what it carries is in suspension. TM 1-1500-204-23-3: what it is caught in is clean, or
    /// the reading is false.
    /// </summary>
    [Fact]
    public void Oil_is_drained_warm_into_what_is_clean_and_kept()
    {
        PlanDocument plan = ShippedPlans.Of(Family("harbour-diesel-i4"), "main-bearing-1", "metal", 0);
        PlanStep[] drains = [.. plan.Steps.Where(step => step.Drains is { IsEmpty: false } && step.Phase < Phase.Strip && step.Method is not null)];

        Assert.NotEmpty(drains);
        foreach (string method in drains.Select(step => step.Method!).Distinct())
            Assert.Matches("clean, clear jar|Bag and label", plan.Methods.Single(one => one.Id == method).Text);
        Assert.Contains(plan.Steps, step => step.Phase < Phase.Strip && step.Text.Contains("warm", StringComparison.OrdinalIgnoreCase) || step.Drains is { IsEmpty: false } && step.Action == StepAction.Inspect);
    }

    /// <summary>TM 5-3805-261-20, paragraph 2-4(6), and TM 10-3930-660-20: cap or plug all open lines and fittings at once.</summary>
    [Fact]
    public void What_is_opened_is_capped_at_once()
    {
        foreach (Family family in Names.Select(Family))
        {
            PlanDocument plan = Of(family, each: 11).First();
            PlanMethod[] off = [.. plan.Methods.Where(method => plan.Steps.Any(step => step.Method == method.Id && step.Action == StepAction.Remove && step.PartsOf().Any(part => family[new PartId(part)].Kind.Name is "hose" or "pipe")))];
            Assert.All(off, method => Assert.Contains("Cap each opening at once", method.Text, StringComparison.Ordinal));
        }
    }

    /// <summary>TM 5-3895-370-14&amp;P: bearings are not turned before solid particles are out of them.</summary>
    [Fact]
    public void A_bearing_is_not_spun_dry()
    {
        PlanMethod[] washes = [.. Of(Family("outboard-gearcase"), each: 3).SelectMany(plan => plan.Methods).Where(method => method.Title == "Wash a bearing")];
        Assert.NotEmpty(washes);
        Assert.All(washes, method => Assert.Contains("without spinning", method.Text, StringComparison.Ordinal));
    }
}
