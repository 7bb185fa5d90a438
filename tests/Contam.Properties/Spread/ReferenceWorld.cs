using Contam.Families;
using Contam.Graphs;
using Contam.Spread;
using QuikGraph;
using QuikGraph.Algorithms.Search;

namespace Contam.Properties.Spread;

/// <summary>
/// What one debris meets in a system, read from the definitions: the sources, what each part and joint lets on, and what is reached
/// over joints and parts that let a size on. Searches are those of the graph library.
/// </summary>
internal sealed class ReferenceWorld
{
    // Stands before all sources. No part has this place in the family.
    private const int Root = -1;

    private readonly SpreadQuestion question;
    private readonly HashSet<PartId> failed;
    private readonly HashSet<PartId> found;
    private readonly HashSet<PartId> accepted;

    // Every joint, open or not, with the largest particle that it and the part it leaves let on.
    private readonly (Joint Joint, SEdge<int> Edge, ParticleSize LetsOn)[] ways;

    internal ReferenceWorld(SpreadQuestion question, bool countCleanFindings)
    {
        this.question = question;
        failed = [.. question.Failed];
        found = [.. FindingsOf(found: true)];
        accepted = countCleanFindings && question.AcceptsCleanFindings
            ? [.. FindingsOf(found: false).Where(part => question.Family[part].Inspect?.Shows == Shows.Good && !failed.Contains(part) && !found.Contains(part))]
            : [];
        if (accepted.Count > 0 && found.Count > 0)
            accepted.ExceptWith(new ReferenceContradictions(question).Void);
        Sources =
        [
            .. question.Failures.Where(one => one.Debris is null || one.Debris.Value.Any(shed => shed.Name == question.Debris.Name))
                .Select(one => (one.Part, question.Debris.HasSize ? one.UpTo ?? Family[one.Part].ShedOf(question.Debris)?.UpTo ?? ParticleSize.Unlimited : ParticleSize.Unlimited)),
            .. found.Select(part => (part, ParticleSize.Unlimited)),
        ];
        ways =
        [
            .. Family.Joints.Select(joint => (
                joint,
                new SEdge<int>(Family.IndexOf(joint.From), Family.IndexOf(joint.To)),
                ParticleSize.Min(LetsOn(Family[joint.From]), LetsOn(joint)))),
        ];
    }

    /// <summary>Every source with the largest particle it sheds. A part that failed and where this debris was found is two.</summary>
    internal IReadOnlyList<(PartId Part, ParticleSize Size)> Sources { get; }

    /// <summary>Every size that could decide a reach.</summary>
    internal IEnumerable<ParticleSize> Levels =>
        Sources.Select(source => source.Size)
            .Concat(Family.Parts.Select(LetsOn))
            .Concat(Family.Joints.Select(LetsOn))
            .Append(ParticleSize.Zero)
            .Distinct();

    private Family Family => question.Family;

    internal bool IsAccepted(PartId part) => accepted.Contains(part);

    /// <summary>Whether something can pass this joint, with the joints of these parts taken as open too.</summary>
    internal bool IsOpen(Joint joint, IReadOnlyCollection<PartId> alsoFailed) =>
        (joint.When & Family.States) != EngineStates.None
        && (joint.OnlyIfFailed is not { } condition || failed.Contains(condition) || alsoFailed.Contains(condition));

    /// <summary>The largest particle that a part lets on, where it stands strictly between the source and another part.</summary>
    internal ParticleSize LetsOn(Part part)
    {
        if (failed.Contains(part.Id) || found.Contains(part.Id))
            return ParticleSize.Unlimited;
        if (accepted.Contains(part.Id))
            return ParticleSize.Zero;
        ParticleSize letsOn = ParticleSize.Unlimited;
        if (part.HoldOf(question.Debris) is { } hold && part.HasAbsoluteRating && !part.HasBypass)
            letsOn = ParticleSize.Min(letsOn, hold.Above);
        return ParticleSize.Min(letsOn, Passage(part.Passage));
    }

    /// <summary>The largest particle that an open joint lets on.</summary>
    internal ParticleSize LetsOn(Joint joint) => Passage(joint.Passage);

    /// <summary>What these sources reach over open joints that let a size on, past parts that do and are not shut; the sources among it. Accepted clean findings stop all of it where they are not passed, but for that at one part.</summary>
    internal HashSet<PartId> Reached(IEnumerable<PartId> sources, ParticleSize size, IReadOnlyCollection<PartId>? alsoFailed = null, bool pastAccepted = true, IReadOnlySet<PartId>? shut = null, PartId? butPast = null)
    {
        var graph = new AdjacencyGraph<int, SEdge<int>>();
        graph.AddVertex(Root);
        graph.AddVertexRange(Enumerable.Range(0, Family.Parts.Length));
        graph.AddEdgeRange(sources.Select(source => new SEdge<int>(Root, Family.IndexOf(source))));
        graph.AddEdgeRange(ways
            .Where(way => way.LetsOn >= size && IsOpen(way.Joint, alsoFailed ?? []) && (pastAccepted || way.Joint.From == butPast || !accepted.Contains(way.Joint.From)) && shut?.Contains(way.Joint.From) != true)
            .Select(way => way.Edge));
        var reached = new HashSet<PartId>();
        var search = new BreadthFirstSearchAlgorithm<int, SEdge<int>>(graph);
        search.DiscoverVertex += part =>
        {
            if (part != Root)
                reached.Add(Family.Parts[part].Id);
        };
        search.Compute(Root);
        return reached;
    }

    private ParticleSize Passage(ParticleSize? passage) =>
        passage is { } widest && question.Debris is { IsHard: true, HasSize: true } ? widest : ParticleSize.Unlimited;

    private IEnumerable<PartId> FindingsOf(bool found) =>
        question.Findings.Where(finding => finding.Found == found && finding.Debris == question.Debris).Select(finding => finding.Part);
}
