using System.Collections.Immutable;
using Contam.Families;
using Contam.Graphs;
using Contam.Spread;

namespace Contam.Reviews;

/// <summary>What would be missed if a joint had been forgotten.</summary>
/// <param name="Joint">The joint.</param>
/// <param name="Plans">In how many failures (a part that sheds × a debris that it sheds) anything would differ.</param>
/// <param name="Missed">Parts that would not be reached any more, summed over all failures.</param>
/// <param name="Lowered">Parts that would still be reached, but no more at full size, summed over all failures.</param>
public sealed record JointWeight(Joint Joint, int Plans, long Missed, long Lowered);

/// <summary>
/// How much hangs on each joint.
/// <para>
/// Definition: for a failure (one part <c>f</c>, one debris <c>d</c>) and a joint <c>j</c>, a part is <em>missed</em> when the spread reaches it with <c>j</c>
/// and not without; it is <em>lowered</em> when it is exposed with <c>j</c>, and reached without <c>j</c> but not exposed. Both are summed over every part that
/// sheds and every debris that it sheds, each failing alone.
/// </para>
/// <para>
/// Method: leaving out each joint in turn would search once for each joint and failure. A joint is put into the graph as a vertex of its own instead; a
/// part is missed without it exactly where that vertex dominates the part (every way from <c>f</c> passes it), so one tree of dominators answers for all
/// joints. It is made twice: over all open joints, for what is reached, and over those joints and parts that let the full size on, for what is exposed.
/// Literature: Lengauer and Tarjan, ACM TOPLAS 1, 1979; bridges of flow graphs by dominators: Italiano, Laura and Santaroni, Theoretical Computer Science 447, 2012.
/// </para>
/// <para>Cost: near linear in parts and joints for every failure, within <see cref="MostWork"/>.</para>
/// </summary>
public static class JointWeights
{
    /// <summary>The most steps: failures × (parts + joints).</summary>
    public const long MostWork = 100_000_000;

    /// <summary>The weight of every joint of the family, in its order; <c>null</c> where that is more work than <see cref="MostWork"/>.</summary>
    public static ImmutableArray<JointWeight>? Of(Family family)
    {
        ArgumentNullException.ThrowIfNull(family);
        (int Part, Shed Shed)[] failures = [.. family.Parts.SelectMany((part, index) => part.Sheds.Select(shed => (index, shed)))];
        if (failures.Length * (long)(family.Parts.Length + family.Joints.Length) > MostWork)
            return null;
        int joints = family.Joints.Length;
        var (plans, missed, lowered) = (new int[joints], new long[joints], new long[joints]);
        foreach ((int part, Shed shed) in failures)
        {
            Failure failure = new(family, part, shed);
            (long[] lost, long[] exposedOfLost, long[] exposedLost) = failure.Counts();
            for (int joint = 0; joint < joints; joint++)
            {
                long lower = exposedLost[joint] - exposedOfLost[joint];
                if (lost[joint] + lower == 0)
                    continue;
                plans[joint]++;
                missed[joint] += lost[joint];
                lowered[joint] += lower;
            }
        }

        return [.. family.Joints.Select((joint, index) => new JointWeight(joint, plans[index], missed[index], lowered[index]))];
    }

    /// <summary>One part that has failed and sheds one debris.</summary>
    private sealed class Failure
    {
        private readonly Family family;
        private readonly int source;
        private readonly Debris debris;
        private readonly double size;
        private readonly bool[] isOpen;

        public Failure(Family family, int source, Shed shed)
        {
            this.family = family;
            this.source = source;
            debris = shed.Debris;
            size = debris.HasSize ? shed.UpTo.Micrometres : double.PositiveInfinity;
            ImmutableHashSet<PartId> failed = [family.Parts[source].Id];
            isOpen = [.. family.Joints.Select(joint => SpreadGraph.IsOpen(family, joint, failed))];
        }

        /// <summary>For each joint: parts lost without it; those of them that were exposed; parts whose exposure is lost without it.</summary>
        public (long[] Lost, long[] ExposedOfLost, long[] ExposedLost) Counts()
        {
            int[] reach = Tree(_ => true, _ => true);
            int[] full = Tree(
                part => part == source || SpreadGraph.LetsOn(family.Parts[part], debris).Micrometres >= size,
                joint => SpreadGraph.LetsOn(family.Joints[joint], debris).Micrometres >= size);
            bool IsExposed(int part) => part == source || full[part] >= 0;
            return (
                Below(reach, part => part == source || reach[part] >= 0),
                Below(reach, IsExposed),
                Below(full, IsExposed));
        }

        /// <summary>The immediate dominators from the source: parts first, then joints.</summary>
        private int[] Tree(Func<int, bool> partLetsOn, Func<int, bool> jointLetsOn)
        {
            int parts = family.Parts.Length;
            var from = new List<int>();
            var to = new List<int>();
            for (int joint = 0; joint < isOpen.Length; joint++)
            {
                if (!isOpen[joint] || !jointLetsOn(joint) || !partLetsOn(family.JointFrom[joint]))
                    continue;
                from.Add(family.JointFrom[joint]);
                to.Add(parts + joint);
                from.Add(parts + joint);
                to.Add(family.JointTo[joint]);
            }

            return Dominators.Immediate(PackedGraph.Of(parts + isOpen.Length, from.ToArray(), to.ToArray()), [source]);
        }

        /// <summary>For each joint, how many parts that count it dominates. Counts are handed up from the leaves of the tree.</summary>
        private long[] Below(int[] dominator, Func<int, bool> counts)
        {
            int parts = family.Parts.Length;
            var below = new long[dominator.Length];
            var due = new int[dominator.Length];
            foreach (int above in dominator)
            {
                if (above >= 0)
                    due[above]++;
            }

            var leaves = new Stack<int>();
            for (int vertex = 0; vertex < dominator.Length; vertex++)
            {
                below[vertex] = vertex < parts && counts(vertex) ? 1 : 0;
                if (due[vertex] == 0)
                    leaves.Push(vertex);
            }

            while (leaves.TryPop(out int vertex))
            {
                int above = dominator[vertex];
                if (above < 0)
                    continue;
                below[above] += below[vertex];
                if (--due[above] == 0)
                    leaves.Push(above);
            }

            return below[parts..];
        }
    }
}
