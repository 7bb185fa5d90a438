using Contam.Families.Quantities;
using Contam.Measurement.Cleanliness;
using Contam.Measurement.Gauging;
using Contam.Tests.Measurement;

namespace Contam.References.Measurement.Cleanliness;

/// <summary>
/// ISO 4406, table of scale numbers. Rows 0 to 28 as printed at online.flipbuilder.com/zufy/jyhc (page 130); rows 6 to 24 also at
/// constructionequipment.com/sustainability/article/10750527. That more than the last row is "&gt;28" is from memory, sure.
/// </summary>
public sealed class Cleanliness_scale
{
    public static TheoryData<int, double, double> Rows => new()
    {
        { 0, 0, 0.01 }, { 1, 0.01, 0.02 }, { 2, 0.02, 0.04 }, { 3, 0.04, 0.08 }, { 4, 0.08, 0.16 },
        { 5, 0.16, 0.32 }, { 6, 0.32, 0.64 }, { 7, 0.64, 1.3 }, { 8, 1.3, 2.5 }, { 9, 2.5, 5 },
        { 10, 5, 10 }, { 11, 10, 20 }, { 12, 20, 40 }, { 13, 40, 80 }, { 14, 80, 160 },
        { 15, 160, 320 }, { 16, 320, 640 }, { 17, 640, 1300 }, { 18, 1300, 2500 }, { 19, 2500, 5000 },
        { 20, 5000, 10000 }, { 21, 10000, 20000 }, { 22, 20000, 40000 }, { 23, 40000, 80000 }, { 24, 80000, 160000 },
        { 25, 160000, 320000 }, { 26, 320000, 640000 }, { 27, 640000, 1300000 }, { 28, 1300000, 2500000 },
        { 29, 2500000, 1e12 },
    };

    [Theory]
    [MemberData(nameof(Rows))]
    public void Gives_each_row_from_more_than_its_lower_limit_up_to_and_with_its_upper(int number, double moreThan, double upTo)
    {
        Assert.Equal(number, CleanlinessScale.NumberOf(Given.PerMl(moreThan * 1.0001)).Value);
        Assert.Equal(number, CleanlinessScale.NumberOf(Given.PerMl((moreThan + upTo) / 2)).Value);
        Assert.Equal(number, CleanlinessScale.NumberOf(Given.PerMl(upTo)).Value);
        Assert.NotEqual(number, number < 29 ? CleanlinessScale.NumberOf(Given.PerMl(upTo * 1.0001)).Value : -1);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Has_the_printed_upper_limit(int number, double moreThan, double upTo)
    {
        if (number < 29)
            Assert.Equal(upTo, CleanlinessScale.UpperLimit(number).Value.PerMillilitre);
        if (number is > 0 and < 29)
            Assert.Equal(moreThan, CleanlinessScale.UpperLimit(number - 1).Value.PerMillilitre);
    }

    /// <summary>micronscientific.co.za/news/653-iso-4406-how-does-it-work: 300 000, 50 000 and 700 in 100 mL.</summary>
    [Fact]
    public void Gives_the_printed_code_for_counts_in_100_mL()
    {
        Assert.Equal("19/16/10", CleanlinessCode.OfCounted(300_000, 50_000, 700, Given.Millilitres(100)).Value.ToString());
        Assert.Equal("19/16/10", CleanlinessCode.Of(new(Given.PerMl(3000), Given.PerMl(500), Given.PerMl(7))).Value.ToString());
    }

    /// <summary>The first address above: 14/12/≥7 is 80 to 160, 20 to 40 and 0.64 to 1.3 per mL, the last with fewer than 20 particles counted.</summary>
    [Theory]
    [InlineData(801, 201, 7)]
    [InlineData(1600, 400, 13)]
    public void Marks_a_number_with_fewer_than_20_counted(long at4, long at6, long at14) =>
        Assert.Equal("14/12/≥7", CleanlinessCode.OfCounted(at4, at6, at14, Given.Millilitres(10)).Value.ToString());

    [Theory]
    [InlineData(19, "14/12/≥7")]
    [InlineData(20, "14/12/7")]
    public void Leaves_the_mark_off_from_20_counted(long at14, string code) =>
        Assert.Equal(code, CleanlinessCode.OfCounted(2400, 600, at14, Given.Millilitres(20)).Value.ToString());

    /// <summary>constructionequipment.com: 17 at 4 µm means 640 to 1300 per mL.</summary>
    [Fact]
    public void Reads_17_as_640_to_1300_per_mL()
    {
        Assert.Equal(17, CleanlinessScale.NumberOf(Given.PerMl(640.5)).Value);
        Assert.Equal(17, CleanlinessScale.NumberOf(Given.PerMl(1299.5)).Value);
    }

    /// <summary>
    /// Half the upper 5 % points of chi-square with 2 (n + 1) degrees of freedom, as in any statistical table (from memory, sure):
    /// 5.991, 9.488, 12.592, 23.685 (14), 33.924 (22), 55.758 (40).
    /// </summary>
    [Theory]
    [InlineData(0, 5.991)]
    [InlineData(1, 9.488)]
    [InlineData(2, 12.592)]
    [InlineData(6, 23.685)]
    [InlineData(10, 33.924)]
    [InlineData(19, 55.758)]
    public void Takes_the_tables_upper_limit_of_a_small_count(int counted, double chiSquare)
    {
        // Seen through the code: a sample so small that the limit falls on a step's edge must change number there and not before.
        double limit = chiSquare / 2;
        double edge = 10;
        CleanlinessNumber Judge(double millilitres) =>
            CleanlinessCode.OfCounted(counted, counted, counted, Given.Millilitres(millilitres)).Value.At14!.Value;
        Assert.Equal(10, Judge(limit / edge * 1.0005).UpTo);
        Assert.Equal(11, Judge(limit / edge * 0.9995).UpTo);
    }
}
