using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Looks;

/// <summary>
/// A technician's minutes for treatments and looks, as far as the choice of looks weighs them: the work at the part itself, with taking it off and refitting it
/// where it comes off, but for what an outside workshop does. What is in the way of a look is counted with the looks, once for all of them; what is in the way
/// of a treatment is not counted, because several parts share it.
/// </summary>
/// <param name="family">The family.</param>
/// <param name="minutes">The minutes of a task at a part.</param>
internal sealed class BenchWork(Family family, Func<Part, StepAction, double> minutes)
{
    /// <summary>Whether a part that gets these treatments is taken off for them.</summary>
    public static bool ComesOff(Part part, ImmutableArray<TreatmentKind> treatments) =>
        treatments.Contains(TreatmentKind.Replace) || ((part.IsRemovable || part.SendOut is not null) && treatments.Any(one => one != TreatmentKind.Inspect));

    /// <summary>The minutes of these treatments.</summary>
    public double Treatment(Part part, ImmutableArray<TreatmentKind> treatments)
    {
        if (treatments.IsEmpty)
            return 0;
        double sum = ComesOff(part, treatments) ? OffAndOn(family.IndexOf(part.Id)) : 0;
        bool goesOut = part.SendOut is not null && !treatments.Contains(TreatmentKind.Replace) && treatments.Any(one => one != TreatmentKind.Inspect);
        return goesOut ? sum : sum + treatments.Sum(one => minutes(part, ActionOf(one)));
    }

    /// <summary>The minutes of the look at a place alone.</summary>
    public double Look(int place) => minutes(family.Parts[place], StepAction.Inspect);

    /// <summary>The minutes of taking a part off and refitting it.</summary>
    public double OffAndOn(int vertex) => minutes(family.Parts[vertex], StepAction.Remove) + minutes(family.Parts[vertex], StepAction.Refit);

    /// <summary>Whether something must be off for a look at a place.</summary>
    public bool NeedsStripping(int place) => !OffFor(family.Parts[place]).IsEmpty;

    /// <summary>What comes off for a look at a place: what is in its way, what is in the way of that, and the part itself where the look takes it off; rising.</summary>
    public SortedSet<int> InTheWayOf(int place) => Behind(OffFor(family.Parts[place]));

    /// <summary>These parts, and what is in the way of them; rising.</summary>
    public SortedSet<int> Behind(IEnumerable<PartId> access)
    {
        var off = new SortedSet<int>();
        var waiting = new Queue<PartId>(access);
        while (waiting.TryDequeue(out PartId next))
        {
            int other = family.IndexOf(next);
            if (!off.Add(other))
                continue;
            foreach (PartId behind in family.Parts[other].Access)
                waiting.Enqueue(behind);
        }

        return off;
    }

    private static ImmutableArray<PartId> OffFor(Part part) => part.LookTakesOff ? [part.Id] : part.Inspect?.Access ?? part.Access;

    private static StepAction ActionOf(TreatmentKind treatment) => treatment switch
    {
        TreatmentKind.Inspect => StepAction.Inspect,
        TreatmentKind.Flush => StepAction.Flush,
        TreatmentKind.Clean => StepAction.Clean,
        TreatmentKind.Test => StepAction.Test,
        _ => StepAction.Replace,
    };
}
