using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Jobs.Work;
using Contam.Plans;

namespace Contam.Jobs.Reports;

/// <summary>The looks that decide how far to go, for people.</summary>
internal static class LookWords
{
    /// <summary>How a look of the plan that holds stands, as a sentence.</summary>
    public static string Sentence(JobState state, PlanLook look)
    {
        LookStands? stands = state.LooksStand.FirstOrDefault(one => one.Look == look.Id);
        Decided? outcome = state.Outcomes.GetValueOrDefault(look.Id);
        string at = $"Look {look.Id} at {Places(look)}";
        string hangsOn = string.Join(" or ", look.OnlyIf);
        return state.StandingOf(look.Id) switch
        {
            LookStanding.Due => $"{at}: no outcome yet.",
            LookStanding.Waits => $"{at}: made only where look {hangsOn} shows debris.",
            LookStanding.NotDue => $"{at}: not due, as look {hangsOn} was clean.",
            LookStanding.Settled => $"{at}: not made. It counts as found, as the find at {stands?.DisprovedAt} would disprove a clean look here.",
            LookStanding.Void => $"{Made(look, outcome)} It clears nothing, as the find at {stands?.DisprovedAt} disproves it.",
            _ => Made(look, outcome),
        };
    }

    /// <summary>A look that was made, or could not be, as a sentence.</summary>
    public static string Made(PlanLook look, Decided? outcome)
    {
        string at = $"Look {look.Id} at {Places(look)}";
        return outcome switch
        {
            null => $"{at}: no outcome yet.",
            { Outcome: "clean" } => $"{at}: clean of {string.Join(" and ", look.Debris)} ({Signed(outcome)}).",
            { Outcome: "found" } => $"{at}: {string.Join(", ", outcome.Seen.Select(seen => $"{seen.Debris} found at {seen.Part}{JobText.Looks(seen)}"))} ({Signed(outcome)}).",
            _ => $"{at}: not seen, or in doubt; it counts as found ({Signed(outcome)}).",
        };
    }

    /// <summary>For the release sheet: every look, its outcome, who looked, and what was left alone on the strength of it.</summary>
    public static IEnumerable<string> OnSheet(JobState state)
    {
        foreach (LookMade made in state.Made.Where(made => !made.IsOfThisPlan))
            yield return Made(made.Look, made.Entry) + (made.Entry.Outcome == "clean" ? LeftAlone(Spared(state, made.Look.Clears)) : "") + " A plan was made with it since.";
        foreach (PlanLook look in state.Plan.Looks)
            yield return Sentence(state, look) + (state.StandingOf(look.Id) == LookStanding.Clean ? LeftAlone(Spared(state, look.Clears)) : "");
    }

    /// <summary>What decides a step, as it stands in the margin: <c>A C</c>, <c>not B</c>; empty where nothing does.</summary>
    public static string Margin(WorkStep step) => string.Join(", ", new[] { string.Join(' ', step.OnlyIf), step.Unless.IsEmpty ? "" : $"not {string.Join(' ', step.Unless)}" }.Where(text => text.Length > 0));

    /// <summary>What to type for a look that is due.</summary>
    public static string Ask(PlanLook look) => $"contam job look {look.Id} --clean, or --found {look.Debris[0]}{(look.Places.Length > 1 ? " --at PLACE" : "")}";

    /// <summary>Its places.</summary>
    public static string Places(PlanLook look) => string.Join(", ", look.Places);

    private static string LeftAlone(ImmutableArray<string> parts) => parts.IsEmpty ? "" : $" Left alone on the strength of it: {string.Join(", ", parts)}.";

    private static ImmutableArray<string> Spared(JobState state, ImmutableArray<string> parts) =>
        [.. parts.Where(part => !state.Steps.All.Any(step => step.Parts.Contains(part) && state.IsDone(step) && BenchPlay.TreatmentOf(step) is TreatmentKind.Flush or TreatmentKind.Clean or TreatmentKind.Replace))];

    private static string Signed(Decided outcome) => $"{outcome.By}, {JobText.Day(outcome.At)}";
}
