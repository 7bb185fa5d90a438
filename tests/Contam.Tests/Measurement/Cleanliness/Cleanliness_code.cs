using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement;
using Contam.Measurement.Cleanliness;

namespace Contam.Tests.Measurement.Cleanliness;

public sealed class Cleanliness_code
{
    [Fact]
    public void Is_over_the_table_above_its_last_row() =>
        Assert.Equal(">28/>28/28", CleanlinessCode.Of(new(Given.PerMl(3e6), Given.PerMl(2_500_001), Given.PerMl(2_500_000))).Value.ToString());

    [Fact]
    public void Is_0_for_nothing_counted_and_marks_it() =>
        Assert.Equal("≥0/≥0/≥0", CleanlinessCode.OfCounted(0, 0, 0, Given.Millilitres(1000)).Value.ToString());

    [Fact]
    public void Stays_on_a_step_when_the_sample_is_converted()
    {
        // 39 in 30 mL is 1.3 per mL, the limit of 7; the arithmetic gives it a last digit more or less.
        Assert.Equal(7, CleanlinessCode.OfCounted(39, 39, 39, new Volume(3 * 1e-5)).Value.At14!.Value.Number);
        Assert.Equal(7, CleanlinessScale.NumberOf(Given.PerMl(Math.BitIncrement(1.3))).Value);
    }

    [Fact]
    public void Writes_a_dash_for_a_size_not_counted() =>
        Assert.Equal("-/16/13", (CleanlinessCode.Of(new(Given.PerMl(640), Given.PerMl(640), Given.PerMl(80))).Value with { At4 = null }).ToString());

    [Fact]
    public void Says_what_is_wrong_with_a_count()
    {
        Assert.Equal(
            "500 per mL at 6 µm(c) is more than 30 per mL at 4 µm(c); counts of each size and larger were expected",
            CleanlinessCode.Of(new(Given.PerMl(30), Given.PerMl(500), Given.PerMl(7))).Fault!.Text);
        Assert.Equal("the count at 14 µm(c) is -1 per mL; at least 0 per mL was expected", CleanlinessCode.OfCounted(3, 2, -1, Given.Millilitres(1)).Fault!.Text);
        Assert.Equal("the count at 4 µm(c) is not a number; at least 0 per mL was expected", CleanlinessCode.Of(new(Given.PerMl(double.NaN), Given.PerMl(1), Given.PerMl(1))).Fault!.Text);
        Assert.Equal("the sample is 0 mL; more than 0 mL was expected", CleanlinessCode.OfCounted(3, 2, 1, default).Fault!.Text);
        Assert.Equal("the scale number is -1; 0 to 28 was expected", CleanlinessScale.UpperLimit(-1).Fault!.Text);
    }
}

public sealed class Code_against_a_target
{
    [Theory]
    [InlineData(3000, 500, 80, Verdict.Good)]
    [InlineData(3000, 500, 80.1, Verdict.Reject)]
    [InlineData(5001, 500, 80, Verdict.Reject)]
    public void Is_good_where_every_size_is_within(double at4, double at6, double at14, Verdict verdict) =>
        Assert.Equal(verdict, CleanlinessTarget.Of(CleanlinessCode.Of(new(Given.PerMl(at4), Given.PerMl(at6), Given.PerMl(at14))).Value, (19, 16, 13)).Value.Verdict);

    /// <summary>5 counted in 1 mL is 9 or less; the most likely at most is 10.5 per mL (see the reference tests), which is 11.</summary>
    [Theory]
    [InlineData(9, Verdict.Undecided)]
    [InlineData(10, Verdict.Undecided)]
    [InlineData(11, Verdict.Good)]
    [InlineData(8, Verdict.Reject)]
    public void Is_undecided_where_too_few_were_counted_to_tell(int target, Verdict verdict)
    {
        CleanlinessCode code = CleanlinessCode.OfCounted(4000, 500, 5, Given.Millilitres(1)).Value;
        Assert.Equal("19/16/≥9", code.ToString());
        CleanlinessTarget answer = CleanlinessTarget.Of(code, (19, 16, target)).Value;
        Assert.Equal(verdict, answer.Verdict);
        Assert.Equal([Verdict.Good, Verdict.Good, verdict], answer.Sizes.Select(size => size.Verdict));
    }

    [Fact]
    public void Is_undecided_where_a_size_was_not_counted_unless_another_rejects()
    {
        CleanlinessCode code = CleanlinessCode.Of(new(Given.PerMl(640), Given.PerMl(640), Given.PerMl(80))).Value with { At4 = null };
        Assert.Equal(Verdict.Undecided, CleanlinessTarget.Of(code, (19, 16, 13)).Value.Verdict);
        Assert.Equal(Verdict.Reject, CleanlinessTarget.Of(code, (19, 15, 13)).Value.Verdict);
    }
}
