using Contam.Families;
using Contam.Jobs.Entries;
using Contam.Spread;

namespace Contam.Jobs.Work;

/// <summary>
/// Which finished work a find undoes. Debris found at a part can have gone on to whatever it reaches from there, since that was cleaned, unless the two
/// were apart: what is off the engine cannot be dirtied, and a part that came off before the other was worked on cannot have dirtied it.
/// Everything else is taken to be dirty again, also where the way between leads through parts that are off.
/// </summary>
internal static class Dirtying
{
    /// <summary>The steps that a find opens again, in the order of the steps.</summary>
    public static IEnumerable<OpenAgain> Of(JobState state, Family family, LookTaken find, Debris debris) =>
        Of(state, family, find.Seen.Part, debris, $"{debris.Name} was found at {find.Seen.Part} after it", $"{debris.Name} found at {find.Seen.Part} can have gone on to");

    /// <summary>
    /// The steps that a clean look opens again that is void now, in the order of the steps: what was left as it was on the strength of it may have held debris
    /// all the time, and that can have gone on like that of a find.
    /// </summary>
    public static IEnumerable<OpenAgain> OfVoid(JobState state, Family family, string place, Debris debris) =>
        Of(state, family, place, debris, $"the clean look at {place} counts for nothing", $"the clean look at {place} counts for nothing, and {debris.Name} can have gone on to");

    private static IEnumerable<OpenAgain> Of(JobState state, Family family, string source, Debris debris, string atSource, string goneOnTo)
    {
        bool sourceIsOff = state.IsOff(source);
        long sourceCameOff = sourceIsOff ? RemovedAt(state, source) : long.MaxValue;
        DebrisSpread spread = Spreading.Of(new SpreadQuestion(family, [], debris) { Findings = [new Finding(new PartId(source), debris, Found: true)] });
        var reached = spread.Parts.Select(part => part.Part.Value).ToHashSet(StringComparer.Ordinal);
        foreach (WorkStep step in state.Steps.All.Where(state.IsDone))
        {
            string? dirtied = step.Parts.FirstOrDefault(part => part == source ? IsUndoneAtSource(step, sourceIsOff) : reached.Contains(part) && IsUndone(part, step));
            if (dirtied == source)
                yield return new OpenAgain(step.Key, atSource);
            else if (dirtied is not null)
                yield return new OpenAgain(step.Key, $"{goneOnTo} {dirtied} since");
        }

        bool IsUndone(string part, WorkStep step) =>
            IsWork(step) && !state.IsOff(part) && !(sourceIsOff && sourceCameOff < state.TickOf[step.Key].Sequence);
    }

    // A part that is off is treated again where it lies; one that is on must come off for it again.
    private static bool IsUndoneAtSource(WorkStep step, bool isOff) => IsWork(step) && !(isOff && step.Action is StepAction.Remove);

    /// <summary>Work whose worth ends when the part is dirty: off, looked at for debris, cleaned, tested, on. Looks whether a part has failed keep theirs.</summary>
    private static bool IsWork(WorkStep step) => step.About == LookAbout.Debris || step.Phase is Phase.Strip or Phase.CleanOut or Phase.Test or Phase.Refit && step.Action != StepAction.Note;

    private static long RemovedAt(JobState state, string part) => state.Steps.All
        .Where(step => step.Action == StepAction.Remove && step.Parts.Contains(part) && state.IsDone(step))
        .Max(step => state.TickOf[step.Key].Sequence);
}
