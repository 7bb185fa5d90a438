using Contam.Families;

namespace Contam.Procedure;

/// <summary>The jobs of the deciding looks, and when what hangs on them may be done. Letters rise in the order of work, so that no look is in an earlier phase than the one before it.</summary>
internal sealed class DecidingLookJobs
{
    private readonly Phase[] phases;
    private readonly SortedSet<int>[] offFor;
    private readonly Family family;

    public DecidingLookJobs(ProcedureRequest request, WorkItem?[] items)
    {
        family = request.Family;
        Jobs = new Job?[request.Looks.Length];
        phases = new Phase[request.Looks.Length];
        offFor = [.. request.Looks.Select(look => WorkList.OffFor(family, items, look))];
        Phase least = Phase.Confirm;
        for (int look = 0; look < phases.Length; look++)
        {
            foreach (Part place in request.Looks[look].Places)
            {
                WorkItem item = items[family.IndexOf(place.Id)]!;
                bool isBefore = LookRules.IsBeforeStripping(item) && (!place.LookTakesOff || (LookRules.IsTakenOffBeforeStripping(item) && !IsHeldInPlace(request, place)));
                least = isBefore ? least : Phase.Strip;
            }

            phases[look] = least;
        }
    }

    /// <summary>Whether it takes more than its own fastening to take a part off: it rides on another, or another stands on it, or it has failed and is looked at first.</summary>
    public static bool IsHeldInPlace(ProcedureRequest request, Part part) =>
        part.RidesOn is not null || request.Failed.Contains(part.Id) || request.Family.Parts.Any(other => other.StandsOn.Contains(part.Id));

    /// <summary>By number; <c>null</c> until it is made.</summary>
    public Job?[] Jobs { get; }

    /// <summary>The phase of a look.</summary>
    public Phase PhaseOf(int look) => phases[look];

    /// <summary>The phase in which something can be done that hangs on looks: its own, or that of the last of them.</summary>
    public Phase NotBefore(LookCondition when, Phase phase) => when.Looks.Select(look => phases[look]).Append(phase).Max();

    /// <summary>Whether a place comes off for a look that is made before the one at it.</summary>
    public bool IsOffForEarlier(WorkItem item) => item.DecidingLook is { } look && IsOffFor(item.Part, look - 1);

    /// <summary>Whether anything comes off for a look that is made before this one.</summary>
    public bool IsAfterARemoval(int look) => offFor.Take(look).Any(off => off.Count > 0);

    /// <summary>Whether a part comes off for this look or for one before it.</summary>
    public bool IsOffFor(Part part, int look) => offFor.Take(look + 1).Any(off => off.Contains(family.IndexOf(part.Id)));
}
