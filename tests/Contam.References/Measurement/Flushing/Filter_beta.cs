using Contam.Families.Quantities;
using Contam.Measurement.Flushing;
using Contam.Tests.Measurement;

namespace Contam.References.Measurement.Flushing;

/// <summary>
/// Filter β (ISO 16889) against the share taken out. 10 is 90 %: pharmacielacentauree.fr/May-04_34601.html. 10 000 before and 50 after is
/// 200, 99.5 %: filtercartridgetech.com/?p=1070. The other rows are as handbooks print them, from memory, sure.
/// </summary>
public sealed class Filter_beta
{
    [Theory]
    [InlineData(1, 0, 1)]
    [InlineData(1.5, 33.3, 1)]
    [InlineData(2, 50.0, 1)]
    [InlineData(5, 80.0, 1)]
    [InlineData(10, 90.0, 1)]
    [InlineData(20, 95.0, 1)]
    [InlineData(50, 98.0, 1)]
    [InlineData(75, 98.7, 1)]
    [InlineData(100, 99.0, 1)]
    [InlineData(200, 99.5, 1)]
    [InlineData(500, 99.8, 1)]
    [InlineData(1000, 99.9, 1)]
    [InlineData(2000, 99.95, 2)]
    [InlineData(5000, 99.98, 2)]
    public void Takes_out_the_printed_share(double beta, double percent, int decimals) =>
        Assert.Equal(percent, Math.Round(FilterBeta.Efficiency(beta).Value.Percent, decimals, MidpointRounding.AwayFromZero), 10);

    [Fact]
    public void Is_200_for_10_000_before_and_50_after()
    {
        double beta = FilterBeta.Of(Given.PerMl(10_000), Given.PerMl(50)).Value;
        Assert.Equal(200, beta);
        Assert.Equal(99.5, FilterBeta.Efficiency(beta).Value.Percent, 10);
    }
}
