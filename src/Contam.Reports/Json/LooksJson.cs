using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Reports.Json;

/// <summary>How far to go, as JSON: the contract <c>contam-looks/1</c>.</summary>
public static class LooksJson
{
    /// <summary>The answer as JSON, closed by a newline.</summary>
    public static string Write(LooksAnswer answer, Family family)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(family);
        return ReportJson.Write(
            new LooksJsonAnswer(
                "contam-looks/1",
                family.Id,
                [.. answer.Looks.Select(look => new LooksJsonLook($"{look.Letter}", look.Places, look.Debris, Letters(look.When.OnlyIf), look.Minutes, look.Odds, look.MinutesHanging, look.Clears))],
                [.. answer.Parts.Select(part => new LooksJsonPart(
                    part.Id,
                    part.When is null,
                    Letters(part.When?.OnlyIf ?? []),
                    [.. part.Treatments.Select(one => new LooksJsonTreatment(one.Treatment, Letters(one.When.OnlyIf), Letters(one.When.Unless)))]))],
                new LooksJsonMinutes(answer.Minutes.AllClean, answer.Minutes.Expected, answer.Minutes.Most, answer.Minutes.WithoutLooking),
                answer.Chosen switch
                {
                    LooksChosen.Named => "named",
                    LooksChosen.OfAll => "least of all choices",
                    _ => "best of a search",
                },
                answer.PlacesThatCount,
                answer.Outcomes),
            ReportJson.Context.LooksJsonAnswer);
    }

    private static ImmutableArray<string> Letters(ImmutableArray<int> looks) => [.. looks.Select(look => $"{LookCondition.LetterOf(look)}")];
}

internal sealed record LooksJsonAnswer(
    string Format,
    string Family,
    ImmutableArray<LooksJsonLook> Looks,
    ImmutableArray<LooksJsonPart> Parts,
    LooksJsonMinutes Minutes,
    string Chosen,
    int PlacesThatCount,
    int Outcomes);

internal sealed record LooksJsonLook(
    string Id, ImmutableArray<string> Places, ImmutableArray<string> Debris, ImmutableArray<string> OnlyIf, double Minutes, double Odds, double MinutesHanging, ImmutableArray<string> Clears);

internal sealed record LooksJsonPart(string Id, bool Cleared, ImmutableArray<string> OnlyIf, ImmutableArray<LooksJsonTreatment> Treatments);

internal sealed record LooksJsonTreatment(TreatmentKind Treatment, ImmutableArray<string> OnlyIf, ImmutableArray<string> Unless);

internal sealed record LooksJsonMinutes(double AllClean, double Expected, double Most, double WithoutLooking);
