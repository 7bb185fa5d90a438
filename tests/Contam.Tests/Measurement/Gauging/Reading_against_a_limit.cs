using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement;
using Contam.Measurement.Cleanliness;
using Contam.Measurement.Gauging;

namespace Contam.Tests.Measurement.Gauging;

public sealed class Reading_against_a_limit
{
    private static readonly Limit RunOutLimit = Given.Limit(Measure.RunOut, Given.AtMostMm(0.05), Given.AboveMm(0.1));

    [Theory]
    [InlineData(0.05, 0, Verdict.Good, "0.05 mm is good: <= 0.05 mm")]
    [InlineData(0.06, 0, Verdict.Marginal, "0.06 mm is neither good (<= 0.05 mm) nor rejected (> 0.1 mm)")]
    [InlineData(0.1, 0, Verdict.Marginal, "0.1 mm is neither good (<= 0.05 mm) nor rejected (> 0.1 mm)")]
    [InlineData(0.11, 0, Verdict.Reject, "0.11 mm is rejected: > 0.1 mm")]
    [InlineData(0.04, 0.01, Verdict.Good, "0.04 mm ± 0.01 mm is good: <= 0.05 mm")]
    [InlineData(0.045, 0.01, Verdict.Undecided, "0.045 mm ± 0.01 mm could be good or marginal (good <= 0.05 mm, reject > 0.1 mm)")]
    [InlineData(0.08, 0.05, Verdict.Undecided, "0.08 mm ± 0.05 mm could be good or rejected (good <= 0.05 mm, reject > 0.1 mm)")]
    [InlineData(0.105, 0.01, Verdict.Undecided, "0.105 mm ± 0.01 mm could be marginal or rejected (good <= 0.05 mm, reject > 0.1 mm)")]
    public void Is_good_marginal_rejected_or_undecided(double millimetres, double uncertainty, Verdict verdict, string because)
    {
        Judgement judgement = Judge.Reading(RunOutLimit, Given.Mm(millimetres), Given.Mm(uncertainty)).Value;
        Assert.Equal((verdict, because), (judgement.Verdict, judgement.Because));
    }

    [Theory]
    [InlineData(Comparison.AtMost, 0.05, Verdict.Good)]
    [InlineData(Comparison.Below, 0.05, Verdict.Reject)]
    [InlineData(Comparison.AtLeast, 0.05, Verdict.Good)]
    [InlineData(Comparison.Above, 0.05, Verdict.Reject)]
    [InlineData(Comparison.AtMost, 0.049, Verdict.Good)]
    [InlineData(Comparison.Below, 0.049, Verdict.Good)]
    [InlineData(Comparison.AtLeast, 0.049, Verdict.Reject)]
    [InlineData(Comparison.Above, 0.051, Verdict.Good)]
    public void Knows_at_most_from_below_on_the_value_itself(Comparison comparison, double millimetres, Verdict verdict) =>
        Assert.Equal(verdict, Judge.Reading(Given.Limit(Measure.Clearance, new Threshold(comparison, 5e-5, "0.05 mm")), Given.Mm(millimetres)).Value.Verdict);

    [Fact]
    public void Is_on_the_value_when_only_arithmetic_moved_it()
    {
        // 0.031 − (−0.069) mm, worked out in metres, has a last digit more than 0.1 mm.
        Length total = RunOut.Of(Given.Dial(0.031, -0.069)).Value.TotalIndicatedReading;
        Assert.True(total.Metres > 1e-4);
        Assert.Equal(Verdict.Good, Judge.Reading(Given.Limit(Measure.RunOut, Given.AtMostMm(0.1)), total).Value.Verdict);
    }

    [Fact]
    public void Is_rejected_where_it_is_not_good_and_no_reject_is_said() =>
        Assert.Equal(
            new Judgement(Verdict.Reject, Verdict.Reject, Verdict.Reject, "0.051 mm is not good (<= 0.05 mm), and nothing between good and reject is allowed"),
            Judge.Reading(Given.Limit(Measure.RunOut, Given.AtMostMm(0.05)), Given.Mm(0.051)).Value);

    [Fact]
    public void Is_rejected_where_a_limit_calls_it_both()
    {
        Limit both = Given.Limit(Measure.RunOut, Given.AtMostMm(0.05), Given.AboveMm(0.04));
        Assert.Equal(Verdict.Reject, Judge.Reading(both, Given.Mm(0.045)).Value.Verdict);
    }

    [Fact]
    public void Is_undecided_where_an_island_lies_inside_its_uncertainty()
    {
        // Good from 0.02 up, reject over 0.10: the marginal stretch lies below 0.02, and the band covers all three.
        Limit clearance = Given.Limit(Measure.Clearance, new Threshold(Comparison.AtLeast, 2e-5, ">= 0.02 mm"), Given.AboveMm(0.1));
        Judgement judgement = Judge.Reading(clearance, Given.Mm(0.06), Given.Mm(0.05)).Value;
        Assert.Equal((Verdict.Undecided, Verdict.Good, Verdict.Reject), (judgement.Verdict, judgement.Mildest, judgement.Worst));
    }

    [Fact]
    public void Counts_the_one_value_between_two_stretches()
    {
        // A strange limit: rejected below 0.05, good at it, marginal above. Only 0.05 itself can be good.
        Limit strange = Given.Limit(
            Measure.Clearance, new Threshold(Comparison.AtMost, 5e-5, "<= 0.05 mm"), new Threshold(Comparison.Below, 5e-5, "< 0.05 mm"));
        Judgement judgement = Judge.Reading(strange, Given.Mm(0.055), Given.Mm(0.01)).Value;
        Assert.Equal((Verdict.Undecided, Verdict.Good, Verdict.Reject), (judgement.Verdict, judgement.Mildest, judgement.Worst));
    }

