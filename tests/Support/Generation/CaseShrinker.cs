using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Support.Generation;

/// <summary>Simpler cases: with fewer parts, joints, failures, findings and rules, and with plainer ones. Each is sensible, and none is repeated by the next shrink.</summary>
public static class CaseShrinker
{
    /// <summary>Every case one step simpler than this one, the boldest steps first.</summary>
    public static IEnumerable<TestCase> Shrink(TestCase whole)
    {
        ArgumentNullException.ThrowIfNull(whole);
        return Steps(whole).Where(simpler => simpler.IsSensible);
    }

    private static IEnumerable<TestCase> Steps(TestCase whole)
    {
        foreach (TestCase simpler in FewerParts(whole))
            yield return simpler;
        foreach (TestCase simpler in SimplerQuestion(whole))
            yield return simpler;
        foreach (TestCase simpler in SimplerStandard(whole))
            yield return simpler;
        foreach (TestCase simpler in FewerJoints(whole))
            yield return simpler;
        foreach (TestCase simpler in PlainerJoints(whole))
            yield return simpler;
        foreach (TestCase simpler in PlainerParts(whole))
            yield return simpler;
    }

    private static IEnumerable<TestCase> FewerParts(TestCase whole) =>
        Without(whole.Family.Parts).Where(kept => kept.Length > 0).Select(kept => WithParts(whole, kept));

    private static IEnumerable<TestCase> SimplerQuestion(TestCase whole)
    {
        foreach (ImmutableArray<Finding> kept in Without(whole.Findings))
            yield return whole with { Findings = kept };
        foreach (ImmutableArray<PartId> kept in Without(whole.Failed))
            yield return whole with { Failed = kept };
        foreach (ImmutableArray<PartFailure> kept in Without(whole.Own))
            yield return whole with { Own = kept };
        for (int i = 0; i < whole.Own.Length; i++)
        {
            if (whole.Own[i].UpTo is not null)
                yield return whole with { Own = whole.Own.SetItem(i, whole.Own[i] with { UpTo = null }) };
        }

        foreach (ImmutableArray<Debris> kept in Without(whole.Asked))
            yield return whole with { Asked = kept };
        if (whole.Technicians > 1)
            yield return whole with { Technicians = 1 };
        if (whole.Family.States != EngineStates.All)
            yield return whole with { Family = SystemBuilder.Build(whole.Family.Parts, whole.Family.Joints) };
        for (int i = 0; i < whole.Findings.Length; i++)
        {
            if (whole.Findings[i].Size is not null)
                yield return whole with { Findings = whole.Findings.SetItem(i, whole.Findings[i] with { Size = null }) };
        }
    }

    private static IEnumerable<TestCase> SimplerStandard(TestCase whole)
    {
        ShopStandard standard = whole.Standard;
        foreach (ImmutableArray<Rule> kept in Without(standard.Rules))
            yield return whole with { Standard = With(standard, kept, standard.Times, standard.CleanFindings) };
        foreach (ImmutableArray<(string, TaskMinutes)> kept in Without(standard.Times))
            yield return whole with { Standard = With(standard, standard.Rules, kept, standard.CleanFindings) };
        if (standard.CleanFindings is not null)
            yield return whole with { Standard = With(standard, standard.Rules, standard.Times, null) };
    }

    private static IEnumerable<TestCase> FewerJoints(TestCase whole) =>
        Without(whole.Family.Joints).Select(kept => WithJoints(whole, kept));

    private static IEnumerable<TestCase> PlainerJoints(TestCase whole)
    {
        ImmutableArray<Joint> joints = whole.Family.Joints;
        for (int i = 0; i < joints.Length; i++)
        {
            foreach (Joint plainer in Plainer(joints[i]))
                yield return WithJoints(whole, joints.SetItem(i, plainer));
        }
    }

    private static IEnumerable<Joint> Plainer(Joint joint)
    {
        if (joint.OnlyIfFailed is not null)
            yield return joint with { OnlyIfFailed = null };
        if (joint.When != EngineStates.All)
            yield return joint with { When = EngineStates.All };
        if (joint.Passage is not null)
            yield return joint with { Passage = null };
        if (joint is { IsLink: true, OnlyIfFailed: null, When: EngineStates.All, Passage: null })
            yield return joint with { IsLink = false };
        if (joint.Circuit != Notation.CaseReader.DefaultCircuit)
            yield return joint with { Circuit = Notation.CaseReader.DefaultCircuit };
    }

