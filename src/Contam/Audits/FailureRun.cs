using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Contam.Families;
using Contam.Graphs;
using Contam.Plans;
using Contam.Procedure;
using Contam.Proof;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Audits;

/// <summary>What one failure came to, kept small: parts are meant by their place in the family.</summary>
/// <param name="Part">The failed part.</param>
/// <param name="Debris">What it sheds.</param>
/// <param name="Answer">The figures.</param>
internal sealed record FailureRun(Part Part, Debris Debris, AuditedFailure Answer)
{
    /// <summary>Every part that is reached, the failed one included.</summary>
    public required ImmutableArray<SeenPart> Reached { get; init; }

    /// <summary>Parts that further failures would open the way to.</summary>
    public required ImmutableArray<int> Conditional { get; init; }

    /// <summary>Tasks for which a general figure stands in.</summary>
    public required ImmutableArray<(int Part, StepAction Action)> Untimed { get; init; }

    /// <summary>Why the plan is refused, or <c>null</c>.</summary>
    public required string? Refused { get; init; }

    /// <summary>
    /// Plans for the failure with as many looks as pay, and without any, plays both plans, and keeps what an audit asks about. Steps and hours are those with
    /// looks; what each part gets is told without, since with looks it would depend on what they show. The order of the steps is that of the first schedule.
    /// </summary>
    public static FailureRun Of(Family family, ShopStandard standard, Part part, Debris debris)
    {
        var plans = BothPlans.Of(new PlanRequest(family, standard, [part.Id], [debris]) { TakesFirstSchedule = true });
        (PlanDocument branching, PlanDocument plan) = (plans.Branching, plans.Flat);
        Claim? broken = plans.Each.SelectMany(one => PlanVerifier.Verify(one, family, standard.Debris).Claims).FirstOrDefault(claim => !claim.Holds);
        bool[] isBare = WithoutALookBefore(family, standard, part);
        var general = standard.Rules.Where(rule => rule.For is { Part: null, Kind: null }).Select(rule => (rule.Place.File, rule.Place.Line)).ToHashSet();
        return new FailureRun(part, debris, new AuditedFailure(family.Id, part.Id.Value, debris.Name, plan.Parts.Length, branching.Steps.Length, LookHours.Of(branching), Digest(plan)))
        {
            Reached = [.. plan.Parts.Select(reached => See(reached, family, part, isBare, general))],
            Conditional = [.. plan.Conditional.SelectMany(one => one.Parts).Select(id => family.IndexOf(new PartId(id))).Distinct().Order()],
            Untimed = Without(plan, family, new WorkTimes(standard)),
            Refused = broken?.Where,
        };
    }

    private static SeenPart See(PlanPart reached, Family family, Part failed, bool[] isBare, HashSet<(string File, int Line)> general)
    {
        int index = family.IndexOf(new PartId(reached.Id));
        return new SeenPart(index, reached.Id == failed.Id.Value, reached.Exposure[0].Grade, reached.Treatment, reached.Rule)
        {
            HasNoLookBefore = isBare[index],
            IsUnderGeneralRule = reached.Id != failed.Id.Value && reached.Rule is { } rule && general.Contains((rule.File, rule.Line)),
        };
    }

    /// <summary>The parts to which a way leads from the failure that passes no place, the part itself included, at which a clean finding would be accepted.</summary>
    private static bool[] WithoutALookBefore(Family family, ShopStandard standard, Part failed)
    {
        bool mayClear = standard.CleanFindings != CleanFindings.Never;
        PackedGraph graph = SpreadGraph.Pack(family, joint => SpreadGraph.IsOpen(family, joint, new HashSet<PartId> { failed.Id }));
        var isBare = new bool[family.Parts.Length];
        var queue = new Queue<int>();
        int start = family.IndexOf(failed.Id);
        isBare[start] = true;
        queue.Enqueue(start);
        while (queue.TryDequeue(out int vertex))
        {
            for (int place = graph.First[vertex]; place < graph.First[vertex + 1]; place++)
            {
                int next = graph.Target[place];
                if (isBare[next] || mayClear && family.Parts[next].Inspect is { Shows: Shows.Good })
                    continue;
                isBare[next] = true;
                queue.Enqueue(next);
            }
        }

        return isBare;
    }

    private static ImmutableArray<(int Part, StepAction Action)> Without(PlanDocument plan, Family family, WorkTimes times)
    {
        var untimed = ImmutableArray.CreateBuilder<(int, StepAction)>();
        foreach (PlanStep step in plan.Steps)
        {
            foreach (int index in (step.Part is { } one ? [one] : step.Parts).Select(id => family.IndexOf(new PartId(id))))
            {
                bool isSaid = step.Action == StepAction.SendOut
                    ? family.Parts[index].SendOut is not { Days: null }
                    : step.Technician is null || times.IsSaid(family.Parts[index], step.Action);
                // What is done before anything is opened and after all is closed is looked at under its own rules of time.
                if (!isSaid && step.Phase is Phase.Strip or Phase.CleanOut or Phase.Test or Phase.Refit)
                    untimed.Add((index, step.Action));
            }
        }

        return untimed.ToImmutable();
    }

    private static string Digest(PlanDocument plan)
    {
        var text = new StringBuilder();
        foreach (PlanPart part in plan.Parts)
            text.Append(part.Id).Append(' ').Append(part.Exposure[0].Grade).Append(' ').AppendJoin(' ', part.Treatment).Append('\n');
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())).AsSpan(0, 8));
    }
}

/// <summary>A part that one failure reaches.</summary>
/// <param name="Index">Its place in the family.</param>
/// <param name="IsFailed">Whether it is the failed part itself.</param>
/// <param name="Grade">How far the debris comes.</param>
/// <param name="Treatment">What it gets.</param>
/// <param name="Rule">The rule that gave it.</param>
internal sealed record SeenPart(int Index, bool IsFailed, Grade Grade, ImmutableArray<TreatmentKind> Treatment, PlanRule? Rule)
{
    /// <summary>Whether a way leads here that passes no place to look.</summary>
    public bool HasNoLookBefore { get; init; }

    /// <summary>Whether the rule names neither a part nor a kind. The failed part itself is renewed by such a rule.</summary>
    public bool IsUnderGeneralRule { get; init; }

    /// <summary>Whether no rule of the standard fitted. The failed part is renewed without one.</summary>
    public bool IsWithoutRule => !IsFailed && Rule is { Line: 0 };
}
