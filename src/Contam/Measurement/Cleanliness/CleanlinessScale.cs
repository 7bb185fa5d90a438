using System.Collections.Immutable;
using Contam.Families.Quantities;

namespace Contam.Measurement.Cleanliness;

/// <summary>
/// The steps of the cleanliness scale: a count is given the first number whose upper limit it does not pass.
/// Read from the table and not worked out by doubling, because the table's limits are rounded (0.64, 1.3, 2.5, 5 …) and doubling
/// goes wrong beside them. Source: ISO 4406, table of scale numbers 0 to 28; more than the last is written <c>&gt;28</c>.
/// </summary>
public static class CleanlinessScale
{
    /// <summary>The number that stands for <c>&gt;28</c>.</summary>
    public const int AboveTable = 29;

    private static readonly ImmutableArray<double> UpperLimits =
    [
        0.01, 0.02, 0.04, 0.08, 0.16, 0.32, 0.64, 1.3, 2.5, 5,
        10, 20, 40, 80, 160, 320, 640, 1300, 2500, 5000,
        10_000, 20_000, 40_000, 80_000, 160_000, 320_000, 640_000, 1_300_000, 2_500_000,
    ];

    /// <summary>The scale number of a count: 0 to 28, or <see cref="AboveTable"/>. A count of 0 has the number 0.</summary>
    /// <param name="count">At least 0. On a limit it has the lower number, also where a conversion has moved its last digit.</param>
    public static Sum<int> NumberOf(ParticleConcentration count)
    {
        if (Expect.NotNegative("the count", count.PerMillilitre, "per mL") is { } fault)
            return fault;
        int number = 0;
        while (number < UpperLimits.Length && count.PerMillilitre > UpperLimits[number] * (1 + 1e-9))
            number++;
        return number;
    }

    /// <summary>The most that a scale number allows, closed.</summary>
    /// <param name="number">0 to 28; <c>&gt;28</c> has no upper limit and is a fault.</param>
    public static Sum<ParticleConcentration> UpperLimit(int number) =>
        number >= 0 && number < UpperLimits.Length
            ? new ParticleConcentration(UpperLimits[number])
            : new Fault(FormattableString.Invariant($"the scale number is {number}; 0 to 28 was expected"));

    /// <summary>The scale number as it is written.</summary>
    internal static string Show(int number) =>
        number >= AboveTable ? ">28" : number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
