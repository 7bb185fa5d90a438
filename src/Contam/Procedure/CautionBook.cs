using System.Collections.Immutable;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Procedure;

/// <summary>A caution with the jobs that it bears on.</summary>
/// <param name="Rule">The caution.</param>
/// <param name="Jobs">Numbers of the jobs it bears on; empty for the whole procedure.</param>
internal sealed record PlacedCaution(CautionRule Rule, ImmutableArray<int> Jobs);

/// <summary>Which cautions of the standard bear on which jobs. One that bears on none is left out; one without any condition bears on the whole.</summary>
internal static class CautionBook
{
    /// <summary>Said even where a standard says nothing: the first caution of the house that bears on everything.</summary>
    private static CautionRule AlwaysThere => BuiltInStandards.House.Cautions.First(rule => rule.For == BearsOn.Everything);

    public static ImmutableArray<PlacedCaution> Place(ShopStandard standard, JobGraph graph, Bearing bearing)
    {
        var placed = ImmutableArray.CreateBuilder<PlacedCaution>();
        if (!standard.Cautions.Any(rule => rule.For == BearsOn.Everything))
            placed.Add(new PlacedCaution(AlwaysThere, []));
        foreach (CautionRule rule in standard.Cautions)
        {
            // What only says which machine it is for bears on the whole of the work there.
            bool isForAll = rule.For with { Machine = null, Has = null } == BearsOn.Everything;
            ImmutableArray<int> jobs = [.. graph.Jobs.Where(job => bearing.Fits(rule.For, job)).Select(job => job.Id)];
            if (jobs.Length > 0 && isForAll)
                jobs = [];
            else if (jobs.Length == 0)
                continue;
            placed.Add(new PlacedCaution(rule, jobs));
        }

        return placed.ToImmutable();
    }
}
