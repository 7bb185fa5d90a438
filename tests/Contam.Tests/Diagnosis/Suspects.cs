using Contam.Diagnosis;
using Contam.Families;

namespace Contam.Tests.Diagnosis;

/// <summary>Who is suspected, and how much; every figure worked by hand from the rule.</summary>
public class Suspects
{
    private const string Engine = "pump[sheds metal] > filter[look=good] > rail[look=fair] > tank[look=poor]; gear[sheds metal rare] > rail";

    [Theory]
    // Nothing seen: 9 to 1.
    [InlineData("", "pump 0.9, gear 0.1")]
    // 9 × 0.9 to 1 × 0.01.
    [InlineData("@found filter metal", "pump 0.9988, gear 0.0012")]
    // 9 × 0.1 to 1 × 1.
    [InlineData("@clean filter metal", "gear 0.5263, pump 0.4737")]
    // 9 × 0.1 × 0.6 to 1 × 1 × 0.6.
    [InlineData("@clean filter metal\n@found rail metal", "gear 0.5263, pump 0.4737")]
    // 9 × 0.1 × 0.7 to 1 × 1 × 0.7: a poor look at a place that both reach parts nobody.
    [InlineData("@clean filter metal\n@clean tank metal", "gear 0.5263, pump 0.4737")]
    // Findings of other debris say nothing.
    [InlineData("@clean filter rubber", "pump 0.9, gear 0.1")]
    // Two looks at one place count twice: 9 × 0.01 to 1.
    [InlineData("@clean filter metal\n@clean filter metal", "gear 0.9174, pump 0.0826")]
    public void Share_the_suspicion_by_the_rule_of_Bayes(string seen, string expected) =>
        Assert.Equal(expected, Asked.Shares(Asked.Of(Engine + "\n" + seen)));

    [Fact]
    public void Are_in_file_order_where_equal() =>
        Assert.Equal("b 0.25, a 0.25, d 0.25, c 0.25", Asked.Shares(Asked.Of("b[sheds metal] > x; a[sheds metal] > x; d[sheds metal] > x; c[sheds metal] > x")));

    [Theory]
    // 30 µm get past the filter: a find of no said size fits.
    [InlineData("@found rail metal", "Fits", "pump 0.9, gear 0.1")]
    // 9 × 0.01 to 1 × 0.9.
    [InlineData("@found rail metal 120", "HeldBack", "gear 0.9091, pump 0.0909")]
    [InlineData("@found rail metal 30", "Fits", "pump 0.9, gear 0.1")]
    // The barrier may have held it, so that a clean place behind it says nothing: 9 to 1 × 0.1.
    [InlineData("@clean rail metal", "CleanBehindBarrier", "pump 0.989, gear 0.011")]
    public void Behind_a_barrier_are_the_weaker_for_a_find_that_it_would_have_held(string seen, string sort, string expected)
    {
        SuspectAnswer answer = Asked.Of("pump[sheds metal] > filter[holds metal 30 abs] > rail[look=good]; gear[sheds metal rare] > rail\n" + seen);
        Assert.Equal((sort, expected), (Asked.Sorts(answer, "pump"), Asked.Shares(answer)));
    }

    [Fact]
    public void Behind_a_barrier_that_holds_all_did_not_shed_what_was_found() =>
        Assert.Equal("HeldBack", Asked.Sorts(Asked.Of("tank[sheds water] > bowl[holds water all abs] > rail[look=good]\n@asked water\n@found rail water"), "tank"));

    [Fact]
    public void Are_weaker_for_a_find_larger_than_all_they_shed()
    {
        // 9 × 0.01 to 1 × 0.9.
        SuspectAnswer answer = Asked.Of("pump[sheds metal 50] > rail[look=good]; gear[sheds metal rare] > rail\n@found rail metal 120");
        Assert.Equal(("HeldBack", "gear 0.9091, pump 0.0909"), (Asked.Sorts(answer, "pump"), Asked.Shares(answer)));
    }

    [Theory]
    // Nothing said on one side contradicts nothing.
    [InlineData(null, null, "bearing 0.5, gear 0.5")]
    // 0.9 to 0.09.
    [InlineData(DebrisForm.Flakes, null, "bearing 0.9091, gear 0.0909")]
    [InlineData(null, true, "gear 0.9091, bearing 0.0909")]
    // 0.9 to the stray chance of 0.01, as 0.9 × 0.01 is less.
    [InlineData(DebrisForm.Flakes, false, "bearing 0.989, gear 0.011")]
    // One contradiction each.
    [InlineData(DebrisForm.Flakes, true, "bearing 0.5, gear 0.5")]
    // Contradicts bearing and gear alike in the form, the gear in magnetism too: 0.09 to 0.01.
    [InlineData(DebrisForm.Fuzz, false, "bearing 0.9, gear 0.1")]
    public void Are_weaker_where_what_they_shed_looks_otherwise(DebrisForm? form, bool? magnetic, string expected)
    {
        SuspectAnswer answer = Asked.Of(
            "bearing[sheds metal] > sump[look=good]; gear[sheds metal] > sump\n@found sump metal",
            finding => finding with { Form = form, Magnetic = magnetic },
            part => part with
            {
                Sheds = [.. part.Sheds.Select(shed => part.Id.Value == "bearing"
                    ? shed with { Form = DebrisForm.Flakes, Magnetic = false }
                    : shed with { Form = DebrisForm.Slivers, Magnetic = true })],
            });
        Assert.Equal(expected, Asked.Shares(answer));
    }

    [Fact]
    public void Open_their_own_conditional_joints_alone()
    {
        // The gasket's failure opens the way to the sump; the ring's does not: 0.9 to 0.01.
        SuspectAnswer answer = Asked.Of("gasket[sheds metal] > head >?gasket> sump[look=good]; ring[sheds metal] > head\n@found sump metal");
        Assert.Equal(("Fits", "NoWay", "gasket 0.989, ring 0.011"), (Asked.Sorts(answer, "gasket"), Asked.Sorts(answer, "ring"), Asked.Shares(answer)));
    }

    [Fact]
    public void Have_the_joints_open_of_a_part_that_was_seen_to_have_failed() =>
        Assert.Equal("gasket 0.5, ring 0.5", Asked.Shares(Asked.Of("gasket[sheds metal] > head >?gasket> sump[look=good]; ring[sheds metal] > head\n@found sump metal\n@failed gasket")));

    [Fact]
    public void Hold_nothing_themselves() =>
        Assert.Equal("Fits", Asked.Sorts(Asked.Of("pump[sheds metal holds metal all abs passage=1] > rail[look=good]\n@found rail metal 500"), "pump"));

    [Fact]
    public void Are_exposed_to_themselves() =>
        Assert.Equal("CleanThoughExposed, Fits", Asked.Sorts(Asked.Of("pump[sheds metal 40 look=good] > rail\n@clean pump metal\n@found pump metal 40"), "pump"));

    [Fact]
    public void Are_none_where_nothing_sheds_the_debris()
    {
        SuspectAnswer answer = Asked.Of("pump > rail[look=good]\n@found rail metal");
        Assert.Empty(answer.Suspects);
        Assert.False(answer.ExplainsAnything);
        Assert.Equal(["rail"], answer.Unexplained.Select(finding => finding.Part.Value));
    }

    [Fact]
    public void That_nothing_leads_from_explain_nothing()
    {
        SuspectAnswer answer = Asked.Of("pump[sheds metal] > tank; rail[look=good]\n@found rail metal");
        Assert.False(answer.ExplainsAnything);
        Assert.Single(answer.Unexplained);
    }
}
