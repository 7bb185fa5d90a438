using System.Collections.Immutable;
using Contam.Families;
using Contam.Graphs;

namespace Contam.Spread;

/// <summary>
/// Parts that the debris does not reach, but would if some other part had failed too and so opened its joints.
/// <para>
/// For every part that opens closed joints: what opening these alone adds. What only several of them together would add is reported with the part
/// whose joint is met first on a path through fewest such parts, and the others beside it; so no part that any closed joint could lead to is missing.
/// </para>
/// </summary>
internal static class ConditionalParts
{
    public static ImmutableArray<ConditionalReach> Of(SpreadQuestion question, SpreadGraph graph, SpreadWorld world)
    {
        Family family = question.Family;
        var failed = question.Failed.ToHashSet();
        bool IsClosedByCondition(Joint joint) =>
            joint.OnlyIfFailed is { } condition && !failed.Contains(condition) && (joint.When & family.States) != EngineStates.None;

        Joint[] closed = [.. family.Joints.Where(IsClosedByCondition)];
        if (closed.Length == 0)
            return [];

        var result = ImmutableArray.CreateBuilder<ConditionalReach>();
        var isAccounted = new bool[family.Parts.Length];
        foreach (IGrouping<PartId, Joint> opened in closed.GroupBy(joint => joint.OnlyIfFailed!.Value).OrderBy(group => family.IndexOf(group.Key)))
        {
            List<int> added = AddedBy([.. opened], family, graph, world);
            if (added.Count == 0)
                continue;
            foreach (int vertex in added)
                isAccounted[vertex] = true;
            result.Add(new ConditionalReach(opened.Key, [], [.. added.Select(vertex => family.Parts[vertex].Id)]));
        }

        AddThoseThatNeedSeveral(question, graph, world, IsClosedByCondition, isAccounted, result);
        return result.ToImmutable();
    }

    /// <summary>Parts reached, beyond those listed, when these joints are open besides; in the order of the family.</summary>
    private static List<int> AddedBy(Joint[] opened, Family family, SpreadGraph graph, SpreadWorld world)
    {
        var added = new SortedSet<int>();
        var queue = new Queue<int>();
        bool hasGrown = true;
        while (hasGrown)
        {
            hasGrown = false;
            foreach (Joint joint in opened)
            {
                int from = family.JointFrom[joint.Id];
                if (world.Reaches(from) || added.Contains(from))
                    hasGrown |= Enter(family.JointTo[joint.Id]);
            }

            while (queue.TryDequeue(out int vertex))
            {
                for (int place = graph.Open.First[vertex]; place < graph.Open.First[vertex + 1]; place++)
                    hasGrown |= Enter(graph.Open.Target[place]);
            }
        }

        return [.. added];

        bool Enter(int vertex)
        {
            if (world.Reaches(vertex) || !added.Add(vertex))
                return false;
            queue.Enqueue(vertex);
            return true;
        }
    }

    private static void AddThoseThatNeedSeveral(
        SpreadQuestion question,
        SpreadGraph graph,
        SpreadWorld world,
        Func<Joint, bool> isClosedByCondition,
        bool[] isAccounted,
        ImmutableArray<ConditionalReach>.Builder result)
    {
        Family family = question.Family;
        var failed = question.Failed.ToHashSet();
        PackedGraph all = SpreadGraph.Pack(family, joint => SpreadGraph.IsOpen(family, joint, failed) || isClosedByCondition(joint));
        var needs = new ImmutableArray<PartId>?[family.Parts.Length];
        var queue = new LinkedList<int>();
        foreach (int source in graph.Sources)
        {
            needs[source] = [];
            queue.AddLast(source);
        }

        // A joint that needs nothing new goes to the front of the queue, one that needs a further failure to the back: fewest failures first.
        while (queue.First is { } node)
        {
            queue.RemoveFirst();
            ImmutableArray<PartId> needed = needs[node.Value]!.Value;
            for (int place = all.First[node.Value]; place < all.First[node.Value + 1]; place++)
            {
                Joint joint = family.Joints[all.Joint[place]];
                bool needsNew = isClosedByCondition(joint) && !needed.Contains(joint.OnlyIfFailed!.Value);
                ImmutableArray<PartId> then = needsNew ? needed.Add(joint.OnlyIfFailed!.Value) : needed;
                int next = all.Target[place];
                if (needs[next] is { } known && known.Length <= then.Length)
                    continue;
                needs[next] = then;
                if (needsNew)
                    queue.AddLast(next);
                else
                    queue.AddFirst(next);
            }
        }

        var rest = Enumerable.Range(0, family.Parts.Length)
            .Where(vertex => needs[vertex] is not null && !world.Reaches(vertex) && !isAccounted[vertex])
            .GroupBy(vertex => string.Join(' ', needs[vertex]!.Value.Select(id => id.Value)), StringComparer.Ordinal);
        foreach (IGrouping<string, int> group in rest)
        {
            ImmutableArray<PartId> needed = needs[group.First()]!.Value;
            result.Add(new ConditionalReach(needed[0], needed[1..], [.. group.Select(vertex => family.Parts[vertex].Id)]));
        }
    }
}
