using System.Globalization;
using Contam.Families.Quantities;
using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>Reads the two sides of a limit.</summary>
internal static class Thresholds
{
    private static readonly (string Sign, Comparison Comparison)[] Signs =
    [
        ("<=", Comparison.AtMost), (">=", Comparison.AtLeast), ("<", Comparison.Below), (">", Comparison.Above),
    ];

    /// <summary>A comparison and a value that fits what is measured; <c>null</c> where nothing is written, or after a problem was raised.</summary>
    public static Threshold? Read(Located<string>? written, Measure measures, ProblemList problems)
    {
        if (written is not Located<string> said)
            return null;
        string text = said.Value;
        (string sign, Comparison comparison) = Signs.FirstOrDefault(known => text.StartsWith(known.Sign, StringComparison.Ordinal));
        if (sign is null)
        {
            problems.Add(FamilyProblems.BadThreshold(said.Place, text, ExampleOf(measures)));
            return null;
        }

        string value = text[sign.Length..].TrimStart();
        int offset = text.Length - value.Length;
        if (measures == Measure.Cleanliness)
        {
            if (ReadCode(value) is (int, int, int) code)
                return new Threshold(comparison, 0, text, code);
            problems.Add(FamilyProblems.BadCleanliness(said.PlaceWithin(offset), value));
            return null;
        }

        Dimension dimension = DimensionOf(measures);
        if (Quantity.TryParse(value, dimension, out double si, out QuantityError? error))
            return new Threshold(comparison, si, text);
        problems.Add(QuantityProblems.Of(said.PlaceWithin(offset + error!.Offset), value, dimension, error));
        return null;
    }

    /// <summary>
    /// Whether some reading would meet both. Of cleanliness codes only the direction is looked at: three numbers have no order of their own.
    /// </summary>
    public static bool Overlap(Threshold good, Threshold reject)
    {
        bool goodIsUpTo = good.Comparison is Comparison.AtMost or Comparison.Below;
        bool rejectIsUpTo = reject.Comparison is Comparison.AtMost or Comparison.Below;
        if (goodIsUpTo == rejectIsUpTo)
            return true;
        if (good.Code is not null || reject.Code is not null)
            return false;
        double upTo = goodIsUpTo ? good.Value : reject.Value;
        double from = goodIsUpTo ? reject.Value : good.Value;
        bool bothMeetTheValue = good.Comparison is Comparison.AtMost or Comparison.AtLeast && reject.Comparison is Comparison.AtMost or Comparison.AtLeast;
        return from < upTo || (from == upTo && bothMeetTheValue);
    }

    private static (int At4, int At6, int At14)? ReadCode(string text)
    {
        string[] numbers = text.Split('/');
        if (numbers.Length != 3)
            return null;
        Span<int> code = [0, 0, 0];
        for (int i = 0; i < 3; i++)
        {
            // ISO 4406 scale numbers; a count from 4 µm holds that from 6 µm, so that they cannot rise. From memory.
            if (!int.TryParse(numbers[i], NumberStyles.None, CultureInfo.InvariantCulture, out code[i]) || code[i] > 28)
                return null;
            if (i > 0 && code[i] > code[i - 1])
                return null;
        }

        return (code[0], code[1], code[2]);
    }

    private static Dimension DimensionOf(Measure measures) => measures switch
    {
        Measure.RunOut or Measure.Clearance => Dimension.Length,
        Measure.PressureDrop or Measure.VacuumDrop => Dimension.Pressure,
        _ => Dimension.Share,
    };

    private static string ExampleOf(Measure measures) => measures switch
    {
        Measure.RunOut or Measure.Clearance => "<= 0.05 mm",
        Measure.PressureDrop or Measure.VacuumDrop => "<= 0.1 bar",
        Measure.Cleanliness => "<= 18/16/13",
        Measure.WaterContent => "<= 200 ppm",
        _ => "<= 5 %",
    };
}
