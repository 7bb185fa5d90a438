
namespace Contam.Looks;

/// <summary>
/// Which looks could speak against which clean places, whatever the outcomes: more pairs than come about, never fewer.
/// <para>
/// A find at a look is explained in every history if it is when every other look is clean (<see cref="Voiding"/>). And also where there is one debris, shed in
/// one size, no way to any look is narrower than that, nothing was found beforehand, and each look is made only when the debris comes as far as there for all
/// that was seen before: then the very way by which it is due explains what is found. What was found beforehand may be explained no more once a look is clean.
/// </para>
/// </summary>
internal sealed class Disproofs
{
    private readonly FixedLooks looks;
    private readonly int[][] voiders;

    private Disproofs(FixedLooks looks, int[][] voiders)
    {
        this.looks = looks;
        this.voiders = voiders;
    }

    /// <param name="looks">The looks.</param>
    /// <param name="isPlain">For each debris, the parts to which no way is narrow.</param>
    /// <param name="isMadeOnlyWhenDue">Whether each look is made only when the debris comes as far as there for all that was seen before.</param>
    public static Disproofs Of(FixedLooks looks, bool[][] isPlain, bool isMadeOnlyWhenDue)
    {
        var voiders = new int[looks.Ways.Length][];
        for (int debris = 0; debris < voiders.Length; debris++)
        {
            DebrisWays ways = looks.Ways[debris];
            FailedWays failed = ways.FromFailed;
            int[] ofDebris = voiders[debris] = new int[looks.Family.Parts.Length];
            int[] stops = [.. looks.Places.SelectMany(look => look).Concat(ways.SaidClean).Distinct().Order()];
            bool isDueByAWayThatExplains = isMadeOnlyWhenDue && voiders.Length == 1 && ways.Found.IsEmpty && failed.ShedOneSize
                && looks.Places.All(look => look.All(place => isPlain[debris][place] && !ways.SaidClean.Contains(place)));
            for (int look = 0; look < looks.Count && !isDueByAWayThatExplains; look++)
            {
                foreach (int find in looks.Places[look])
                    Disproves(find, LookMask.Of(look));
            }

            foreach (int find in ways.Found.Where(find => !looks.IsPlace(find)))
                Disproves(find, LookMask.Always);

            void Disproves(int find, int look)
            {
                if (!failed.LeadTo(find) || failed.Reach(failed.WidestTo(find), vertex => vertex != find && stops.Contains(vertex))[find])
                    return;
                foreach (int place in Voiding.Between(ways, find, stops))
                    ofDebris[place] = LookMask.Or(ofDebris[place], look);
            }
        }

        return new Disproofs(looks, voiders);
    }

    /// <summary>The looks, as bits, whose find could make a clean finding of this debris here void.</summary>
    public int VoidersAt(int debris, int vertex) => voiders[debris][vertex];

    /// <summary>Whether no find at all could make this look void.</summary>
    public bool IsNeverVoid(int look) => looks.Places[look].All(place => voiders.All(ofDebris => ofDebris[place] == 0));

    /// <summary>Whether there is nothing that could be void.</summary>
    public bool AreNone => voiders.All(ofDebris => ofDebris.All(mask => mask == 0));
}
