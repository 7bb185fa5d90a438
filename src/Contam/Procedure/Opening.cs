using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;

namespace Contam.Procedure;

/// <summary>
/// Which circuits a piece of work opens, and which reservoirs are drained for it.
/// <para>
/// A part that comes off opens every circuit that it stands in. One that is worked on or looked at where it stands opens those in which the debris of this
/// plan comes to it or leaves it; all of its circuits where that is none. A look that needs nothing off opens nothing, unless fluid is drawn from a reservoir for it.
/// A reservoir is drained where it is itself worked on, and where the flow of an opened circuit leads from it to something that comes off.
/// </para>
/// </summary>
internal sealed class Opening
{
    private readonly ProcedureRequest request;
    private readonly Family family;
    private readonly WorkItem?[] items;
    private readonly Dictionary<PartId, Circuit[]> circuitsOf;
    private readonly Dictionary<string, List<(int From, int To)>> jointsOf = new(StringComparer.Ordinal);
    private readonly Dictionary<PartId, HashSet<string>> reachedIn = [];

    /// <summary>Linear in parts, joints and debris.</summary>
    public Opening(ProcedureRequest request, WorkItem?[] items)
    {
        this.request = request;
        this.items = items;
        family = request.Family;
        circuitsOf = family.Circuits
            .SelectMany(circuit => circuit.Parts.Select(part => (Part: part, Circuit: circuit)))
            .GroupBy(pair => pair.Part)
            .ToDictionary(group => group.Key, group => group.Select(pair => pair.Circuit).ToArray());
        ReadJoints();
        var opened = items.OfType<WorkItem>().SelectMany(OpenedBy).ToHashSet(StringComparer.Ordinal);
        Circuits = [.. family.Circuits.Where(circuit => opened.Contains(circuit.Name))];
        Drained = [.. Circuits.Select(circuit => ReservoirsOf(circuit).ToImmutableArray())];
    }

    /// <summary>The circuits that are opened, in the order of the family.</summary>
    public ImmutableArray<Circuit> Circuits { get; }

    /// <summary>For each of <see cref="Circuits"/> the reservoirs that are drained, in flow order.</summary>
    public ImmutableArray<ImmutableArray<Part>> Drained { get; }

    /// <summary>Whether something at a part is opened by what is done with it: it comes off, or is more than looked at.</summary>
    public static bool IsOpened(WorkItem item) => item.ComesOff || item.Treatments.Any(one => one != TreatmentKind.Inspect);

    private void ReadJoints()
    {
        var failed = request.Failed.ToHashSet();
        HashSet<PartId>[] reached = [.. request.Spreads.Select(spread => spread.Parts.Where(part => part.Grade != Grade.Cleared).Select(part => part.Part).ToHashSet())];
        foreach (Joint joint in family.Joints)
        {
            if ((joint.When & family.States) == EngineStates.None)
                continue;
            if (joint.OnlyIfFailed is null)
            {
                if (!jointsOf.TryGetValue(joint.Circuit, out List<(int From, int To)>? joints))
                    jointsOf[joint.Circuit] = joints = [];
                joints.Add((family.IndexOf(joint.From), family.IndexOf(joint.To)));
            }

            if (!SpreadGraph.IsOpen(family, joint, failed) || !Array.Exists(reached, parts => parts.Contains(joint.From) && parts.Contains(joint.To)))
                continue;
            foreach (PartId end in new[] { joint.From, joint.To })
            {
                if (!reachedIn.TryGetValue(end, out HashSet<string>? circuits))
                    reachedIn[end] = circuits = new HashSet<string>(StringComparer.Ordinal);
                circuits.Add(joint.Circuit);
            }
        }
    }

    private IEnumerable<string> OpenedBy(WorkItem item)
    {
        if (item.ComesInside)
            return [];
        IEnumerable<string> all = CircuitsOf(item.Part).Select(circuit => circuit.Name);
        if (item.ComesOff)
            return all;
        if (item.Treatments is [TreatmentKind.Inspect] && !item.Part.LookOpens && !item.Part.Kind.IsReservoir)
            return [];
        string[] reached = [.. all.Where(name => reachedIn.TryGetValue(item.Part.Id, out HashSet<string>? circuits) && circuits.Contains(name))];
        return reached.Length > 0 ? reached : all;
    }

    private IEnumerable<Part> ReservoirsOf(Circuit circuit)
    {
        var above = new HashSet<int>();
        var queue = new Queue<int>(circuit.Parts.Select(family.IndexOf).Where(index => items[index] is { ComesOff: true } && above.Add(index)));
        ILookup<int, int> into = jointsOf.GetValueOrDefault(circuit.Name, []).ToLookup(joint => joint.To, joint => joint.From);
        while (queue.TryDequeue(out int index))
        {
            foreach (int from in into[index])
            {
                if (above.Add(from))
                    queue.Enqueue(from);
            }
        }

        // What only a link joins to the circuit stands on none of its runs.
        return circuit.Parts
            .Select(family.IndexOf)
            .Union(above.Order())
            .Where(index => family.Parts[index].Kind.IsReservoir && (above.Contains(index) || (items[index] is { } item && OpenedBy(item).Contains(circuit.Name))))
            .Select(index => family.Parts[index]);
    }

    private Circuit[] CircuitsOf(Part part) => circuitsOf.TryGetValue(part.Id, out Circuit[]? circuits) ? circuits : [];
}
