using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Measurement.Gauging;

/// <summary>How far a figure is from the two values of a limit. Above 0: on the better side of it.</summary>
internal static class Margin
{
    internal static ImmutableArray<GaugeFigure> Figures(Limit limit, double reading, ReadingUnit unit)
    {
        var figures = ImmutableArray.CreateBuilder<GaugeFigure>();
        figures.Add(new GaugeFigure("marginToGood", unit.Of(ToGood(limit, reading)), unit.Symbol) { Label = "Inside good by" });
        if (limit.Reject is not null)
            figures.Add(new GaugeFigure("marginToReject", unit.Of(ToReject(limit, reading)), unit.Symbol) { Label = "Short of reject by" });
        return figures.ToImmutable();
    }

    /// <summary>The margins in words, for a figure of this verdict.</summary>
    internal static string Text(Limit limit, double reading, Verdict verdict, ReadingUnit unit)
    {
        string good = Away(ToGood(limit, reading), unit, "inside good", "outside good", "on the limit of good");
        if (limit.Reject is null || verdict == Verdict.Good)
            return good;
        string reject = Away(ToReject(limit, reading), unit, "short of reject", "past reject", "on the limit of reject");
        return verdict == Verdict.Reject ? reject : $"{good}, {reject}";
    }

    private static string Away(double margin, ReadingUnit unit, string better, string worse, string on) =>
        margin == 0 ? on : $"{unit.Show(Math.Abs(margin))} {(margin > 0 ? better : worse)}";

    private static double ToGood(Limit limit, double reading) =>
        Apart(limit.Good, reading) * (limit.Good.Comparison is Comparison.AtMost or Comparison.Below ? 1 : -1);

    private static double ToReject(Limit limit, double reading) =>
        Apart(limit.Reject!, reading) * (limit.Reject!.Comparison is Comparison.AtLeast or Comparison.Above ? 1 : -1);

    private static double Apart(Threshold threshold, double reading)
    {
        // What conversion moves a reading off its limit by is no margin.
        double apart = threshold.Value - reading;
        return Math.Abs(apart) <= 1e-9 * Math.Abs(threshold.Value) ? 0 : apart;
    }
}
