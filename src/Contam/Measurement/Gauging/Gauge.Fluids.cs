using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Families.Quantities;
using Contam.Measurement.Cleanliness;
using Contam.Measurement.Water;
using Contam.Measurement.Wording;

namespace Contam.Measurement.Gauging;

public static partial class Gauge
{
    private const string ScaleUnit = "ISO 4406 number";

    /// <summary>A cleanliness code against a limit, which is its target.</summary>
    /// <param name="family">The family, for the parts that the target protects.</param>
    /// <param name="limit">Measures cleanliness.</param>
    /// <param name="code">The code.</param>
    /// <param name="counts">What was counted per mL; <c>null</c> where only the code is known.</param>
    public static Sum<GaugeAnswer> Cleanliness(Family family, Limit limit, CleanlinessCode code, ParticleCounts? counts = null)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(code);
        if (!Judge.Reading(limit, code).TryGet(out Judgement? judgement, out Fault? fault))
            return fault;
        (int At4, int At6, int At14) good = limit.Good.Code!.Value;
        (string Size, CleanlinessNumber? Number, int Good, double? Count)[] sizes =
        [
            ("4", code.At4, good.At4, counts?.At4.PerMillilitre),
            ("6", code.At6, good.At6, counts?.At6.PerMillilitre),
            ("14", code.At14, good.At14, counts?.At14.PerMillilitre),
        ];
        var figures = ImmutableArray.CreateBuilder<GaugeFigure>();
        foreach ((string size, CleanlinessNumber? number, int target, double? count) in sizes)
        {
            if (count is { } counted)
                figures.Add(new GaugeFigure($"count{size}", ReadingUnit.Dusted(counted), "per mL") { Label = $"{size} µm(c) and larger" });
            if (number is { } known)
            {
                // An open limit asks for one number less than it names.
                int most = limit.Good.Comparison == Comparison.AtMost ? target : target - 1;
                string against = known.Number > most ? string.Create(CultureInfo.InvariantCulture, $"{known.Number - most} over the target of {most}")
                    : known.UpTo > most ? string.Create(CultureInfo.InvariantCulture, $"within the target of {most}, but too few were counted to be sure")
                    : string.Create(CultureInfo.InvariantCulture, $"within the target of {most}");
                figures.Add(new GaugeFigure($"number{size}", known.Number, ScaleUnit) { Label = $"Number at {size} µm(c)", ShownUnit = "", Meaning = against });
            }
        }

