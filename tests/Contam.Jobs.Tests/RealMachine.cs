namespace Contam.Jobs.Tests;

/// <summary>Tests that need something of the machine that not every machine has.</summary>
internal static class RealMachine
{
    /// <summary>Skips the test and says why; where <c>CI=true</c> it fails instead, since everything is there.</summary>
    public static void SkipUnlessInCi(string why)
    {
        if (Environment.GetEnvironmentVariable("CI") == "true")
            Assert.Fail($"CI must not skip this test: {why}");
        Assert.Skip(why);
    }
}
