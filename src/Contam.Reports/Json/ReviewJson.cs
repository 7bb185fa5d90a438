using System.Collections.Immutable;
using System.Text.Json;
using Contam.Families;

namespace Contam.Reports.Json;

/// <summary>A review as it was signed.</summary>
/// <param name="Family">The id of the family.</param>
/// <param name="By">Who signed.</param>
/// <param name="At">When, with its distance from UTC (ISO 8601).</param>
/// <param name="Note">What they noted; empty for nothing.</param>
/// <param name="Sha256">The hash of the family and its modules.</param>
/// <param name="Sources">The files as they were reviewed, the family file first.</param>
public sealed record SignedReview(string Family, string By, string At, string Note, string Sha256, ImmutableArray<SourceCopy> Sources);

/// <summary>A signed review as JSON: the contract <c>contam-review/1</c>.</summary>
public static class ReviewJson
{
    private const string FormatName = "contam-review/1";

    private static readonly ReportJsonContext Reading = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        MaxDepth = 16,
    });

    /// <summary>The review as JSON, closed by a newline.</summary>
    public static string Write(SignedReview review)
    {
        ArgumentNullException.ThrowIfNull(review);
        return ReportJson.Write(
            new SignedReviewDocument(FormatName, review.Family, review.By, review.At, review.Note, review.Sha256, [.. review.Sources.Select(source => new ReviewedFile(source.Name, source.Text))]),
            ReportJson.Context.SignedReviewDocument);
    }

    /// <summary>The review in a text.</summary>
    /// <exception cref="JsonException">The text is no signed review.</exception>
    public static SignedReview Read(string json)
    {
        SignedReviewDocument read = JsonSerializer.Deserialize(json, Reading.SignedReviewDocument) ?? throw new JsonException("the text is the single word null");
        if (read.Format != FormatName)
            throw new JsonException($"the format is {read.Format}, expected {FormatName}");
        if (read.Sources.IsDefaultOrEmpty || read.Sources.Any(source => source is null))
            throw new JsonException("its files are missing");
        return new SignedReview(read.Family, read.By, read.At, read.Note, read.Sha256, [.. read.Sources.Select(source => new SourceCopy(source.Name, source.Text))]);
    }
}

internal sealed record SignedReviewDocument(string Format, string Family, string By, string At, string Note, string Sha256, ImmutableArray<ReviewedFile> Sources);

internal sealed record ReviewedFile(string Name, string Text);
