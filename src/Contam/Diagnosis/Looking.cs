using System.Collections.Immutable;

namespace Contam.Diagnosis;

/// <summary>
/// Where to look next, and in what order until the source is known.
/// <para>
/// What a look shows is taken to follow the chances of <see cref="Suspecting"/>. For a part behind a barrier these two do not add to 1, as the rule is
/// cautious both ways; whoever expects an outcome takes <c>found / (found + clean)</c>. What follows from an outcome is the rule itself, so that the shares
/// in a plan are those that <see cref="Suspecting"/> gives once the finding is in.
/// </para>
/// </summary>
public static class Looking
{
    /// <summary>A look that is expected to tell less than this many bits is not worth a walk: looking ends when only such are left. Ours; no source.</summary>
    public const double LeastBits = 0.01;

    /// <summary>Up to so many places a plan is exact.</summary>
    public const int MostExactPlaces = 12;

    /// <summary>
    /// Every place with a look that nobody has looked at yet and that tells suspects apart: most bits for each minute first (no minutes before any), then
    /// most bits, then file order.
    /// </summary>
    public static ImmutableArray<NextLook> Next(SuspectAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        LookTable table = TableOf(answer);
        return
        [
            .. Enumerable.Range(0, table.Places.Length)
                .Select(place => LookAt(table, place, table.Shares))
                .OrderByDescending(look => Math.Round(look.BitsPerMinute ?? double.PositiveInfinity, 9))
                .ThenByDescending(look => Math.Round(look.Bits, 9)),
        ];
    }

    /// <summary>
    /// A plan of looks: look here; if debris is found go there, if not there. It ends where one suspect has the share <paramref name="sure"/> at least, or
    /// where no look is left that is expected to tell <see cref="LeastBits"/>; looks that tell less are not made.
    /// <para>
    /// With up to <see cref="MostExactPlaces"/> places the plan with the least expected minutes is found by dynamic programming over what was found where
    /// (3 to the power of the places, as each is not looked at, found or clean). With more, the look with most bits for each minute is taken every time.
    /// Branches are written out from the likeliest on, <see cref="LookingTree.MostLooks"/> at most.
    /// </para>
    /// </summary>
    /// <param name="answer">The suspects as they stand.</param>
    /// <param name="sure">Above 0 and at most 1.</param>
    public static LookingPlan Plan(SuspectAnswer answer, double sure)
    {
        ArgumentNullException.ThrowIfNull(answer);
        if (!(sure > 0 && sure <= 1))
            throw new ArgumentOutOfRangeException(nameof(sure), sure, "a share is above 0 and at most 1");
        LookTable table = TableOf(answer);
        if (table.Shares.Length == 0)
            return new LookingPlan(IsExact: true, sure, 0, 0, new LookingNode(1, [], 0) { End = LookingEnd.NothingTells });
        bool isExact = table.Places.Length <= MostExactPlaces;
        var exact = isExact ? new ExactLooking(table, sure) : null;
        LookingTree tree = LookingTree.Grow(answer.Model, table, sure, exact is null ? new GreedyLooking(table, sure) : exact);
        return new LookingPlan(isExact, sure, exact?.ExpectedMinutes ?? tree.MinutesIfWhole, table.Places.Length, tree.Root);
    }

    internal static NextLook LookAt(LookTable table, int place, ReadOnlySpan<double> shares) =>
        new(table.Places[place].Id, table.Minutes[place], table.BitsAt(place, shares), table.ChanceAt(place, shares));

    private static LookTable TableOf(SuspectAnswer answer)
    {
        var shareOf = answer.Suspects.ToDictionary(suspect => suspect.Part, suspect => suspect.Share);
        return LookTable.Of(answer.Model, [.. answer.Model.Sources.Select(part => shareOf[part.Id])]);
    }
}
