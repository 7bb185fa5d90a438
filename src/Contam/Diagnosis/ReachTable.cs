using Contam.Families;
using Contam.Graphs;
using Contam.Spread;

namespace Contam.Diagnosis;

/// <summary>
/// The largest particle that gets from each of some sources to each of some places, each source alone having failed.
/// <para>
/// Method: widest paths (<see cref="WidestPaths"/>), from every place back over the joints, or from every source on, whichever are fewer. A source whose
/// failure opens joints of its own is followed on by itself, as it stands in another graph. Nothing that was seen changes what a part lets on: findings
/// are weighed, not built in.
/// </para>
/// <para>Cost: linear in parts and joints for each search; sources times places of memory.</para>
/// </summary>
internal sealed class ReachTable
{
    private const double NoWay = -1;

    private readonly double[,] reach;
    private readonly double[] sheds;

    private ReachTable(int sources, int places, double[] sheds)
    {
        reach = new double[sources, places];
        this.sheds = sheds;
    }

    /// <summary>The table.</summary>
    /// <param name="family">The family.</param>
    /// <param name="debris">The debris.</param>
    /// <param name="failed">Parts whose conditional joints are open for every source.</param>
    /// <param name="sources">Places in the family of the sources.</param>
    /// <param name="sheds">The largest particle in µm that each source sheds.</param>
    /// <param name="places">Places in the family to get to, each once.</param>
    /// <param name="shut">Places in the family that nothing gets past, nor out of; <c>null</c> for none.</param>
    public static ReachTable Of(Family family, Debris debris, IReadOnlySet<PartId> failed, int[] sources, double[] sheds, int[] places, IReadOnlySet<int>? shut = null)
    {
        double[] vertexSize = [.. family.Parts.Select(part => SpreadGraph.LetsOn(part, debris).Micrometres)];
        double[] jointSize = [.. family.Joints.Select(joint => SpreadGraph.LetsOn(joint, debris).Micrometres)];
        var levels = new Levels(vertexSize, jointSize, sheds);
        int[] vertexLevel = levels.Of(vertexSize), jointLevel = levels.Of(jointSize);
        var table = new ReachTable(sources.Length, places.Length, sheds);

        var opens = family.Joints.Select(joint => joint.OnlyIfFailed).OfType<PartId>().Where(part => !failed.Contains(part)).ToHashSet();
        int[] plain = [.. Enumerable.Range(0, sources.Length).Where(source => !opens.Contains(family.Parts[sources[source]].Id))];
        if (plain.Length > places.Length)
        {
            var search = new Search(Packed(family, failed, shut).Reversed(), levels, vertexLevel, jointLevel);
            for (int place = 0; place < places.Length; place++)
            {
                WidestPaths widest = search.From(places[place], double.PositiveInfinity);
                foreach (int source in plain)
                    table.Put(source, place, widest, sources[source]);
            }
        }
        else if (plain.Length > 0)
        {
            var search = new Search(Packed(family, failed, shut), levels, vertexLevel, jointLevel);
            foreach (int source in plain)
                table.PutAll(source, search.From(sources[source], sheds[source]), places);
        }

        foreach (int source in Enumerable.Range(0, sources.Length).Except(plain))
        {
            var withIt = new HashSet<PartId>(failed) { family.Parts[sources[source]].Id };
            table.PutAll(source, new Search(Packed(family, withIt, shut), levels, vertexLevel, jointLevel).From(sources[source], sheds[source]), places);
        }

        return table;
    }

    /// <summary>The largest particle in µm that gets from a source to a place; <c>null</c> where no way leads there.</summary>
    public double? At(int source, int place) => reach[source, place] is >= 0 and var size ? size : null;

    /// <summary>Whether the full size that a source sheds gets to a place.</summary>
    public bool IsExposed(int source, int place) => reach[source, place] >= sheds[source];

    private void PutAll(int source, WidestPaths widest, int[] places)
    {
        for (int place = 0; place < places.Length; place++)
            Put(source, place, widest, places[place]);
    }

    private void Put(int source, int place, WidestPaths widest, int vertex) =>
        reach[source, place] = widest.Reaches(vertex) ? Math.Min(sheds[source], widest.ReachAt(vertex)) : NoWay;

    private static PackedGraph Packed(Family family, IReadOnlySet<PartId> failed, IReadOnlySet<int>? shut) =>
        SpreadGraph.Pack(family, joint => SpreadGraph.IsOpen(family, joint, failed) && shut?.Contains(family.JointFrom[joint.Id]) != true);

    /// <summary>Widest paths from one vertex, which holds nothing: it is an end of every path that counts, whichever way the joints are followed.</summary>
    private sealed class Search(PackedGraph graph, Levels levels, int[] vertexLevel, int[] jointLevel)
    {
        private readonly Capacities capacities = Capacities.Of(graph, levels, vertexLevel, jointLevel, []);

        public WidestPaths From(int start, double size)
        {
            int own = vertexLevel[start];
            vertexLevel[start] = 0;
            WidestPaths widest = WidestPaths.Settle(graph, capacities with { Sources = [(start, levels.Of(size))] });
            vertexLevel[start] = own;
            return widest;
        }
    }
}
