using System.Collections.Immutable;
using Contam.Graphs;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>
/// Loops whose parts are all treated where they stand, at least one of them flushed or cleaned: each is flushed as one step.
/// A loop of parts that are only looked at or tested is no such loop.
/// </summary>
internal sealed class InPlaceLoops
{
    private readonly int[] component;
    private readonly int[] loopOf;

    private InPlaceLoops(int[] component, int[] loopOf, ImmutableArray<ImmutableArray<int>> loops)
    {
        this.component = component;
        this.loopOf = loopOf;
        Loops = loops;
    }

    /// <summary>The places in the family of each loop's parts, rising.</summary>
    public ImmutableArray<ImmutableArray<int>> Loops { get; }

    /// <summary>The number of the loop that the part at this place is flushed with, or -1.</summary>
    public int Of(int part) => loopOf[part];

    /// <summary>Whether the fluid can go round through both, over parts that all stay where they are; so neither is upstream of the other.</summary>
    public bool GoesRoundThrough(int part, int other) => component[part] == component[other];

    /// <summary>The loops of what stays on the engine, and of what stays on one carrier that is off.</summary>
    /// <param name="items">What is worked on.</param>
    /// <param name="openJoints">The open joints.</param>
    /// <param name="benchOf">Where each part is while the work goes on.</param>
    public static InPlaceLoops Find(WorkItem?[] items, IReadOnlyList<(int From, int To)> openJoints, int[] benchOf)
    {
        bool IsInPlace(int part) => items[part] is { ComesOff: false, ComesInside: false };
        IEnumerable<(int From, int To)> inPlace = openJoints.Where(joint => IsInPlace(joint.From) && IsInPlace(joint.To) && benchOf[joint.From] == benchOf[joint.To]);
        int[] component = StronglyConnectedComponents.Of(items.Length, inPlace).Component;
        var loopOf = new int[items.Length];
        Array.Fill(loopOf, -1);
        var loops = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        foreach (IGrouping<int, int> members in Enumerable.Range(0, items.Length).Where(IsInPlace).GroupBy(part => component[part]))
        {
            ImmutableArray<int> loop = [.. members];
            if (loop.Length < 2 || !loop.Any(part => items[part]!.IsCleaned))
                continue;
            foreach (int part in loop)
                loopOf[part] = loops.Count;
            loops.Add(loop);
        }

        return new InPlaceLoops(component, loopOf, loops.ToImmutable());
    }

    /// <summary>The same work with a flush added for every part of a loop.</summary>
    public WorkItem?[] WithFlush(WorkItem?[] items)
    {
        WorkItem?[] result = [.. items];
        foreach (ImmutableArray<int> loop in Loops)
        {
            // One fluid goes through all of it, so all of it is flushed when any of it is cleaned.
            LookCondition when = loop.Where(part => items[part]!.IsCleaned).Select(part => items[part]!.Cleaned).Aggregate((any, one) => any.Or(one));
            foreach (int part in loop)
            {
                WorkItem item = items[part]!;
                result[part] = item with
                {
                    Treatments = RuleBook.Join(item.Treatments.Append(TreatmentKind.Flush)),
                    When = item.When.IsDefaultOrEmpty ? item.When : item.When.SetItem((int)TreatmentKind.Flush, when),
                };
            }
        }

        return result;
    }
}
