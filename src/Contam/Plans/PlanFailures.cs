using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;

namespace Contam.Plans;

/// <summary>A part that has failed, as a plan tells it.</summary>
/// <param name="Part">Its id. A part of which several things shed are of different sizes stands once for each size.</param>
/// <param name="Debris">What it shed, in the order of <see cref="PlanDocument.Debris"/>; empty for nothing.</param>
/// <param name="UpToUm">The largest particle seen from this failure in µm; <c>null</c> where that is not said, so that the family's figure holds.</param>
public sealed record PlanFailure(string Part, ImmutableArray<string> Debris, double? UpToUm);

/// <summary>The failed parts of a plan.</summary>
public static class PlanFailures
{
    /// <summary>Their ids, each once, in the order of the plan.</summary>
    public static ImmutableArray<string> FailedParts(this PlanDocument plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Failed.IsDefaultOrEmpty ? [] : [.. plan.Failed.Select(failure => failure.Part).Distinct(StringComparer.Ordinal)];
    }

    /// <summary>Whether every failure shed all of these debris and of none a size is said, so that no more need be told than what failed and what was shed.</summary>
    public static bool AllShedTheSame(IReadOnlyCollection<PlanFailure> failed, IReadOnlyCollection<string> debris)
    {
        ArgumentNullException.ThrowIfNull(failed);
        ArgumentNullException.ThrowIfNull(debris);
        return debris.Count > 0 && failed.All(failure => failure.UpToUm is null && debris.All(failure.Debris.Contains));
    }

    /// <summary>A failure in the form in which a command takes it: <c>compressor=metal:500um</c>, <c>shaft=nothing</c>.</summary>
    public static string Written(PlanFailure failure)
    {
        ArgumentNullException.ThrowIfNull(failure);
        string size = failure.UpToUm is { } um ? string.Create(CultureInfo.InvariantCulture, $":{um:0.######}um") : "";
        return $"{failure.Part}={(failure.Debris.IsDefaultOrEmpty ? "nothing" : string.Join(',', failure.Debris.Select(debris => debris + size)))}";
    }

    /// <summary>Failures as a plan about these debris tells them.</summary>
    public static ImmutableArray<PlanFailure> Of(ImmutableArray<PartFailure> failures, ImmutableArray<Debris> debris) =>
    [
        .. failures.Select(failure => new PlanFailure(
            failure.Part.Value,
            [.. debris.Where(failure.Sheds).Select(one => one.Name)],
            failure.UpTo is { IsUnlimited: false } size ? size.Micrometres : null)),
    ];

    /// <summary>What a plan tells of its failures, as a question asks it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="find">The debris of a name.</param>
    public static ImmutableArray<PartFailure> Failures(this PlanDocument plan, Func<string, Debris> find)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return [.. plan.Failed.Select(failure => failure.Asked(find))];
    }

    /// <summary>A failure that a plan tells, as a question asks it.</summary>
    /// <param name="failure">The failure.</param>
    /// <param name="find">The debris of a name.</param>
    public static PartFailure Asked(this PlanFailure failure, Func<string, Debris> find)
    {
        ArgumentNullException.ThrowIfNull(failure);
        return new PartFailure(new PartId(failure.Part))
        {
            Debris = [.. failure.Debris.Select(find)],
            UpTo = failure.UpToUm is { } size ? ParticleSize.FromMicrometres(size) : null,
        };
    }
}
