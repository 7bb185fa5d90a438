using System.Collections.Immutable;
using Contam.Diagnosis;
using Contam.Families;

namespace Contam.References.Diagnosis;

/// <summary>The sums behind suspects and looks against textbook examples. The figures of the books are cited from memory and were worked out anew.</summary>
public sealed class Diagnosis_published
{
    /// <summary>
    /// The burglar alarm of Russell and Norvig, "Artificial Intelligence: A Modern Approach", fig. 14.2: John and Mary both call; burglary has 0.284.
    /// The suspects are the four cases of burglary and earthquake, the finding is that both call, by way of the alarm.
    /// </summary>
    [Fact]
    public void Burglar_alarm()
    {
        double[] alarm = [0.95, 0.94, 0.29, 0.001];
        double[] bothCall = [.. alarm.Select(chance => (chance * 0.90 * 0.70) + ((1 - chance) * 0.05 * 0.01))];
        double[] shares = Posterior.Shares([0.001 * 0.002, 0.001 * 0.998, 0.999 * 0.002, 0.999 * 0.998], [bothCall]);
        Assert.Equal(0.284, shares[0] + shares[1], 3);
    }

    /// <summary>The same, with the two calls as two findings that hang on the alarm alone: the cases are of burglary, earthquake and alarm.</summary>
    [Fact]
    public void Burglar_alarm_call_by_call()
    {
        double[] cases = [0.001 * 0.002, 0.001 * 0.998, 0.999 * 0.002, 0.999 * 0.998];
        double[] alarm = [0.95, 0.94, 0.29, 0.001];
        ImmutableArray<double> priors = [.. cases.Zip(alarm, (one, rings) => one * rings), .. cases.Zip(alarm, (one, rings) => one * (1 - rings))];
        double[] john = [0.9, 0.9, 0.9, 0.9, 0.05, 0.05, 0.05, 0.05];
        double[] mary = [0.7, 0.7, 0.7, 0.7, 0.01, 0.01, 0.01, 0.01];
        double[] shares = Posterior.Shares(priors, [john, mary]);
        Assert.Equal(0.284, shares[0] + shares[1] + shares[4] + shares[5], 3);
    }

    /// <summary>J. R. Quinlan's days for tennis, in T. Mitchell, "Machine Learning", ch. 3: of 14 days 9 are played; humidity tells 0.151, wind 0.048 bits.</summary>
    [Theory]
    [InlineData(3.0 / 9, 4.0 / 5, 0.1518)]
    [InlineData(3.0 / 9, 3.0 / 5, 0.0481)]
    public void Days_for_tennis(double onPlayed, double onOthers, double bits) =>
        Assert.Equal(bits, Information.Gain([9.0 / 14, 5.0 / 14], [onPlayed, onOthers]), 4);

    /// <summary>The same: the entropy of the 14 days is 0.940.</summary>
    [Fact]
    public void Entropy_of_the_days() => Assert.Equal(0.940, Information.Entropy([9.0 / 14, 5.0 / 14]), 3);

    /// <summary>
    /// The circuit of J. de Kleer and B. Williams, "Diagnosing multiple faults", Artificial Intelligence 32, 1987: the conflicts {A1, M1, M2} and
    /// {A1, M1, M3, A2} have the minimal candidates {A1}, {M1}, {A2, M2}, {M2, M3}. A single candidate needs no set.
    /// </summary>
    [Fact]
    public void Three_multipliers_and_two_adders() => Assert.Empty(Sets(["A1", "A2", "M1", "M2", "M3"], "A1 M1 M2", "A1 M1 M3 A2"));

    /// <summary>The same with A1 and M1 known to be well: the two double candidates are left.</summary>
    [Fact]
    public void Three_multipliers_and_two_adders_with_two_known_to_be_well() => Assert.Equal(["A2+M2", "M2+M3"], Sets(["A2", "M2", "M3"], "M2", "M3 A2"));

    private static string[] Sets(string[] parts, params string[] conflicts) =>
    [
        .. SmallestSets.Covering(
            [.. conflicts.Select(conflict => parts.Select(part => conflict.Split(' ').Contains(part)).ToArray())],
            [.. parts.Select(_ => 1.0)],
            [.. parts.Select(part => new PartId(part))]).Sets.Select(set => string.Join('+', set)),
    ];
}
