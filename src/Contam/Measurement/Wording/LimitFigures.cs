using System.Globalization;
using Contam.Families;
using Contam.Families.Quantities;

namespace Contam.Measurement.Wording;

/// <summary>What a part must measure up to, as words for a step.</summary>
public static class LimitFigures
{
    /// <summary>
    /// The acceptance figures of every limit of a part, in file order, for instance <c>run-out good to 6 thou, reject above 9 thou</c>;
    /// several are parted by semicolons. Figures are as the file has them.
    /// </summary>
    /// <returns>A clause without a full stop, or <c>null</c> where the part has no limit.</returns>
    public static string? For(Family family, Part part)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(part);
        string[] limits = [.. family.Limits.Where(limit => limit.Part == part.Id).Select(Sentence)];
        return limits.Length == 0 ? null : string.Join("; ", limits);
    }

    /// <summary>As <see cref="For"/>, of what is read while a part stands under pressure or vacuum alone.</summary>
    public static string? ForHold(Family family, Part part)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(part);
        string[] limits = [.. family.Limits.Where(limit => limit.Part == part.Id && limit.Measures is (Measure.PressureDrop or Measure.VacuumDrop)).Select(Sentence)];
        return limits.Length == 0 ? null : string.Join("; ", limits);
    }

    /// <summary>The figures of one limit, as <see cref="For"/> has them.</summary>
    public static string Sentence(Limit limit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        string rejected = limit.Reject is null ? "else rejected" : "reject " + Side(limit.Reject);
        return $"{MeasureText.Of(limit.Measures)} good {Side(limit.Good)}, {rejected}{Hold(limit)}";
    }

    private static string Side(Threshold threshold)
    {
        string value = threshold.Text.TrimStart('<', '>', '=', ' ');
        return threshold.Comparison switch
        {
            Comparison.AtMost => "to " + value,
            Comparison.Below => "below " + value,
            Comparison.AtLeast => "from " + value,
            Comparison.Above => "above " + value,
            _ => throw new ArgumentOutOfRangeException(nameof(threshold), threshold.Comparison, "not a comparison"),
        };
    }

    private static string Hold(Limit limit)
    {
        string over = limit.Over is { } time ? string.Create(CultureInfo.InvariantCulture, $" in {Expect.Show(time.TotalMinutes)} min") : "";
        string from = limit.At is { } at ? $" from {PressureText(at, limit)}" : "";
        return over.Length + from.Length == 0 ? "" : $",{over}{from}";
    }

    // The file's own text of the pressure is not kept; it is said in the unit of the limit's other figures.
    private static string PressureText(Pressure at, Limit limit)
    {
        string unit = limit.Good.Text.AsSpan().TrimStart("<>= .0123456789").ToString();
        return ReadingUnit.Find(unit, Dimension.Pressure) is { } known ? known.Show(at.Pascals) : $"{Expect.Show(at.Bar)} bar";
    }
}
