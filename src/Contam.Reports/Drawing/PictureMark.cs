using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Spread;

namespace Contam.Reports.Drawing;

/// <summary>What the picture says of a part beside its name.</summary>
/// <param name="Grade"><c>failed</c>, <c>exposed</c>, <c>guarded</c>, <c>cleared</c> or <c>clear</c>; <c>null</c> where no failure is asked about, or how far its debris goes is not told.</param>
/// <param name="Tag">In a few words, for the box; empty for nothing.</param>
/// <param name="Told">In full, for each debris.</param>
/// <param name="Barrier">Whether it holds debris back; <c>null</c> where it should and is not relied on.</param>
/// <param name="IsLook">Whether it is a place to look at.</param>
internal sealed record PictureMark(string? Grade, string Tag, string Told, bool? Barrier, bool IsLook)
{
    /// <summary>The mark of a part.</summary>
    public static PictureMark Of(Part part, ImmutableArray<DebrisSpread> spreads, ImmutableArray<PartId> failed, PictureOptions options)
    {
        bool? barrier = options.HidesBarriers ? false : BarrierOf(part, spreads);
        bool isLook = options.StopLine.Contains(part.Id);
        if (spreads.IsEmpty && !failed.Contains(part.Id))
            return new PictureMark(null, "", "", barrier, isLook);
        (Debris Debris, ReachedPart Reached)[] reached =
            [.. spreads.Select(spread => (spread.Debris, Reached: spread.Find(part.Id))).Where(one => one.Reached is not null).Select(one => (one.Debris, one.Reached!))];
        string told = string.Join(", ", reached.Select(one => $"{WordOf(one.Reached.Grade)} {one.Debris.Name}{SizeOf(one.Debris, one.Reached.Reach)}"));
        if (failed.Contains(part.Id))
            return new PictureMark("failed", "FAILED", told.Length == 0 ? "failed" : $"failed, {told}", barrier, isLook);
        if (reached.Length == 0)
            return new PictureMark("clear", "", "clear", barrier, isLook);
        Grade worst = reached.Min(one => one.Reached.Grade);
        (Debris Debris, ReachedPart Reached)[] worstOnes = [.. reached.Where(one => one.Reached.Grade == worst)];
        // With one debris the size is news; with several their names are.
        string rest = spreads.Length == 1 ? SizeOf(worstOnes[0].Debris, worstOnes[0].Reached.Reach) : " " + string.Join(", ", worstOnes.Select(one => one.Debris.Name));
        return new PictureMark(WordOf(worst), WordOf(worst) + rest, told, barrier, isLook);
    }

    private static bool? BarrierOf(Part part, ImmutableArray<DebrisSpread> spreads)
    {
        bool holds = spreads.IsEmpty ? !part.Holds.IsEmpty : spreads.Any(spread => part.HoldOf(spread.Debris) is not null);
        if (!holds)
            return false;
        return part.HasAbsoluteRating && !part.HasBypass ? true : null;
    }

    private static string WordOf(Grade grade) => grade.ToString().ToLowerInvariant();

    private static string SizeOf(Debris debris, ParticleSize reach) =>
        !debris.HasSize || reach.IsUnlimited ? "" : string.Create(CultureInfo.InvariantCulture, $" ≤ {reach.Micrometres:0.##} µm");
}
