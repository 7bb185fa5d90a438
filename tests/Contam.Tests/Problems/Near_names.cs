namespace Contam.Tests.Problems;

public sealed class Near_names
{
    [Theory]
    [InlineData("", "", 0)]
    [InlineData("pump", "pump", 0)]
    [InlineData("pump", "pum", 1)]
    [InlineData("pump", "pumps", 1)]
    [InlineData("pump", "pamp", 1)]
    [InlineData("pump", "pmup", 1)]
    [InlineData("", "pump", 4)]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("ca", "abc", 3)]
    public void Count_slips(string from, string to, int slips)
    {
        Assert.Equal(slips, NearName.Slips(from, to));
        Assert.Equal(slips, NearName.Slips(to, from));
    }

    [Theory]
    [InlineData("fliter", "filter")]
    [InlineData("oil-fliter", "oil-filter")]
    [InlineData("xyz", null)]
    [InlineData("ab", null)]
    [InlineData("b", null)]
    [InlineData("pump", null)]
    public void Are_found_within_a_slip_for_every_three_letters(string name, string? near)
    {
        Assert.Equal(near, NearName.Of(name, ["filter", "oil-filter", "pump", "a"]));
    }

    [Fact]
    public void Are_the_nearest_and_of_those_the_first()
    {
        Assert.Equal("hose-2", NearName.Of("hose-x", ["hoses-y", "hose-2", "hose-3"]));
    }
}
