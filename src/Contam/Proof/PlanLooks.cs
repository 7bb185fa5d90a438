using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// The looks that decide how far to go, with their ids found in the family, and what hangs on them. Looks are meant by their place in the plan, or as bits;
/// parts and debris by their places too. Reading stops at the first thing that makes no sense.
/// </summary>
internal sealed class PlanLooks
{
    /// <summary>The most looks that a plan may have.</summary>
    internal const int Most = 16;

    private readonly Dictionary<string, int> byId = new(StringComparer.Ordinal);

    private PlanLooks(PlanDocument plan, Family family)
    {
        All = plan.Looks.OrEmpty();
        Places = [.. All.Select(look => family.Places(look.Places.OrEmpty()).ToImmutableArray())];
        Problem = ReadLooks(plan, family) ?? ReadConditions(plan);
    }

    /// <summary>The looks, in order of work.</summary>
    internal ImmutableArray<PlanLook> All { get; }

    /// <summary>For each look where it is made.</summary>
    internal ImmutableArray<ImmutableArray<int>> Places { get; }

    /// <summary>For each look on which earlier ones it hangs.</summary>
    internal List<HangsOn> Due { get; } = [];

    /// <summary>For each step of the plan what it hangs on.</summary>
    internal List<HangsOn> Steps { get; } = [];

    /// <summary>For each part that the plan lists what it hangs on.</summary>
    internal List<HangsOn> Parts { get; } = [];

    /// <summary>Why the looks cannot be followed, or <c>null</c>. Only then are the lists complete.</summary>
    internal string? Problem { get; }

    /// <summary>Reads. Linear in the plan.</summary>
    internal static PlanLooks Read(PlanDocument plan, Family family) => new(plan, family);

    /// <summary>Whether a look is for this debris.</summary>
    internal bool IsFor(int look, Debris debris) => All[look].Debris.OrEmpty().Contains(debris.Name);

    private string? ReadLooks(PlanDocument plan, Family family)
    {
        if (All.Length > Most)
            return FormattableString.Invariant($"the plan has {All.Length} looks, and at most {Most} can be followed: make it with fewer");
        HashSet<string> failed = [.. plan.Failed.OrEmpty().Select(failure => failure.Part)];
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (PlanLook look in All)
        {
            foreach (string place in look.Places.OrEmpty())
            {
                if (WhyNot(place) is { } because)
                    return $"look {look.Id} may not decide at {place}, as {because}: what lies beyond it would be left as it is";
            }

            if (look.Places.OrEmpty().IsEmpty || look.Debris.OrEmpty().IsEmpty)
                return $"look {look.Id} is at no place or for no debris: nobody could say how it comes out";
            if (look.Debris.OrEmpty().FirstOrDefault(debris => !plan.Debris.OrEmpty().Contains(debris)) is { } other)
                return $"look {look.Id} is for {other}, which the plan is not about: nobody has followed that debris";
            // Earlier looks only are known so far.
            if (HangsOn.Read(byId, look.OnlyIf, [], out string? unknown) is not { } due)
                return $"look {look.Id} hangs on look {unknown}, which does not come before it: nobody would know whether to make it";
            if (!byId.TryAdd(look.Id, Due.Count))
                return $"the plan has two looks {look.Id}: it would not be known on which of the two something hangs";
            Due.Add(due);
        }

        return null;

        string? WhyNot(string place) =>
            family.Find(new PartId(place)) is not { } part ? "this engine has no such part"
            : part.Inspect?.Shows != Shows.Good ? "a look there does not show debris well enough"
            : failed.Contains(place) ? "the part has failed"
            : !seen.Add(place) ? "another look is made there"
            : null;
    }

    private string? ReadConditions(PlanDocument plan)
    {
        foreach (PlanStep step in plan.Steps.OrEmpty())
        {
            if (HangsOn.Read(byId, step.OnlyIf, step.Unless, out string? unknown) is not { } hangs)
                return FormattableString.Invariant($"step {step.Number} hangs on look {unknown}, which the plan does not have: nobody would know whether to do it");
            Steps.Add(hangs);
        }

        foreach (PlanPart part in plan.Parts.OrEmpty())
        {
            if (HangsOn.Read(byId, part.OnlyIf, [], out string? unknown) is not { } hangs)
                return $"{part.Id} hangs on look {unknown}, which the plan does not have: nobody would know whether to treat it";
            Parts.Add(hangs);
        }

        foreach (PlanOrderLine line in plan.Order.OrEmpty())
        {
            if (HangsOn.Read(byId, line.OnlyIf, [], out string? unknown) is null)
                return $"the order of {line.Item} hangs on look {unknown}, which the plan does not have: nobody would know whether to order it";
        }

        return null;
    }
}
