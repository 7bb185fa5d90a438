using System.Collections.Immutable;
using Contam.Families;
using Contam.Jobs.Documents;
using Contam.Jobs.Entries;
using Contam.Plans;
using Contam.Treatment.Reading;

namespace Contam.Jobs.Work;

/// <summary>What may be said of a look that decides how far to go. Pure, as <see cref="WorkRules"/>.</summary>
internal static class LookRules
{
    /// <summary>A look was made, or could not be.</summary>
    /// <param name="state">How the job stands.</param>
    /// <param name="kept">Family and standard, as the job keeps them.</param>
    /// <param name="letter">The look's letter.</param>
    /// <param name="outcome">What it came to.</param>
    /// <param name="finds">What was found; only for <see cref="LookOutcome.Found"/>, and there at least one.</param>
    /// <param name="again">Whether it takes the place of an outcome that was said before.</param>
    /// <param name="at">When.</param>
    /// <param name="by">Who.</param>
    public static Ruling Decide(JobState state, KeptSystem kept, string letter, LookOutcome outcome, ImmutableArray<SeenAt> finds, bool again, DateTimeOffset at, string by)
    {
        if (state.Plan.Looks.FirstOrDefault(one => one.Id == letter) is not { } look)
            return Ruling.Refuse(new NoSuchThing(NamedThing.Look, letter, [.. state.Plan.Looks.Select(one => one.Id)]));
        if (state.IsReleased)
            return Ruling.Refuse(new ReleasedBefore(letter));
        bool isSaid = state.Outcomes.TryGetValue(letter, out Decided? before);
        if (isSaid && !again)
            return Ruling.Refuse(new LookedBefore(letter, before!.Outcome, before.By));
        if (!isSaid && state.StandingOf(letter) is LookStanding.NotDue or LookStanding.Waits)
            return Ruling.Refuse(new LookNotDue(letter, look.OnlyIf, state.StandingOf(letter) == LookStanding.Waits));
        ImmutableArray<SeenAt> said = outcome switch
        {
            LookOutcome.Clean => [.. look.Places.SelectMany(place => look.Debris.Select(debris => new SeenAt(place, debris, Found: false)))],
            LookOutcome.Found => finds,
            _ => [],
        };
        if (said.FirstOrDefault(seen => !look.Places.Contains(seen.Part)) is { } elsewhere)
            return Ruling.Refuse(new NoPlaceOfLook(letter, elsewhere.Part, look.Places));
        var seen = ImmutableArray.CreateBuilder<SeenAt>();
        foreach (SeenAt one in said)
        {
            Ruling ruling = WorkRules.Look(state, one with { AfterWork = null }, at, by);
            if (ruling.Body is not Looked looked)
                return ruling;
            seen.Add(looked.Seen);
        }

        // A find is not taken back, whatever is said of it later.
        if (isSaid && before!.Outcome == "found" && outcome != LookOutcome.Found)
            return Ruling.Refuse(new FoundBefore(before.Seen[0].Part, before.Seen[0].Debris));
        return Ruling.Take(Entry(state, kept, look, new Decided { At = at, By = by, Look = letter, Outcome = WordOf(outcome), Seen = seen.ToImmutable(), Again = isSaid ? true : null, Looks = [] }));
    }

    /// <summary>An outcome as entries have it.</summary>
    public static string WordOf(LookOutcome outcome) => outcome switch { LookOutcome.Clean => "clean", LookOutcome.Found => "found", _ => "in-doubt" };

    /// <summary>The outcome that an entry names; <c>null</c> for none.</summary>
    public static LookOutcome? OutcomeOf(string word) => word switch { "clean" => LookOutcome.Clean, "found" => LookOutcome.Found, "in-doubt" => LookOutcome.InDoubt, _ => null };

    private static Decided Entry(JobState state, KeptSystem kept, PlanLook look, Decided said)
    {
        Catalogue catalogue = kept.Standard.CatalogueOf();
        var outcomes = state.Outcomes.ToDictionary(StringComparer.Ordinal);
        outcomes[look.Id] = said;
        var opened = new List<OpenAgain>();
        // In its turn a find finds the engine as the plan was proved with it. Later it may have dirtied what was done since.
        if (said.Outcome == "found" && (said.Again == true || IsLate(state, look)))
        {
            foreach (SeenAt find in said.Seen)
                LookChange.Add(opened, Dirtying.Of(state, kept.Family, new LookTaken(0, find, said.By, IsAnswered: true), catalogue.FindDebris(find.Debris)!));
        }

        ImmutableArray<LookStands> stands = LookChange.Follow(state, kept, outcomes, opened);
        outcomes[look.Id] = said;
        JobState after = state with { LooksStand = stands, Outcomes = outcomes };
        bool isBeyond = said.Outcome == "found" && (said.Seen.Any(find => !look.Debris.Contains(find.Debris)) || ReleaseGate.Unplanned(after, kept).Any());
        return said with { Beyond = isBeyond ? true : null, Reopened = [.. opened], Looks = stands };
    }

    /// <summary>Whether anything is done that was to wait for the look.</summary>
    private static bool IsLate(JobState state, PlanLook look) =>
        state.Steps.Find(look.Step) is { } made && state.Steps.All.Any(step => step.Number > made.Number && state.IsDone(step) && state.Steps.Before(step).Contains(made));
}
