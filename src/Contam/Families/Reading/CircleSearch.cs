using System.Collections.Immutable;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>Finds circles of ties by one depth-first search with a stack of its own. Cost: linear in parts and ties.</summary>
internal static class CircleSearch
{
    private enum State : byte
    {
        Unseen,
        OnTheWay,
        Done,
    }

    /// <summary>Tells each circle that closes on the way, from its part that stands first in the file; one for each place, beyond those told before.</summary>
    public static void Raise(
        ImmutableArray<Part> parts, TieTable ties, HashSet<SourceSpan> told, Action<SourceSpan, ImmutableArray<CircleStep>, ImmutableArray<SourceSpan>> tell)
    {
        var stateOf = new State[parts.Length];
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
                if (next == ties.Of(part).Count)
                {
                    stateOf[part] = State.Done;
                    way.RemoveAt(way.Count - 1);
                    continue;
                }

                way[^1] = (part, next + 1);
                int other = ties.Of(part)[next].Other;
                if (stateOf[other] == State.OnTheWay)
                    Tell(other);
                else if (stateOf[other] == State.Unseen)
                {
                    stateOf[other] = State.OnTheWay;
                    way.Add((other, 0));
                }
            }
        }

        void Tell(int first)
        {
            int from = way.FindIndex(step => step.Part == first);
            // Each step of the way stands one behind the tie that it went by.
            (int Part, Tie Tie)[] circle = [.. way.Skip(from).Select(step => (step.Part, ties.Of(step.Part)[step.Next - 1].Tie))];
            int turn = Array.FindIndex(circle, step => step.Part == circle.Min(one => one.Part));
            circle = [.. circle[turn..], .. circle[..turn]];
            SourceSpan place = parts[circle[0].Part].Place;
            if (told.Add(place))
                tell(place, [.. circle.Select(step => new CircleStep(parts[step.Part].Id.Value, step.Tie))], [.. circle.Skip(1).Select(step => parts[step.Part].Place)]);
        }
    }
}
