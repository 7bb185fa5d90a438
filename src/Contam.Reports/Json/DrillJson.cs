using System.Collections.Immutable;
using Contam.Drills;
using Contam.Families;
using Contam.Reports.Drills;
using Contam.Reports.Text;

namespace Contam.Reports.Json;

/// <summary>An exercise as JSON: the contract <c>contam-drill/1</c>.</summary>
public static class DrillJson
{
    /// <summary>The exercise as JSON, closed by a newline; without its answers the answers and the spread are <c>null</c>.</summary>
    public static string Write(Drill drill, bool withAnswers)
    {
        ArgumentNullException.ThrowIfNull(drill);
        var sheet = new DrillSheet(drill, TextLook.Plain);
        return ReportJson.Write(
            new DrillAnswer(
                "contam-drill/1",
                new DrillAnswerFamily(drill.Request.Family.Id, drill.Request.Family.Title),
                drill.Request.Seed,
                Ids(drill.Request.Failed),
                [.. drill.Request.Debris.Select(debris => debris.Name)],
                [.. sheet.Questions.Select(Asked)],
                [.. sheet.LeftOut.Select(one => new DrillAnswerLeftOut(DrillSheet.WordOf(one.Kind), one.Text))],
                withAnswers ? [.. sheet.Questions.Select(Answered)] : null,
                withAnswers ? [.. drill.Spread.Select(hop => new DrillAnswerHop(hop.Hop, hop.Part.Value, hop.Via.Value, hop.Circuit))] : null),
            ReportJson.Context.DrillAnswer);
    }

    private static DrillAnswerQuestion Asked(SheetQuestion question) => new(
        question.Number,
        DrillSheet.WordOf(question.Kind),
        question.Asks,
        question.Given,
        [.. question.Choices.Select(choice => new DrillAnswerChoice(choice.Letter, choice.Text, choice.Steps, Ids(choice.Choice.Parts)))]);

    private static DrillAnswerSolved Answered(SheetQuestion question) => new(
        question.Number,
        question.Right.Letter,
        [.. question.Choices.Select(choice => new DrillAnswerReason(choice.Letter, choice.IsRight, choice.Because, Ids(choice.Choice.Path)))]);

    private static ImmutableArray<string> Ids(ImmutableArray<PartId> parts) => [.. parts.Select(part => part.Value)];
}

internal sealed record DrillAnswer(
    string Format,
    DrillAnswerFamily Family,
    ulong Seed,
    ImmutableArray<string> Failed,
    ImmutableArray<string> Debris,
    ImmutableArray<DrillAnswerQuestion> Questions,
    ImmutableArray<DrillAnswerLeftOut> LeftOut,
    ImmutableArray<DrillAnswerSolved>? Answers,
    ImmutableArray<DrillAnswerHop>? Spread);

internal sealed record DrillAnswerFamily(string Id, string Title);

internal sealed record DrillAnswerQuestion(int Number, string Kind, string Asks, ImmutableArray<string> Given, ImmutableArray<DrillAnswerChoice> Choices);

internal sealed record DrillAnswerChoice(string Letter, string Text, ImmutableArray<string> Steps, ImmutableArray<string> Parts);

internal sealed record DrillAnswerLeftOut(string Kind, string Because);

internal sealed record DrillAnswerSolved(int Number, string Right, ImmutableArray<DrillAnswerReason> Because);

internal sealed record DrillAnswerReason(string Letter, bool Right, string Because, ImmutableArray<string> Path);

internal sealed record DrillAnswerHop(int Hop, string Part, string Via, string Circuit);
