using System.Collections.Immutable;
using System.Text.Json;
using Contam.Audits;
using Contam.Families;
using Contam.Problems;

namespace Contam.Reports.Json;

/// <summary>An audit as JSON: the contract <c>contam-audit/2</c>, and what an earlier one said.</summary>
public static class AuditJson
{
    private const string FormatName = "contam-audit/2";

    private static readonly ReportJsonContext Reading = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        MaxDepth = 16,
    });

    /// <summary>The audit as JSON, closed by a newline. With a change, only the messages that are new, what is gone, and the failures that changed.</summary>
    public static string Write(Audit audit, AuditChange? change = null)
    {
        ArgumentNullException.ThrowIfNull(audit);
        ImmutableArray<AuditMessage> messages = change?.New ?? audit.Messages;
        return ReportJson.Write(
            new AuditAnswer(
                FormatName,
                new AuditAnswerStandard(audit.Standard, audit.StandardSha256),
                [.. audit.Families.Select(family => new AuditAnswerFamily(family.Id, family.File, family.Title, family.Sha256, family.Parts, family.Failures))],
                messages.Count(message => message.Severity == Severity.Error),
                messages.Count(message => message.Severity == Severity.Warning),
                [.. messages.Select(Of)],
                [.. (change is null ? audit.Failures : []).Select(Of)],
                [.. audit.Costliest.Select(Of)],
                Of(audit.OnLooks),
                Of(audit.Looks),
                [.. audit.Matrix.Select(cell => new AuditAnswerCell(cell.Kind, cell.Debris, cell.Family, cell.Covered, cell.Parts))],
                change is null ? null : new AuditAnswerChange(
                    [.. change.Gone.Select(Of)],
                    [.. change.Failures.Select(one => new AuditAnswerChanged(one.Before is { } before ? Of(before) : null, one.Now is { } now ? Of(now) : null))])),
            ReportJson.Context.AuditAnswer);
    }

    /// <summary>The messages and failures of an earlier audit.</summary>
    /// <exception cref="JsonException">The text is no whole audit; the message says why.</exception>
    public static (ImmutableArray<AuditMessage> Messages, ImmutableArray<AuditedFailure> Failures) Read(string json)
    {
        AuditAnswer answer = JsonSerializer.Deserialize(json, Reading.AuditAnswer) ?? throw new JsonException("the text is the single word null");
        if (answer.Format != FormatName)
            throw new JsonException($"the format is {answer.Format}, expected {FormatName}");
        if (answer.Since is not null)
            throw new JsonException("it tells only what had changed since another audit");
        if (answer.Messages.IsDefault || answer.Failures.IsDefault || answer.Messages.Any(message => message is null) || answer.Failures.Any(failure => failure is null))
            throw new JsonException("its messages or failures are missing");
        return (
            [.. answer.Messages.Select(message => new AuditMessage(
                message.Severity == "error" ? Severity.Error : Severity.Warning,
                message.Code,
                message.Family,
                message.About,
                message.File is { } file && message.Line is { } line && message.Column is { } column ? new SourceSpan(file, line, column) : null,
                message.Text,
                message.Mend))],
            [.. answer.Failures.Select(failure => new AuditedFailure(failure.Family, failure.Part, failure.Debris, failure.Reached, failure.Steps, new LookHours(failure.Looks, failure.BenchAllClean, failure.BenchExpected, failure.BenchHours), failure.Treatments))]);
    }

    private static AuditAnswerMessage Of(AuditMessage message) => new(
        message.Place?.File,
        message.Place?.Line,
        message.Place?.Column,
        message.Severity == Severity.Error ? "error" : "warning",
        message.Code,
        message.Family,
        message.About,
        message.Text,
        message.Mend);

    private static AuditAnswerFailure Of(AuditedFailure failure) =>
        new(failure.Family, failure.Part, failure.Debris, failure.Reached, failure.Steps, failure.BenchHours, failure.Hours.Sure, failure.Hours.Expected, failure.Hours.Looks, failure.Hours.OnLooks, failure.Treatments);

    private static AuditAnswerQuartiles Of(Quartiles figures) => new(figures.Lower, figures.Median, figures.Upper, figures.Most);
}

internal sealed record AuditAnswer(
    string Format,
    AuditAnswerStandard Standard,
    ImmutableArray<AuditAnswerFamily> Families,
    int Errors,
    int Warnings,
    ImmutableArray<AuditAnswerMessage> Messages,
    ImmutableArray<AuditAnswerFailure> Failures,
    ImmutableArray<AuditAnswerFailure> Costliest,
    AuditAnswerQuartiles OnLooks,
    AuditAnswerQuartiles Looks,
    ImmutableArray<AuditAnswerCell> Matrix,
    AuditAnswerChange? Since);

internal sealed record AuditAnswerStandard(string Id, string Sha256);

internal sealed record AuditAnswerFamily(string Id, string File, string Title, string Sha256, int Parts, int Failures);

internal sealed record AuditAnswerMessage(string? File, int? Line, int? Column, string Severity, string Code, string? Family, string About, string Text, string Mend);

internal sealed record AuditAnswerFailure(
    string Family, string Part, string Debris, int Reached, int Steps, double BenchHours, double BenchAllClean, double BenchExpected, int Looks, double OnLooks, string Treatments);

internal sealed record AuditAnswerQuartiles(double Lower, double Median, double Upper, double Most);

internal sealed record AuditAnswerCell(string Kind, string Debris, string Family, bool Covered, int Parts);

internal sealed record AuditAnswerChange(ImmutableArray<AuditAnswerMessage> Gone, ImmutableArray<AuditAnswerChanged> Failures);

internal sealed record AuditAnswerChanged(AuditAnswerFailure? Before, AuditAnswerFailure? Now);
