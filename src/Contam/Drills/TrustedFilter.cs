using Contam.Families;
using Contam.Spread;

namespace Contam.Drills;

/// <summary>
/// Asks what can be trusted to hold the debris back, of parts that it comes to. At most one of those offered can; the last choice is that none can.
/// A part whose rating is not relied on but whose passages are too narrow for hard pieces is not offered: it holds some, for another reason.
/// </summary>
internal static class TrustedFilter
{
    private const int MostNamed = 3;
    private const int LeastNamed = 2;
    private const double TrustedIsKeptBack = 0.25;

    public static Posed Pose(DrillRequest request)
    {
        var dice = new DrillDice(request.Seed, DrillKind.TrustedFilter);
        Debris[] held = [.. request.Debris.Where(debris => ReachedOver(ShortestWays.From(request, debris)).Any(part => part.HoldOf(debris) is not null))];
        if (held.Length == 0)
            return Posed.Not(DrillKind.TrustedFilter, DrillSilence.NothingHolds);
        Debris asked = dice.Pick(held);
        var ways = ShortestWays.From(request, asked);
        Part[] reached = [.. ReachedOver(ways)];
        FilterChoice[] all = [.. reached.Where(part => IsPlain(request, part, asked)).Select(part => Of(request, part, asked) with { Path = ways.PathTo(part.Id) })];
        FilterChoice[] trusted = [.. all.Where(choice => choice.IsRight)];
        FilterChoice[] doubtful = [.. all.Where(choice => !choice.IsRight && choice.Holds is not null)];
        // Screens that hold something else look most like what is asked for.
        FilterChoice[] screens = [.. all.Where(choice => choice.Holds is null && request.Family[choice.Part!.Value].Kind.IsFilter)];
        FilterChoice[] others = [.. all.Where(choice => choice.Holds is null)];

        bool keepsBack = trusted.Length == 0 || doubtful.Length >= MostNamed && dice.Happens(TrustedIsKeptBack);
        List<FilterChoice> named = keepsBack ? [] : [dice.Pick(trusted)];
        named.AddRange(Mixed.Of(dice, MostNamed - named.Count, doubtful));
        if (named.Count < LeastNamed)
            named.AddRange(Mixed.Of(dice, LeastNamed + 1 - named.Count, screens, others));
        if (named.Count < LeastNamed || named.All(choice => choice.Holds is null))
            return Posed.Not(DrillKind.TrustedFilter, DrillSilence.TooFewParts);
        return Posed.As(new DrillQuestion(
            DrillKind.TrustedFilter,
            [.. dice.Shuffled<DrillChoice>(named), new FilterChoice(null, FilterTrust.NoneOfThem) { NoneCan = keepsBack }]) { Debris = asked });

        IEnumerable<Part> ReachedOver(ShortestWays ways) => request.Family.Parts.Where(part => ways.HopsTo(part.Id) is not null);
    }

    private static bool IsPlain(DrillRequest request, Part part, Debris debris) =>
        request.Failed.Contains(part.Id) || TrustOf(request, part, debris) == FilterTrust.Trusted || SpreadGraph.LetsOn(part, debris).IsUnlimited;

    private static FilterChoice Of(DrillRequest request, Part part, Debris debris) =>
        new(part.Id, TrustOf(request, part, debris)) { Holds = part.HoldOf(debris)?.Above };

    private static FilterTrust TrustOf(DrillRequest request, Part part, Debris debris) => part switch
    {
        _ when part.HoldOf(debris) is null => FilterTrust.HoldsNothing,
        _ when request.Failed.Contains(part.Id) => FilterTrust.HasFailed,
        { HasAbsoluteRating: false, HasBypass: true } => FilterTrust.IsNominalAndOpensPast,
        { HasAbsoluteRating: false } => FilterTrust.IsNominal,
        { HasBypass: true } => FilterTrust.OpensPast,
        _ => FilterTrust.Trusted,
    };
}