    [Fact]
    public void Is_shown_in_the_unit_of_its_measure()
    {
        Limit water = Given.Limit(Measure.WaterContent, new Threshold(Comparison.AtMost, 500e-6, "<= 500 ppm"), new Threshold(Comparison.Above, 1e-3, "> 0.1 %"));
        Assert.Equal("600 ppm is neither good (<= 500 ppm) nor rejected (> 0.1 %)", Judge.Reading(water, Share.FromPercent(0.06)).Value.Because);
        Limit balance = Given.Limit(Measure.FlowBalance, new Threshold(Comparison.AtMost, 0.05, "<= 5 %"));
        Assert.Equal("4 % is good: <= 5 %", Judge.Reading(balance, Share.FromPercent(4)).Value.Because);
        Limit drop = Given.Limit(Measure.PressureDrop, Given.AtMostKpa(10));
        Assert.Equal("8 kPa is good: <= 10 kPa", Judge.Reading(drop, Given.Kilopascals(8)).Value.Because);
    }

    [Fact]
    public void Is_refused_where_it_is_of_another_kind()
    {
        Assert.Equal("the-limit measures run-out, and a pressure is given", Judge.Reading(RunOutLimit, Given.Bar(1)).Fault!.Text);
        Assert.Equal("the-limit measures run-out, and a share is given", Judge.Reading(RunOutLimit, new Share(0.1)).Fault!.Text);
        Assert.Equal("the-limit measures a pressure drop, and a length is given", Judge.Reading(Given.Limit(Measure.PressureDrop, Given.AtMostKpa(10)), Given.Mm(1)).Fault!.Text);
        CleanlinessCode code = CleanlinessCode.OfCounted(4000, 500, 80, Given.Millilitres(1)).Value;
        Assert.Equal("the-limit measures run-out, and a cleanliness code is given", Judge.Reading(RunOutLimit, code).Fault!.Text);
    }

    [Fact]
    public void Is_refused_where_it_is_no_number()
    {
        Assert.Equal("the reading is not a number; a number was expected", Judge.Reading(RunOutLimit, Given.Mm(double.NaN)).Fault!.Text);
        Assert.Equal("the uncertainty is -1 mm; at least 0 mm was expected", Judge.Reading(RunOutLimit, Given.Mm(1), Given.Mm(-1)).Fault!.Text);
        Limit water = Given.Limit(Measure.WaterContent, new Threshold(Comparison.AtMost, 500e-6, "<= 500 ppm"));
        Assert.Equal("the water content is -1 ppm; 0 to 1000000 ppm was expected", Judge.Reading(water, Share.FromPartsPerMillion(-1)).Fault!.Text);
        Assert.Equal("the-limit has no number to hold a reading against", Judge.Reading(Given.Limit(Measure.RunOut, new Threshold(Comparison.AtMost, double.NaN, "?")), Given.Mm(1)).Fault!.Text);
    }
}

public sealed class Code_against_a_limit
{
    private static readonly Limit Cleanliness = Given.Limit(
        Measure.Cleanliness, Given.Code(Comparison.AtMost, 18, 16, 13), Given.Code(Comparison.Above, 20, 18, 15));

    [Theory]
    [InlineData(2500, 640, 80, "good", "18/16/13 is good: <= 18/16/13")]
    [InlineData(2500, 640, 81, "marginal", "18/16/14 is neither good (<= 18/16/13) nor rejected (> 20/18/15)")]
    [InlineData(2500, 640, 321, "reject", "18/16/16 is rejected: > 20/18/15")]
    public void Is_good_where_all_three_are_and_rejected_where_one_is(double at4, double at6, double at14, string verdict, string because)
    {
        Judgement judgement = Judge.Reading(Cleanliness, CleanlinessCode.Of(new(Given.PerMl(at4), Given.PerMl(at6), Given.PerMl(at14))).Value).Value;
        Assert.Equal((verdict, because), (judgement.Verdict.ToString().ToLowerInvariant(), judgement.Because));
    }

    [Fact]
    public void Is_undecided_where_too_few_were_counted_or_none()
    {
        CleanlinessCode few = CleanlinessCode.OfCounted(25, 12, 7, Given.Millilitres(0.1)).Value;
        Assert.Equal("15/≥14/≥13 could be good or marginal (good <= 18/16/13, reject > 20/18/15)", Judge.Reading(Cleanliness, few).Value.Because);
        CleanlinessCode missing = CleanlinessCode.OfCounted(2500, 640, 80, Given.Millilitres(1)).Value with { At6 = null };
        Assert.Equal("18/-/13 could be good or rejected (good <= 18/16/13, reject > 20/18/15)", Judge.Reading(Cleanliness, missing).Value.Because);
    }

    [Fact]
    public void Is_refused_where_the_limit_has_no_code_or_is_the_wrong_way_round()
    {
        CleanlinessCode code = CleanlinessCode.OfCounted(2500, 640, 80, Given.Millilitres(1)).Value;
        Assert.Equal("the-limit has no code to hold a reading against (<= 0.05 mm)", Judge.Reading(Given.Limit(Measure.Cleanliness, Given.AtMostMm(0.05)), code).Fault!.Text);
        Assert.Equal(
            "the-limit has good > 20/18/15, but a lower code is cleaner",
            Judge.Reading(Given.Limit(Measure.Cleanliness, Given.Code(Comparison.Above, 20, 18, 15)), code).Fault!.Text);
    }
}
