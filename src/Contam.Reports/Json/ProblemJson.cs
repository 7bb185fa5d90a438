using System.Collections.Immutable;
using Contam.Problems;

namespace Contam.Reports.Json;

/// <summary>What a check found, as JSON: the contract <c>contam-check/1</c>.</summary>
public static class ProblemJson
{
    /// <summary>The answer as JSON, closed by a newline.</summary>
    /// <param name="files">The files that were checked, as named.</param>
    /// <param name="problems">What was found, in order.</param>
    public static string Write(IReadOnlyCollection<string> files, IReadOnlyCollection<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(problems);
        return ReportJson.Write(
            new CheckAnswer(
                "contam-check/1",
                [.. files],
                problems.Count(problem => problem.Severity == Severity.Error),
                problems.Count(problem => problem.Severity == Severity.Warning),
                [.. problems.Select(problem => new CheckMessage(
                    problem.Place?.File,
                    problem.Place?.Line,
                    problem.Place?.Column,
                    problem.Severity == Severity.Error ? "error" : "warning",
                    problem.Code,
                    problem.Text,
                    problem.Mend))]),
            ReportJson.Context.CheckAnswer);
    }
}

internal sealed record CheckAnswer(string Format, ImmutableArray<string> Files, int Errors, int Warnings, ImmutableArray<CheckMessage> Messages);

internal sealed record CheckMessage(string? File, int? Line, int? Column, string Severity, string Code, string Text, string Mend);
