using System.Collections.Immutable;
using Contam.Audits;
using Contam.Plans;

namespace Contam.Reports.Json;

/// <summary>A comparison as JSON: the contract <c>contam-compare/1</c>.</summary>
public static class ComparisonJson
{
    /// <summary>The comparison as JSON, closed by a newline. Failures whose plans are alike in everything carry no parts.</summary>
    public static string Write(ComparisonAnswer comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        return ReportJson.Write(
            new CompareAnswer(
                "contam-compare/1",
                comparison.First,
                comparison.Second,
                comparison.Failures.Length,
                comparison.Changed,
                comparison.BenchHours,
                [.. comparison.Failures.Select(Of)],
                [.. comparison.OnlyFirst.Select(Of)],
                [.. comparison.OnlySecond.Select(Of)]),
            ReportJson.Context.CompareAnswer);
    }

    private static CompareAnswerName Of(FailureName name) => new(name.Family, name.Parts, name.Debris);

    private static CompareAnswerFailure Of(ComparedFailure failure) => new(
        failure.Name.Family,
        failure.Name.Parts,
        failure.Name.Debris,
        failure.Plans.IsChanged,
        failure.Plans.Same.Length,
        [.. failure.Plans.Parts.Select(part => new CompareAnswerPart(part.Part, Word(part.Difference), part.First is { } first ? Of(first) : null, part.Second is { } second ? Of(second) : null, part.Because))],
        failure.Plans.HasOtherTimes,
        failure.Plans.HasOtherWords,
        new CompareAnswerNumbers(failure.Plans.First.Steps.Length, failure.Plans.Second.Steps.Length),
        Of(failure.Plans, hours => hours.Most),
        Of(failure.Plans, hours => hours.Sure),
        Of(failure.Plans, hours => hours.Expected),
        Of(failure.Plans, hours => hours.Looks),
        Of(failure.Plans, hours => hours.OnLooks));

    private static CompareAnswerNumbers Of(PlanComparison plans, Func<LookHours, double> figure) => new(figure(plans.FirstHours), figure(plans.SecondHours));

    private static CompareAnswerSide Of(PlanPart part) => new(
        [.. part.Exposure.Select(exposure => new CompareAnswerExposure(exposure.Debris, exposure.Grade))],
        part.Treatment,
        part.Rule is { } rule ? new CompareAnswerRule(rule.File, rule.Line) : null);

    private static string Word(Difference difference) => difference switch
    {
        Difference.OnlyFirst => "only first",
        Difference.OnlySecond => "only second",
        Difference.Treatment => "treatment",
        _ => "grade",
    };
}

internal sealed record CompareAnswer(
    string Format,
    string First,
    string Second,
    int Compared,
    int Changed,
    double BenchHours,
    ImmutableArray<CompareAnswerFailure> Failures,
    ImmutableArray<CompareAnswerName> OnlyFirst,
    ImmutableArray<CompareAnswerName> OnlySecond);

internal sealed record CompareAnswerName(string Family, ImmutableArray<string> Failed, ImmutableArray<string> Debris);

internal sealed record CompareAnswerFailure(
    string Family,
    ImmutableArray<string> Failed,
    ImmutableArray<string> Debris,
    bool Changed,
    int Same,
    ImmutableArray<CompareAnswerPart> Parts,
    bool OtherTimes,
    bool OtherWords,
    CompareAnswerNumbers Steps,
    CompareAnswerNumbers BenchHours,
    CompareAnswerNumbers BenchAllClean,
    CompareAnswerNumbers BenchExpected,
    CompareAnswerNumbers Looks,
    CompareAnswerNumbers OnLooks);

internal sealed record CompareAnswerNumbers(double First, double Second);

internal sealed record CompareAnswerPart(string Part, string Difference, CompareAnswerSide? First, CompareAnswerSide? Second, string Because);

internal sealed record CompareAnswerSide(ImmutableArray<CompareAnswerExposure> Exposure, ImmutableArray<TreatmentKind> Treatment, CompareAnswerRule? Rule);

internal sealed record CompareAnswerExposure(string Debris, Grade Grade);

internal sealed record CompareAnswerRule(string File, int Line);
