using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Contam.Families;
using Contam.StopLines;

namespace Contam.Reports.Json;

/// <summary>The stop line as JSON: the contract <c>contam-stop-line/1</c>.</summary>
public static class StopLineJson
{
    /// <summary>The line as JSON, closed by a newline.</summary>
    public static string Write(StopLine line, StopLineQuestion question)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(question);
        return ReportJson.Write(
            new StopLineAnswer(
                "contam-stop-line/1",
                [.. line.Looks.Select(look => new StopLineAnswerLook(look.Part.Value, look.Minutes, Ids(look.InTheWay), Ids(look.Clears)))],
                Ids(line.Clears),
                Ids(line.ClearsTogether),
                Ids(line.ClearedAlready),
                [.. line.Treat.Select(part => part.Part.Value)],
                [.. line.Treat.Select(part => new StopLineAnswerPart(part.Part.Value, Word(part.Reason), part.Minutes))],
                new StopLineAnswerMinutes(line.Minutes.Looks, line.Minutes.Treatment, line.Minutes.WithoutLooking, line.Minutes.Saved),
                line.IsLeast,
                Ids(line.Doubtful),
                [.. line.Contradictions.SelectMany(one => one.Voids.Select(place => new VoidEntry(place.Value, one.Find.Debris.Name, one.Find.Part.Value)))],
                Word(line.Silence),
                LookHistoryEntry.Of(question.History, question.WithOwnWords, question.Family)),
            ReportJson.Context.StopLineAnswer);
    }

    private static ImmutableArray<string> Ids(ImmutableArray<PartId> parts) => [.. parts.Select(part => part.Value)];

    private static string Word(StopLineReason reason) => reason switch
    {
        StopLineReason.Failed => "failed",
        StopLineReason.Found => "found",
        StopLineReason.Critical => "critical",
        _ => "before the line",
    };

    private static string? Word(StopLineSilence silence) => silence switch
    {
        StopLineSilence.StandardForbids => "the standard never lets a clean finding clear",
        StopLineSilence.NothingToSpare => "nothing could be spared",
        StopLineSilence.NowhereToLook => "no place shows the debris well",
        StopLineSilence.NothingSaved => "looking takes as long as it saves",
        StopLineSilence.FindsSpeakAgainst => "every place that shows it well lies on the way to a find",
        _ => null,
    };
}

internal sealed record StopLineAnswer(
    string Format,
    ImmutableArray<StopLineAnswerLook> Looks,
    ImmutableArray<string> Clears,
    ImmutableArray<string> ClearsTogether,
    ImmutableArray<string> ClearedAlready,
    ImmutableArray<string> Treat,
    ImmutableArray<StopLineAnswerPart> TreatBecause,
    StopLineAnswerMinutes Minutes,
    bool IsLeast,
    ImmutableArray<string> Doubtful,
    ImmutableArray<VoidEntry> Void,
    string? NoLookBecause,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] LookHistoryEntry? History);

/// <summary>A clean finding that a find disproves.</summary>
internal sealed record VoidEntry(string Part, string Debris, string ContradictedBy);

internal sealed record StopLineAnswerLook(string Part, double Minutes, ImmutableArray<string> InTheWay, ImmutableArray<string> Clears);

internal sealed record StopLineAnswerPart(string Part, string Because, double Minutes);

internal sealed record StopLineAnswerMinutes(double Looks, double Treatment, double WithoutLooking, double Saved);
