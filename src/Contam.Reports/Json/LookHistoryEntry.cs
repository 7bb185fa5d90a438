using System.Collections.Immutable;
using Contam.Diagnosis;
using Contam.Families;

namespace Contam.Reports.Json;

/// <summary>The shop's own looks that an answer was weighed with. In the answers only where they were asked for.</summary>
internal sealed record LookHistoryEntry(int WordCountsAsLooks, int Jobs, int Looks, ImmutableArray<LookHistoryPlaceEntry> Places)
{
    /// <param name="history">The looks.</param>
    /// <param name="family">The family with its own words.</param>
    /// <param name="earned">The family with the words that the looks have earned, where those count.</param>
    public static LookHistoryEntry? Of(LookHistory? history, Family? family, Family? earned = null) => history is null || family is null
        ? null
        : new LookHistoryEntry(
            LookHistory.WordWorth,
            history.Jobs,
            history.Places.Sum(place => place.Count.Looks),
            [
                .. history.Places.Select(place => new LookHistoryPlaceEntry(
                    place.Part.Value,
                    place.Debris.Name,
                    place.Count.Looks,
                    place.Count.Found,
                    Word(family[place.Part]),
                    earned is null ? Word(family[place.Part]) : Word(earned[place.Part]),
                    Math.Round(history.ChanceToShow(family[place.Part], place.Debris), 9))),
            ]);

    private static string? Word(Part part) => part.Inspect?.Shows.ToString().ToLowerInvariant();
}

internal sealed record LookHistoryPlaceEntry(string Part, string Debris, int Looks, int Found, string? Word, string? CountsAs, double Chance);
