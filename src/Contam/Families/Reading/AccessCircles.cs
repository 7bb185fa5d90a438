using System.Collections.Immutable;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>Finds parts that are in each other's way, so that none of them could come off first.</summary>
internal static class AccessCircles
{
    /// <summary>
    /// Raises a problem for circles of <c>access</c>, each named whole. Every part is looked into once; a circle that the same line makes for
    /// every number of a repeated part is told once. Cost: parts and entries of <c>access</c>.
    /// </summary>
    public static void Raise(ImmutableArray<Part> parts, ProblemList problems)
    {
        if (parts.All(part => part.Access.IsEmpty))
            return;
        var indexOf = new Dictionary<PartId, int>(parts.Length);
        for (int i = 0; i < parts.Length; i++)
            indexOf[parts[i].Id] = i;

        var stateOf = new State[parts.Length];
        var told = new HashSet<SourceSpan>();
        var way = new List<(int Part, int Next)>();
        for (int start = 0; start < parts.Length; start++)
        {
            if (stateOf[start] != State.Unseen)
                continue;
            way.Add((start, 0));
            stateOf[start] = State.OnTheWay;
            while (way.Count > 0)
            {
                (int part, int next) = way[^1];
                if (next == parts[part].Access.Length)
                {
                    stateOf[part] = State.Done;
                    way.RemoveAt(way.Count - 1);
                    continue;
                }

                way[^1] = (part, next + 1);
                // An id that was not found has had its problem.
                if (!indexOf.TryGetValue(parts[part].Access[next], out int inTheWay))
                    continue;
                if (stateOf[inTheWay] == State.OnTheWay)
                    Tell(inTheWay, way, parts, told, problems);
                else if (stateOf[inTheWay] == State.Unseen)
                {
                    stateOf[inTheWay] = State.OnTheWay;
                    way.Add((inTheWay, 0));
                }
            }
        }
    }

    private enum State : byte
    {
        Unseen,
        OnTheWay,
        Done,
    }

    private static void Tell(int first, List<(int Part, int Next)> way, ImmutableArray<Part> parts, HashSet<SourceSpan> told, ProblemList problems)
    {
        int from = way.FindIndex(step => step.Part == first);
        int[] circle = [.. way.Skip(from).Select(step => step.Part)];
        // The circle is told from the part that stands first in the file.
        int turn = Array.IndexOf(circle, circle.Min());
        circle = [.. circle[turn..], .. circle[..turn]];
        SourceSpan place = parts[circle[0]].Place;
        if (!told.Add(place))
            return;
        string[] names = [.. circle.Select(part => parts[part].Id.Value), parts[circle[0]].Id.Value];
        problems.Add(FamilyProblems.AccessCircle(place, names, [.. circle.Skip(1).Select(part => parts[part].Place)]));
    }
}
