using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Looks;

/// <summary>
/// What each part needs, and under which condition, with the looks held fixed. How likely a find is plays no part in it.
/// <para>
/// A part that can be reached from a source without passing any look is treated always, every other part if debris was found at one of its last looks
/// (<see cref="LookFlow"/>), a part that nothing spares whenever there is any way to it, one that takes two clean places by <see cref="LastTwoLooks"/>. What
/// a find makes worse is there with its condition, and what it replaces is struck.
/// </para>
/// <para>Cost: linear in parts and joints for each debris, times looks and the sizes that something passes; and that of the histories.</para>
/// </summary>
internal static class Deciding
{
    /// <summary>Answers the question with these looks, in order of work.</summary>
    /// <exception cref="ArgumentException">The looks are not such as may decide together: <see cref="FixedLooks.Of(LookQuestion, ImmutableArray{ImmutableArray{PartId}})"/>, and the places of one look are due together.</exception>
    public static DecidedPlan Of(LookQuestion question, ImmutableArray<ImmutableArray<PartId>> looks)
    {
        ArgumentNullException.ThrowIfNull(question);
        return Of(FixedLooks.Of(question, looks));
    }

    /// <summary>Answers the question with these looks.</summary>
    public static DecidedPlan Of(FixedLooks looks)
    {
        var reckoning = Reckoning.Of(looks);
        ImmutableArray<int> due = Dueness.Of(looks, reckoning);
        ImmutableArray<PartLooks> parts = PartConditions.Of(looks, reckoning);
        return new DecidedPlan(
            [.. due.Select((mask, look) => new DecidingLook(
                [.. looks.Places[look].Select(place => looks.Family.Parts[place].Id)],
                [.. looks.Ways.Where(ways => looks.IsFor(look, ways)).Select(ways => ways.Debris)],
                mask == 0 ? LookCondition.Always : LookMask.ToCondition(mask),
                [.. parts.Where(part => part.When is { } when && when.OnlyIf.Contains(look)).Select(part => part.Part.Id)])
            {
                IsNeverDue = mask == 0,
            })],
            parts,
            Looks.Histories.Of(looks, due, reckoning.Disproofs.AreNone));
    }
}