    private static IEnumerable<TestCase> PlainerParts(TestCase whole)
    {
        ImmutableArray<Part> parts = whole.Family.Parts;
        for (int i = 0; i < parts.Length; i++)
        {
            foreach (Part plainer in Plainer(parts[i]))
                yield return WithParts(whole, parts.SetItem(i, plainer));
        }
    }

    private static IEnumerable<Part> Plainer(Part part)
    {
        var plain = new Part(part.Id, ShopFloor.Part, part.Place);
        if (Notation.CaseWriter.PartText(part) == Notation.CaseWriter.PartText(plain))
            yield break;
        yield return plain;
        if (part.Access.Length > 0)
            yield return part with { Access = [] };
        foreach (ImmutableArray<Hold> kept in Without(part.Holds))
            yield return part with { Holds = kept };
        foreach (ImmutableArray<Shed> kept in Without(part.Sheds))
            yield return part with { Sheds = kept };
        foreach (ImmutableArray<string> kept in Without(part.Seals))
            yield return part with { Seals = kept };
        if (part.Holds.Length == 0 && (part.RatingIsSaid || part.HasBypass))
            yield return part with { RatingIsSaid = false, HasAbsoluteRating = false, HasBypass = false };
        if (part.HasBypass)
            yield return part with { HasBypass = false };
        if (part.Passage is not null)
            yield return part with { Passage = null };
        if (part.Clearance is not null)
            yield return part with { Clearance = null };
        if (part.ClearedBy != ClearedBy.OneLook)
            yield return part with { ClearedBy = ClearedBy.OneLook };
        if (part.Inspect is not null)
            yield return part with { Inspect = null };
        if (part.SendOut is not null)
            yield return part with { SendOut = null };
        if (part.RepeatOf is not null)
            yield return part with { RepeatOf = null, RepeatIndex = 0 };
        if (part.Minutes != TaskMinutes.None)
            yield return part with { Minutes = TaskMinutes.None };
        if (part.IsRemovable != part.Kind.IsRemovable)
            yield return part with { IsRemovable = part.Kind.IsRemovable };
        if (part.Kind == ShopFloor.Filter)
            yield return part with { Kind = ShopFloor.Part };
    }

    // Without each half, each quarter, … each single one.
    private static IEnumerable<ImmutableArray<T>> Without<T>(ImmutableArray<T> items)
    {
        for (int size = Math.Max(1, (items.Length + 1) / 2); items.Length > 0; size = (size + 1) / 2)
        {
            for (int start = 0; start < items.Length; start += size)
                yield return items.RemoveRange(start, Math.Min(size, items.Length - start));
            if (size == 1)
                yield break;
        }
    }

    private static TestCase WithJoints(TestCase whole, IEnumerable<Joint> joints) =>
        whole with { Family = SystemBuilder.Build(whole.Family.Parts, joints, whole.Family.States) };

    // A part that is gone is gone from everywhere that names it.
    private static TestCase WithParts(TestCase whole, ImmutableArray<Part> parts)
    {
        HashSet<PartId> kept = [.. parts.Select(part => part.Id)];
        return whole with
        {
            Family = SystemBuilder.Build(
                parts.Select(part => part with { Access = [.. part.Access.Where(kept.Contains)] }),
                SystemBuilder.JointsAmong(whole.Family.Joints, parts),
                whole.Family.States),
            Failed = [.. whole.Failed.Where(kept.Contains)],
            Own = [.. whole.Own.Where(own => kept.Contains(own.Part))],
            Findings = [.. whole.Findings.Where(finding => kept.Contains(finding.Part))],
            Standard = With(
                whole.Standard,
                [.. whole.Standard.Rules.Where(rule => rule.For.Part is not { } part || kept.Contains(new PartId(part)))],
                whole.Standard.Times,
                whole.Standard.CleanFindings),
        };
    }

    private static ShopStandard With(
        ShopStandard standard, ImmutableArray<Rule> rules, ImmutableArray<(string Kind, TaskMinutes Minutes)> times, CleanFindings? cleanFindings) => new()
        {
            Id = standard.Id,
            Sha256 = standard.Sha256,
            Kinds = standard.Kinds,
            Debris = standard.Debris,
            Rules = rules,
            Times = times,
            CleanFindings = cleanFindings,
        };
}
