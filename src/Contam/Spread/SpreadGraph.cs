using Contam.Families;
using Contam.Graphs;

namespace Contam.Spread;

/// <summary>
/// A family as a flow graph for one question: which joints are open, what everything lets on, and where the sources are.
/// One vertex a part, by its place in the family; one joint a joint, by its number.
/// </summary>
internal sealed class SpreadGraph
{
    private readonly SpreadQuestion question;
    private readonly HashSet<PartId> failed;
    private readonly Capacities untouched;
    private Capacities? ofFailures;

    private SpreadGraph(SpreadQuestion question, HashSet<PartId> failed, PackedGraph open)
    {
        this.question = question;
        this.failed = failed;
        Open = open;
        untouched = CapacitiesOn(open, SourcesOf(question));
    }

    public Family Family => question.Family;

    /// <summary>The open joints.</summary>
    public PackedGraph Open { get; }

    /// <summary>The sources, in the order of the family.</summary>
    public IEnumerable<int> Sources => untouched.Sources.Select(source => source.Vertex).Distinct();

    /// <summary>The graph of a question.</summary>
    /// <exception cref="KeyNotFoundException">A failed part is not of the family.</exception>
    public static SpreadGraph Of(SpreadQuestion question)
    {
        Family family = question.Family;
        foreach (PartId part in question.Failed)
            _ = family[part];
        var failed = question.Failed.ToHashSet();
        return new SpreadGraph(question, failed, Pack(family, joint => IsOpen(family, joint, failed)));
    }

    /// <summary>A joint is open when the engine has a state in which it is, and the part whose failure opens it has failed.</summary>
    public static bool IsOpen(Family family, Joint joint, IReadOnlySet<PartId> failed) =>
        (joint.When & family.States) != EngineStates.None && (joint.OnlyIfFailed is not { } condition || failed.Contains(condition));

    /// <summary>Packs those joints of the family for which <paramref name="isIn"/> holds.</summary>
    public static PackedGraph Pack(Family family, Func<Joint, bool> isIn)
    {
        int[] from = family.JointFrom.ToArray();
        foreach (Joint joint in family.Joints)
        {
            if (!isIn(joint))
                from[joint.Id] = -1;
        }

        return PackedGraph.Of(family.Parts.Length, from, family.JointTo);
    }

    /// <summary>The largest particle of this debris that a part lets on, were it no source and nothing found there.</summary>
    public static ParticleSize LetsOn(Part part, Debris debris)
    {
        ParticleSize size = ParticleSize.Unlimited;
        if (part.HasAbsoluteRating && !part.HasBypass && part.HoldOf(debris) is { } hold)
            size = hold.Above;
        if (debris is { HasSize: true, IsHard: true } && part.Passage is { } passage)
            size = ParticleSize.Min(size, passage);
        return size;
    }

    /// <summary>The largest particle of this debris that a joint lets on.</summary>
    public static ParticleSize LetsOn(Joint joint, Debris debris) =>
        debris is { HasSize: true, IsHard: true } && joint.Passage is { } passage ? passage : ParticleSize.Unlimited;

    /// <summary>The capacities, with nothing let on by the parts of <paramref name="acceptedClean"/>, none of which is a source.</summary>
    public Capacities CapacitiesWith(IReadOnlySet<int> acceptedClean) => acceptedClean.Count == 0 ? untouched : untouched.Stopping(acceptedClean);

    /// <summary>The capacities as if nothing had been seen: the failed parts alone are sources, and a part where debris was found holds what it is rated to hold.</summary>
    public Capacities CapacitiesOfFailures => ofFailures ??= CapacitiesOfFailuresOn(Open);

    /// <summary>As <see cref="CapacitiesOfFailures"/>, for another choice of joints.</summary>
    public Capacities CapacitiesOfFailuresOn(PackedGraph open) => CapacitiesOn(open, SourcesOf(question with { Findings = [] }));

    private Capacities CapacitiesOn(PackedGraph open, List<(int Vertex, double Size)> sources)
    {
        double[] vertexSize = [.. Family.Parts.Select(part => LetsOn(part, question.Debris).Micrometres)];
        double[] jointSize = [.. Family.Joints.Select(joint => LetsOn(joint, question.Debris).Micrometres)];
        foreach ((int vertex, _) in sources)
            vertexSize[vertex] = double.PositiveInfinity;
        // A failed part holds nothing back, whatever it shed: a torn screen lets on what another part sheds.
        foreach (PartId part in failed)
            vertexSize[Family.IndexOf(part)] = double.PositiveInfinity;
        // Nothing passes a part that was found clean: that is a level of its own, narrower than every other.
        var levels = new Levels(vertexSize, jointSize, sources.Select(source => source.Size), [0]);
        return Capacities.Of(
            open,
            levels,
            levels.Of(vertexSize),
            levels.Of(jointSize),
            [.. sources.Select(source => (source.Vertex, levels.Of(source.Size)))]);
    }

    private static List<(int Vertex, double Size)> SourcesOf(SpreadQuestion question)
    {
        ILookup<PartId, PartFailure> shedAt = question.Failures.Where(failure => failure.Sheds(question.Debris)).ToLookup(failure => failure.Part);
        var found = question.Findings.Where(finding => finding.Found && finding.Debris == question.Debris).Select(finding => finding.Part).ToHashSet();
        var sources = new List<(int Vertex, double Size)>();
        for (int vertex = 0; vertex < question.Family.Parts.Length; vertex++)
        {
            Part part = question.Family.Parts[vertex];
            // A failed part where the debris was also found is a source twice over: what it sheds, and what was found, which has no known upper size.
            // Were the find alone to count, a barrier that lets on all that the part sheds would seem to hold something back.
            foreach (double size in shedAt[part.Id].Select(failure => failure.SizeOf(part, question.Debris).Micrometres).Distinct())
                sources.Add((vertex, size));
            if (found.Contains(part.Id))
                sources.Add((vertex, double.PositiveInfinity));
        }

        return sources;
    }
}
