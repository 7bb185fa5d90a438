using System.Collections.Immutable;

namespace Contam.Proof;

/// <summary>What came of all histories of a plan with looks.</summary>
/// <param name="Histories">How many were gone through.</param>
/// <param name="Closed">The first history in which a part is called milder than it is, or left out.</param>
/// <param name="Treated">The first in which a part does not get what it needs.</param>
/// <param name="Ordered">The first in which the steps that are done do not end clean.</param>
internal sealed record EveryHistory(int Histories, string? Closed, string? Treated, string? Ordered)
{
    /// <summary>What came of a plan without looks, which has one history.</summary>
    internal static EveryHistory Flat(string? ordered) => new(1, null, null, ordered);

    /// <summary>What came of a plan of which none could be played, for a reason that all claims share.</summary>
    internal static EveryHistory Unplayed(string because) => new(0, because, because, because);

    /// <summary>Goes through all of them; each claim fails at its first fault. Cost: that of <see cref="HistoryCheck"/>, at most <see cref="Outcomes.Most"/> times.</summary>
    /// <param name="reading">A plan that can be read.</param>
    /// <param name="looks">Its looks.</param>
    /// <param name="early">What is out of order however they come out, so that the steps are not played; else <c>null</c>.</param>
    internal static EveryHistory Of(PlanReading reading, PlanLooks looks, string? early)
    {
        LookDisproof[] disproofs = [.. reading.Debris.Select(claims => new LookDisproof(reading, claims, looks))];
        if (Outcomes.Of(looks, disproofs) is not { } outcomes)
            return Unplayed(FormattableString.Invariant($"its looks can come out in more than {Outcomes.Most} ways: they cannot all be played"));

        ImmutableArray<string> letters = [.. looks.All.Select(look => look.Id)];
        var check = new HistoryCheck(reading, looks, new HistoryNeeds(reading, disproofs), new PlayGround(reading.Family, reading.Joints));
        (string? closed, string? treated, string? ordered) = (null, null, early);
        foreach (PlayedHistory history in outcomes)
        {
            (string? Closed, string? Treated, string? Ordered) faults = check.FirstFaults(history, (treated is null, ordered is null));
            string with = $"with {history.Words(letters)}: ";
            closed ??= faults.Closed is { } left ? with + left : null;
            treated ??= faults.Treated is { } untreated ? with + untreated : null;
            ordered ??= faults.Ordered is { } disorder ? with + disorder : null;
        }

        return new EveryHistory(outcomes.Length, closed, treated, ordered);
    }
}
