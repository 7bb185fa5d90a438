using System.Collections.Immutable;

namespace Contam.Looks;

/// <summary>
/// When each look is due: under the rule of the parts applied to its places, any of them.
/// <para>
/// Where looks hang on each other in a ring, the one that is made first cannot wait for the other: it is due when that one would be. A look that a part needs
/// which takes two clean places is made in any case.
/// </para>
/// </summary>
internal static class Dueness
{
    /// <summary>By which looks each look is due; each of earlier looks only.</summary>
    public static ImmutableArray<int> Of(FixedLooks looks, Reckoning reckoning)
    {
        int[] hangsOn = [.. Enumerable.Range(0, looks.Count).Select(look => OnWhat(looks, reckoning, look))];
        int made = reckoning.MadeAnyway();
        for (int look = 0; look < hangsOn.Length; look++)
        {
            if ((made & LookMask.Of(look)) != 0 && hangsOn[look] != 0)
                hangsOn[look] = LookMask.Always;
        }

        return [.. Enumerable.Range(0, looks.Count).Select(look => Earlier(look, hangsOn))];
    }

    /// <summary>By which looks a look is due, whatever the order. The places of one look are due together.</summary>
    /// <exception cref="ArgumentException">They are not.</exception>
    private static int OnWhat(FixedLooks looks, Reckoning reckoning, int look)
    {
        int[] due = [.. looks.Places[look].Select(place => Place(looks, reckoning, place))];
        for (int i = 1; i < due.Length; i++)
        {
            if (due[i] != due[0])
                throw new ArgumentException($"{looks.Family.Parts[looks.Places[look][0]].Id} and {looks.Family.Parts[looks.Places[look][i]].Id} are not due together", nameof(looks));
        }

        return due[0];
    }

    /// <summary>By which looks a look at one place is due.</summary>
    public static int Place(FixedLooks looks, Reckoning reckoning, int place)
    {
        int due = 0;
        for (int debris = 0; debris < looks.Ways.Length; debris++)
            due = LookMask.Or(due, reckoning.Coming(debris, place));
        return due;
    }

    private static int Earlier(int look, int[] hangsOn)
    {
        int due = 0;
        var isSeen = new bool[hangsOn.Length];
        var waiting = new Queue<int>();
        isSeen[look] = true;
        waiting.Enqueue(look);
        while (waiting.TryDequeue(out int next))
        {
            if (hangsOn[next] == LookMask.Always)
                return LookMask.Always;
            foreach (int other in LookMask.Looks(hangsOn[next]))
            {
                if (other < look)
                    due |= LookMask.Of(other);
                else if (!isSeen[other])
                {
                    isSeen[other] = true;
                    waiting.Enqueue(other);
                }
            }
        }

        return due;
    }
}
