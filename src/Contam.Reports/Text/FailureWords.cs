using Contam.Plans;

namespace Contam.Reports.Text;

/// <summary>What failed and what it shed, in words.</summary>
internal static class FailureWords
{
    /// <summary>
    /// <c>Compressor, Belt failed, metal and rubber</c> where all shed the same; else each with its own:
    /// <c>Compressor (metal up to 500 µm), Belt (rubber), Shaft (nothing shed) failed</c>.
    /// </summary>
    /// <param name="failed">The failures.</param>
    /// <param name="debris">What the question is about.</param>
    /// <param name="nameOf">The name of a part.</param>
    /// <param name="look">The units.</param>
    /// <param name="joined">Between debris that all shed.</param>
    public static string Title(IReadOnlyCollection<PlanFailure> failed, IReadOnlyCollection<string> debris, Func<string, string> nameOf, TextLook look, string joined = " and ") =>
        PlanFailures.AllShedTheSame(failed, debris)
            ? $"{string.Join(", ", failed.Select(failure => nameOf(failure.Part)))} failed, {string.Join(joined, debris)}"
            : $"{string.Join(", ", failed.GroupBy(failure => failure.Part, StringComparer.Ordinal).Select(part => $"{nameOf(part.Key)} ({Shed(part, look)})"))} failed";

    /// <summary>What one part shed.</summary>
    public static string Shed(IEnumerable<PlanFailure> part, TextLook look)
    {
        string[] shed = [.. part.Where(failure => failure.Debris.Length > 0).Select(failure => string.Join(" and ", failure.Debris) + (failure.UpToUm is { } size ? $" up to {UnitText.Size(size, look)}" : ""))];
        return shed.Length == 0 ? "nothing shed" : string.Join(", ", shed);
    }
}
