using System.Collections.Immutable;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>A caution with the jobs that it bears on.</summary>
/// <param name="Rule">The caution.</param>
/// <param name="Jobs">Numbers of the jobs it bears on; empty for the whole procedure.</param>
internal sealed record PlacedCaution(CautionRule Rule, ImmutableArray<int> Jobs);

/// <summary>Which cautions of the standard bear on which jobs. One that bears on none is left out; one without any condition bears on the whole.</summary>
internal static class CautionBook
{
    /// <summary>Said even where a standard says nothing.</summary>
    private static readonly CautionRule AlwaysThere = new(
        new BearsOn(null, null, null, null, null, null),
        "This plan does not replace the maker's manual, local rules or a licensed mechanic: where they say otherwise, they hold.",
        "common practice, no source",
        new Families.SourceSpan("contam", 1, 1));

    public static ImmutableArray<PlacedCaution> Place(ShopStandard standard, JobGraph graph, Bearing bearing)
    {
        var placed = ImmutableArray.CreateBuilder<PlacedCaution>();
        if (!standard.Cautions.Any(rule => rule.For == AlwaysThere.For))
            placed.Add(new PlacedCaution(AlwaysThere, []));
        foreach (CautionRule rule in standard.Cautions)
        {
            bool isForAll = rule.For == AlwaysThere.For;
            ImmutableArray<int> jobs = isForAll ? [] : [.. graph.Jobs.Where(job => bearing.Fits(rule.For, job)).Select(job => job.Id)];
            if (isForAll || jobs.Length > 0)
                placed.Add(new PlacedCaution(rule, jobs));
        }

        return placed.ToImmutable();
    }
}
