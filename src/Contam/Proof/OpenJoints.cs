using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Proof;

/// <summary>
/// The joints of a family over which something can pass, given which parts have failed, by the part that they leave and enter.
/// Parts are meant by their place in the family.
/// </summary>
internal sealed class OpenJoints
{
    private readonly int[] from;
    private readonly int[] to;
    private readonly int[] leavingStart;
    private readonly int[] leaving;
    private readonly int[] enteringStart;
    private readonly int[] entering;

    /// <summary>Linear in parts and joints.</summary>
    internal OpenJoints(Family family, IReadOnlySet<PartId> failed)
    {
        var open = new List<Joint>();
        var waiting = ImmutableArray.CreateBuilder<Joint>();
        foreach (Joint joint in family.Joints)
        {
            if ((joint.When & family.States) == EngineStates.None)
                continue;
            if (joint.OnlyIfFailed is { } condition && !failed.Contains(condition))
                waiting.Add(joint);
            else
                open.Add(joint);
        }

        Waiting = waiting.ToImmutable();
        Joints = [.. open];
        from = [.. open.Select(joint => family.IndexOf(joint.From))];
        to = [.. open.Select(joint => family.IndexOf(joint.To))];
        (leavingStart, leaving) = Grouped(from, family.Parts.Length);
        (enteringStart, entering) = Grouped(to, family.Parts.Length);
    }

    /// <summary>The open joints, in the order of the family. Numbers of joints here are places in this list.</summary>
    internal ImmutableArray<Joint> Joints { get; }

    /// <summary>The joints that only wait for a part to have failed, in the order of the family.</summary>
    internal ImmutableArray<Joint> Waiting { get; }

    /// <summary>The open joints that leave a part.</summary>
    internal ReadOnlySpan<int> Leaving(int part) => leaving.AsSpan(leavingStart[part]..leavingStart[part + 1]);

    /// <summary>The open joints that enter a part.</summary>
    internal ReadOnlySpan<int> Entering(int part) => entering.AsSpan(enteringStart[part]..enteringStart[part + 1]);

    /// <summary>The part that a joint leaves.</summary>
    internal int From(int joint) => from[joint];

    /// <summary>The part that a joint enters.</summary>
    internal int To(int joint) => to[joint];

    // The joints of part p are those from start[p] up to start[p + 1].
    private static (int[] Start, int[] Joints) Grouped(int[] partOf, int parts)
    {
        int[] start = new int[parts + 1];
        foreach (int part in partOf)
            start[part + 1]++;
        for (int part = 0; part < parts; part++)
            start[part + 1] += start[part];
        int[] next = start[..^1];
        int[] joints = new int[partOf.Length];
        for (int joint = 0; joint < partOf.Length; joint++)
            joints[next[partOf[joint]]++] = joint;
        return (start, joints);
    }
}
