using System.Collections.Immutable;

namespace Contam.Families.Reading;

/// <summary>The circuits and joints of a family before its parts are at hand; it holds on to nothing of the files.</summary>
/// <param name="circuits">The circuits.</param>
/// <param name="joints">Those of the runs, circuit by circuit, then those of the links.</param>
internal sealed class JointDrafts(List<CircuitDraft> circuits, List<(JointDraft Joint, SourceSpan Place, bool IsLink)> joints)
{
    /// <summary>The circuits.</summary>
    /// <param name="all">The parts of the family.</param>
    public ImmutableArray<Circuit> Circuits(ImmutableArray<Part> all)
    {
        var isIn = new bool[all.Length];
        return [.. circuits.Select(circuit => circuit.Build(all, isIn))];
    }

    /// <summary>The joints, in their order.</summary>
    /// <param name="all">The parts of the family.</param>
    public ImmutableArray<Joint> Joints(ImmutableArray<Part> all)
    {
        var built = ImmutableArray.CreateBuilder<Joint>(joints.Count);
        foreach ((JointDraft joint, SourceSpan place, bool isLink) in joints)
        {
            built.Add(new Joint(built.Count, all[joint.From].Id, all[joint.To].Id, joint.Terms.Circuit, place)
            {
                When = joint.Terms.When,
                OnlyIfFailed = joint.Terms.OnlyIfFailed < 0 ? null : all[joint.Terms.OnlyIfFailed].Id,
                Passage = joint.Terms.Passage.IsUnlimited ? null : joint.Terms.Passage,
                IsLink = isLink,
            });
        }

        return built.MoveToImmutable();
    }
}
