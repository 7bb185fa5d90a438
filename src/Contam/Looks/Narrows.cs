using Contam.Graphs;

namespace Contam.Looks;

/// <summary>
/// Where every way from a source, by whatever looks it goes, brings what the source sheds in full: no part and no joint on any way passes less than the
/// largest size that is shed. A part that is reached there is exposed in every history, for every history begins at a source. Cost: linear.
/// </summary>
internal static class Narrows
{
    public static bool[] HasNone(DebrisWays ways)
    {
        if (ways.Sources.IsEmpty)
            return new bool[ways.Joints.VertexCount];
        int largest = ways.Sources.Min(source => source.Level);
        var beyond = new List<int>();
        for (int vertex = 0; vertex < ways.Joints.VertexCount; vertex++)
        {
            if (!ways.IsReached[vertex])
                continue;
            for (int place = ways.Joints.First[vertex]; place < ways.Joints.First[vertex + 1]; place++)
            {
                if (!ways.Passes(vertex, largest) || !ways.PassesJoint(place, largest))
                    beyond.Add(ways.Joints.Target[place]);
            }
        }

        bool[] isNarrow = Reachable.From(ways.Joints, beyond);
        return [.. isNarrow.Select(narrow => !narrow)];
    }
}
