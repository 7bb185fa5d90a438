using System.Collections.Immutable;
using Contam.Families;
using Contam.Measurement;
using Contam.Measurement.Gauging;
using Contam.Measurement.Wording;

namespace Contam.Reports.Json;

/// <summary>A verdict on readings as JSON: the contract <c>contam-gauge/1</c>.</summary>
public static class GaugeJson
{
    /// <summary>The answer as JSON, closed by a newline.</summary>
    public static string Write(GaugeAnswer answer, Family family)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(family);
        return ReportJson.Write(
            new GaugeJsonAnswer(
                "contam-gauge/1",
                family.Id,
                answer.Limit.Id,
                answer.Limit.Part.Value,
                MeasureText.Of(answer.Limit.Measures),
                answer.Judgement.Verdict,
                answer.Judgement.Because,
                answer.HoldsAlthoughWaterGotIn,
                answer.Code,
                [.. answer.Figures.Select(figure => new GaugeJsonFigure(figure.Name, figure.Value, figure.Unit))],
                [.. answer.Notes],
                [.. answer.Assumed],
                [.. answer.Parts.Select(part => new GaugeJsonPart(part.Part.Value, part.Meaning))],
                Text.GaugeText.WhatNow(answer.Judgement.Verdict)),
            ReportJson.Context.GaugeJsonAnswer);
    }
}

internal sealed record GaugeJsonAnswer(
    string Format,
    string Family,
    string Limit,
    string Part,
    string Measures,
    Verdict Verdict,
    string Because,
    bool HoldsAlthoughWaterGotIn,
    string? Code,
    ImmutableArray<GaugeJsonFigure> Figures,
    ImmutableArray<string> Notes,
    ImmutableArray<string> Assumed,
    ImmutableArray<GaugeJsonPart> Parts,
    string? Advice);

internal sealed record GaugeJsonFigure(string Name, double Value, string Unit);

internal sealed record GaugeJsonPart(string Part, string Meaning);