        int worst = sizes.Where(one => one.Number is not null).Select(one => one.Good - one.Number!.Value.Number).DefaultIfEmpty(0).Min();
        figures.Add(new GaugeFigure("marginToGood", worst, ScaleUnit) { Label = "Inside good by", ShownUnit = "" });
        GaugedPart[] parts = [.. FluidReach.From(family, limit.Part).Where(part => part.Clearance is { IsUnlimited: false }).Select(Protected)];
        return new GaugeAnswer(limit, judgement, figures.ToImmutable())
        {
            Code = code.ToString(),
            Margin = worst == 0 ? "on the target at the size that is worst off"
                : string.Create(CultureInfo.InvariantCulture, $"{Expect.Count(Math.Abs(worst), "number", "numbers")} {(worst > 0 ? "inside" : "over")} the target at the size that is worst off, and one number is twice the particles"),
            Notes = code.At4 is null || code.At6 is null || code.At14 is null ? ["a size that was not counted could be anything"] : [],
            PartsMean = "the target protects these parts, which the fluid reaches and which have a running clearance",
            Parts = [.. parts],
        };
    }

    /// <summary>Water in a fluid.</summary>
    /// <param name="family">The family, for the parts that the fluid reaches.</param>
    /// <param name="limit">Measures water content.</param>
    /// <param name="water">0 to 100 %.</param>
    /// <param name="saturation">What the fluid dissolves; <c>null</c> where that is not known, and then the form is not said.</param>
    /// <param name="unit">The unit that the reading was given in.</param>
    /// <param name="uncertainty">Of the reading, at least 0.</param>
    public static Sum<GaugeAnswer> Water(Family family, Limit limit, Share water, Saturation? saturation, ReadingUnit unit, Share uncertainty = default)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(limit);
        ArgumentNullException.ThrowIfNull(unit);
        if (WaterInOil.WaterFault(water) is { } beyond)
            return beyond;
        if (!Judged(limit, water.OfOne, uncertainty.OfOne, unit, Measure.WaterContent).TryGet(out Judgement? judgement, out Fault? fault))
            return fault;
        WaterMeaning? meaning = null;
        if (saturation is not null && !WaterInOil.Meaning(water, saturation).TryGet(out meaning, out fault))
            return fault;
        // Where it is not known whether water is free, it is taken to be.
        bool isFree = meaning?.Form != WaterForm.Dissolved;
        return new GaugeAnswer(
            limit,
            judgement,
            [new GaugeFigure("waterContent", unit.Of(water.OfOne), unit.Symbol) { Label = "Water" }, .. Margin.Figures(limit, water.OfOne, unit)])
        {
            Margin = Margin.Text(limit, water.OfOne, judgement.Verdict, unit),
            Unit = unit,
            Notes = [.. WaterText.Notes(meaning)],
            Assumed = saturation is null ? [] : [$"the fluid dissolves {Expect.Show(saturation.Least.PartsPerMillion)} to {Expect.Show(saturation.Most.PartsPerMillion)} ppm ({saturation.Source})"],
            PartsMean = isFree ? "what water does where this fluid goes" : "what free water would do where this fluid goes, should more come or the fluid cool",
            Parts = [.. FluidReach.From(family, limit.Part).Select(part => (part.Id, Harm: WaterText.HarmAt(part.Kind))).Where(one => one.Harm is not null).Select(one => new GaugedPart(one.Id, one.Harm!))],
        };
    }

    /// <summary>How evenly a set of injectors delivers.</summary>
    /// <param name="family">The family, for the injectors' names.</param>
    /// <param name="limit">Measures flow balance.</param>
    /// <param name="delivered">What each delivers, in one unit.</param>
    /// <param name="balance">Their balance.</param>
    /// <param name="uncertainty">Of one reading as a share of the mean, at least 0.</param>
    public static Sum<GaugeAnswer> Balance(Family family, Limit limit, ImmutableArray<GaugeFigure> delivered, FlowBalance balance, Share uncertainty = default)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(limit);
        ArgumentNullException.ThrowIfNull(balance);
        ReadingUnit percent = ReadingUnit.Percent;
        double spread = balance.Spread.OfOne;
        if (!Judged(limit, spread, 2 * uncertainty.OfOne, percent, Measure.FlowBalance).TryGet(out Judgement? judgement, out Fault? fault))
            return fault;
        Part[] injectors = [.. FluidReach.From(family, limit.Part).Where(part => part.Kind.Name == "injector")];
        bool named = injectors.Length == delivered.Length;
        var figures = ImmutableArray.CreateBuilder<GaugeFigure>();
        figures.Add(new GaugeFigure("spread", percent.Of(spread), percent.Symbol) { Label = "Spread, best to worst", Meaning = "of the mean" });
        figures.Add(new GaugeFigure("mean", ReadingUnit.Dusted(delivered.Average(one => one.Value)), delivered[0].Unit) { Label = "Mean" });
        for (int i = 0; i < delivered.Length; i++)
        {
            string name = named ? injectors[i].Name : string.Create(CultureInfo.InvariantCulture, $"Reading {i + 1}");
            string most = i == balance.Most ? ", the most" : i == balance.Least ? ", the least" : "";
            figures.Add(new GaugeFigure(string.Create(CultureInfo.InvariantCulture, $"againstMean{i + 1}"), percent.Of(balance.AgainstMean[i].OfOne), percent.Symbol)
            {
                Label = name,
                Meaning = $"against the mean ({Expect.Show(delivered[i].Value)} {delivered[i].Unit}{most})",
            });
        }

        figures.AddRange(Margin.Figures(limit, spread, percent));
        return new GaugeAnswer(limit, judgement, figures.ToImmutable())
        {
            Margin = Margin.Text(limit, spread, judgement.Verdict, percent),
            Unit = percent,
            Notes = named || injectors.Length == 0 ? [] : [$"{limit.Part} feeds {Expect.Count(injectors.Length, "injector", "injectors")}, and {Expect.Count(delivered.Length, "reading is", "readings are")} given; one left out may be the worst"],
            Assumed =
            [
                .. named ? ["the readings are in the order in which the family names the injectors"] : Array.Empty<string>(),
                .. Twice(uncertainty.OfOne, "the spread", percent),
            ],
        };
    }

    private static GaugedPart Protected(Part part)
    {
        double clearance = part.Clearance!.Value.Micrometres;
        string size = clearance >= 14 ? "the number at 14 µm(c) bears on it most" : clearance >= 6 ? "the number at 6 µm(c) bears on it most" : "the number at 4 µm(c) bears on it most";
        return new GaugedPart(part.Id, $"clearance {Expect.Show(clearance)} µm: {size}");
    }
}
