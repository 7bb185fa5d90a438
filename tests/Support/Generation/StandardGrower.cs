using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Support.Generation;

/// <summary>Makes a random shop standard in which no two rules contradict: for each thing a rule can be for, there is at most one.</summary>
internal sealed class StandardGrower(Random random)
{
    internal ShopStandard Grow(Family family, IReadOnlyList<Debris> debris, ImmutableArray<Debris> own)
    {
        double rate = random.Of([0, 0.2, 0.6]);
        string[] kinds = [.. ShopFloor.Kinds.Select(kind => kind.Name)];
        IEnumerable<RuleFor> possible =
        [
            .. family.Parts.Select(part => new RuleFor(part.Id.Value, null, null)).Where(_ => random.Happens(rate / 4)),
            .. kinds.SelectMany(kind => debris.Select(sort => new RuleFor(null, kind, sort.Name))).Where(_ => random.Happens(rate)),
            .. kinds.Select(kind => new RuleFor(null, kind, null)).Where(_ => random.Happens(rate)),
            .. debris.Select(sort => new RuleFor(null, null, sort.Name)).Where(_ => random.Happens(rate)),
        ];
        return new ShopStandard
        {
            Id = "plain",
            Sha256 = "plain",
            Kinds = [.. ShopFloor.Kinds],
            Debris = own,
            CleanFindings = random.Of<CleanFindings?>([null, CleanFindings.Accept, CleanFindings.Accept, CleanFindings.Never]),
            Rules = [.. random.Shuffled(possible).Select((what, index) => MakeRule(what, index + 1))],
            Times = [.. kinds.Where(_ => random.Happens(rate / 2)).Select(kind => (kind, SomeMinutes()))],
        };
    }

    private Rule MakeRule(RuleFor what, int line)
    {
        ImmutableArray<TreatmentKind>? exposed = SomeTreatments(0.7);
        ImmutableArray<TreatmentKind>? guarded = SomeTreatments(0.7);
        ImmutableArray<TreatmentKind>? failed = SomeTreatments(exposed is null && guarded is null ? 1 : 0.3);
        return new Rule(what, exposed, guarded, failed, "", new SourceSpan("standard", line, 1));
    }

    // Any set of treatments but the empty one.
    private ImmutableArray<TreatmentKind>? SomeTreatments(double rate)
    {
        if (!random.Happens(rate))
            return null;
        int set = random.Next(1, 32);
        return [.. Enum.GetValues<TreatmentKind>().Where(treatment => (set & (1 << (int)treatment)) != 0)];
    }

    private TaskMinutes SomeMinutes() => random.TaskMinutes() with { Remove = random.Next(0, 60) };
}
