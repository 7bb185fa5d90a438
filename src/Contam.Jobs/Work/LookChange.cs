using System.Collections.Immutable;
using Contam.Families;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
using Contam.Plans;
using Contam.Treatment.Reading;

namespace Contam.Jobs.Work;

/// <summary>
/// What follows when outcomes of looks come or go. A clean look that a find disproves now may have left debris all the time, which can have gone on; what was put
/// back or proved without the steps that are due now was so too early; and a clean look whose step opens again is to be made again, so that more may follow.
/// Ends, since outcomes only go and steps only open.
/// </summary>
internal static class LookChange
{
    /// <summary>How the looks stand then; adds to <paramref name="opened"/> the steps that open with it.</summary>
    /// <param name="state">How the job stands.</param>
    /// <param name="kept">Family and standard, as the job keeps them.</param>
    /// <param name="outcomes">The outcomes that will hold; those go out of it whose look is to be made again.</param>
    /// <param name="opened">The steps that open for a reason of their own; takes the rest.</param>
    public static ImmutableArray<LookStands> Follow(JobState state, KeptSystem kept, Dictionary<string, Decided> outcomes, List<OpenAgain> opened)
    {
        while (true)
        {
            foreach (PlanLook look in state.Plan.Looks.Where(look => outcomes.TryGetValue(look.Id, out Decided? outcome) && outcome.Outcome == "clean" && opened.Any(one => one.Key == state.Steps.Find(look.Step)?.Key)))
                outcomes.Remove(look.Id);
            ImmutableArray<LookStands> stands = new LookTable(state, kept, outcomes).Standings();
            JobState after = state with { LooksStand = stands };
            int before = opened.Count;
            OpenDisproved(state, after, kept, opened);
            Reopening.Follow(state, after, kept.Family, opened);
            if (opened.Count == before)
                return stands;
        }
    }

    /// <summary>The standings for an entry: <c>null</c> where they do not change.</summary>
    public static ImmutableArray<LookStands>? IfOther(JobState state, ImmutableArray<LookStands> stands) => state.LooksStand.SequenceEqual(stands) ? null : stands;

    private static void OpenDisproved(JobState state, JobState after, KeptSystem kept, List<OpenAgain> opened)
    {
        Catalogue catalogue = kept.Standard.CatalogueOf();
        foreach (PlanLook look in state.Plan.Looks.Where(look => after.StandingOf(look.Id) == LookStanding.Void && state.StandingOf(look.Id) == LookStanding.Clean))
        {
            foreach (string place in look.Places)
            {
                foreach (string debris in look.Debris)
                    Add(opened, Dirtying.OfVoid(state, kept.Family, place, catalogue.FindDebris(debris)!));
            }
        }
    }

    /// <summary>Adds the steps that are not among those that open yet.</summary>
    public static void Add(List<OpenAgain> opened, IEnumerable<OpenAgain> more)
    {
        foreach (OpenAgain one in more.ToArray())
        {
            if (opened.All(other => other.Key != one.Key))
                opened.Add(one);
        }
    }
}
