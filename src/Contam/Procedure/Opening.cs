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
        var opened = new Dictionary<string, LookCondition>(StringComparer.Ordinal);
        foreach ((string circuit, LookCondition when) in items.OfType<WorkItem>().SelectMany(OpenedBy))
            opened[circuit] = opened.TryGetValue(circuit, out LookCondition? known) ? known.Or(when) : when;
        Circuits = [.. family.Circuits.Where(circuit => opened.ContainsKey(circuit.Name))];
        When = [.. Circuits.Select(circuit => opened[circuit.Name])];
        Drained = [.. Circuits.Select(circuit => ReservoirsOf(circuit).ToImmutableArray())];
    }

    /// <summary>The circuits that are opened, in the order of the family.</summary>
    public ImmutableArray<Circuit> Circuits { get; }

    /// <summary>For each of <see cref="Circuits"/> when it is opened.</summary>
    public ImmutableArray<LookCondition> When { get; }

    /// <summary>The circuits that are opened whatever the looks show.</summary>
    public IEnumerable<Circuit> Always => Circuits.Where((_, place) => When[place].IsAlways);

    /// <summary>For each of <see cref="Circuits"/> the reservoirs that are drained, in flow order, and when.</summary>
    public ImmutableArray<ImmutableArray<(Part Part, LookCondition When)>> Drained { get; }

    /// <summary>When a circuit is opened by the work at one part; <c>null</c> where it is not.</summary>
    public LookCondition? OpenedBy(WorkItem item, Circuit circuit) =>
        OpenedBy(item).Where(one => one.Circuit == circuit.Name).Select(one => one.When).Aggregate((LookCondition?)null, (any, one) => any?.Or(one) ?? one);

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

    private IEnumerable<(string Circuit, LookCondition When)> OpenedBy(WorkItem item)
    {
        if (item.ComesInside)
            yield break;
        string[] all = [.. CircuitsOf(item.Part).Select(circuit => circuit.Name)];
        if (item.ComesOff)
        {
            foreach (string circuit in all)
                yield return (circuit, item.Off);
            if (!item.IsLookedAtInPlace)
                yield break;
        }

        bool looksInto = item.Has(TreatmentKind.Inspect) && (item.Part.LookOpens || item.Part.Kind.IsReservoir);
        if (item.Any(one => one == TreatmentKind.Inspect ? looksInto : !item.ComesOff) is not { } when)
            yield break;
        string[] reached = [.. all.Where(name => reachedIn.TryGetValue(item.Part.Id, out HashSet<string>? circuits) && circuits.Contains(name))];
        foreach (string circuit in reached.Length > 0 ? reached : all)
            yield return (circuit, when);
    }

    private IEnumerable<(Part Part, LookCondition When)> ReservoirsOf(Circuit circuit)
    {
        ILookup<int, int> into = jointsOf.GetValueOrDefault(circuit.Name, []).ToLookup(joint => joint.To, joint => joint.From);
        var drained = new Dictionary<int, LookCondition>();
        foreach (IGrouping<LookCondition, int> off in circuit.Parts.Select(family.IndexOf).Where(index => items[index] is { ComesOff: true }).GroupBy(index => items[index]!.Off))
        {
            var above = new HashSet<int>();
            var queue = new Queue<int>(off.Where(above.Add));
            while (queue.TryDequeue(out int index))
            {
                foreach (int from in into[index])
                {
                    if (above.Add(from))
                        queue.Enqueue(from);
                }
            }

            foreach (int index in above)
                Drain(index, off.Key);
        }

        foreach (int index in circuit.Parts.Select(family.IndexOf))
        {
            if (items[index] is { } item && OpenedBy(item, circuit) is { } when)
                Drain(index, when);
        }

        // What only a link joins to the circuit stands on none of its runs.
        return circuit.Parts.Select(family.IndexOf).Union(drained.Keys.Order()).Where(drained.ContainsKey).Select(index => (family.Parts[index], drained[index]));

        void Drain(int index, LookCondition when)
        {
            if (family.Parts[index].Kind.IsReservoir)
                drained[index] = drained.TryGetValue(index, out LookCondition? known) ? known.Or(when) : when;
        }
    }

    private Circuit[] CircuitsOf(Part part) => circuitsOf.TryGetValue(part.Id, out Circuit[]? circuits) ? circuits : [];
}
