using System.Collections.Immutable;
using Contam.Families;
using Contam.Problems;

namespace Contam.Audits;

/// <summary>What all failures of one family show together. What is so for every number of a repeated part is told once.</summary>
internal sealed class FamilyAudit(Family family, ImmutableArray<FailureRun> runs)
{
    private readonly ILookup<string, Part> repeats = family.Parts.ToLookup(part => part.RepeatOf ?? "", StringComparer.Ordinal);

    /// <summary>The messages, by <see cref="AuditCodes.All"/>, then in the order of the family.</summary>
    public IEnumerable<AuditMessage> Messages() =>
    [
        .. Refused(), .. UnderRule(seen => seen.IsWithoutRule, AuditWords.NoRule), .. Unreached(), .. Unproved(),
        .. UnderRule(seen => seen.IsUnderGeneralRule, AuditWords.GeneralRule), .. WithoutLook(), .. ReachingMost(), .. WithoutTime(),
    ];

    private IEnumerable<AuditMessage> Refused() => runs.Where(run => run.Refused is not null)
        .Select(run => AuditWords.PlanRefused(family, run.Part, run.Debris, run.Refused!));

    private IEnumerable<AuditMessage> UnderRule(Func<SeenPart, bool> isSo, Func<Family, Part, string, string[], AuditMessage> say) => AtParts(
        "no-rule",
        index => [.. runs.Where(run => run.Reached.Any(seen => seen.Index == index && isSo(seen))).Select(run => run.Debris.Name).Distinct()],
        (part, name, debris) => say(family, part, name, debris));

    private IEnumerable<AuditMessage> Unreached()
    {
        var isReached = new bool[family.Parts.Length];
        foreach (int index in runs.SelectMany(run => run.Reached.Where(seen => !seen.IsFailed).Select(seen => seen.Index).Concat(run.Conditional)))
            isReached[index] = true;
        var entered = family.Joints.Select(joint => joint.To).ToHashSet();
        // What is free comes in from outside: air at the airbox, sea water at the sea cock.
        var free = family.Fluids.Where(fluid => fluid.IsFree).Select(fluid => fluid.Id).ToHashSet(StringComparer.Ordinal);
        // So does what is kept in no tank or sump, where nobody says which fluid it is.
        bool ComesFromOutside(Circuit circuit) => circuit.Fluid is { } fluid ? free.Contains(fluid) : !circuit.Parts.Any(id => family[id].Kind.IsReservoir);
        var begins = family.Circuits.Where(ComesFromOutside).SelectMany(circuit => circuit.Parts).ToHashSet();
        // What sheds something of its own may well stand outside all fluids, as a belt does.
        bool IsForgotten(Part part) => !entered.Contains(part.Id) && part.Sheds.IsEmpty && !part.Kind.FluidMayEnd && !begins.Contains(part.Id);
        return
        [
            .. AtParts("on-no-run", index => !isReached[index] && IsForgotten(family.Parts[index]) ? [""] : [], (part, name, _) => AuditWords.NoWayIn(family, part, name)),
            .. AtParts(
                "on-no-run",
                index => !isReached[index] && (family.Parts[index].Sheds.IsEmpty || !entered.Contains(family.Parts[index].Id)) && !IsForgotten(family.Parts[index]) ? [""] : [],
                (part, name, _) => AuditWords.NeverReached(family, part, name)),
        ];
    }

    private IEnumerable<AuditMessage> Unproved()
    {
        var measured = family.Limits.Select(limit => limit.Part).ToHashSet();
        return AtParts(
            "critical-without-test",
            index => family.Parts[index] is { IsCritical: true } part && !measured.Contains(part.Id) && part.Inspect is not { Shows: Shows.Good }
                ? [.. runs.Where(run => run.Reached.Any(seen => seen.Index == index && !IsProof(seen))).Select(run => run.Debris.Name).Distinct()]
                : [],
            (part, name, debris) => AuditWords.CriticalWithoutProof(family, part, name, debris));
    }

    private static bool IsProof(SeenPart seen) => seen.Treatment.Any(treatment => treatment is TreatmentKind.Test or TreatmentKind.Replace);

    // A critical part is treated whatever is found elsewhere, so a look before it would spare nothing.
    private IEnumerable<AuditMessage> WithoutLook() => AtParts(
        "nowhere-to-look",
        index =>
        {
            SeenPart[] exposed = [.. runs.SelectMany(run => run.Reached).Where(seen => seen.Index == index && !seen.IsFailed && seen.Grade == Grade.Exposed)];
            return exposed.Length > 0 && !family.Parts[index].IsCritical && exposed.All(seen => seen.HasNoLookBefore) ? [Wording.Number(exposed.Length)] : [];
        },
        (part, name, counts) => AuditWords.NoLookBefore(family, part, name, counts));

    private IEnumerable<AuditMessage> ReachingMost() => family.Parts.SelectMany(part => part.Sheds).Select(shed => shed.Debris).Distinct().SelectMany(debris =>
    {
        var most = runs.Where(run => run.Debris == debris && 2 * run.Answer.Reached > family.Parts.Length).ToDictionary(run => family.IndexOf(run.Part.Id), run => run.Answer.Reached);
        return AtParts(
            "",
            index => most.TryGetValue(index, out int reached) ? [Wording.Number(reached)] : [],
            (part, name, reached) => AuditWords.ReachesMost(family, part, name, debris, reached[0]));
    });

    private IEnumerable<AuditMessage> WithoutTime()
    {
        ILookup<int, StepAction> untimed = runs.SelectMany(run => run.Untimed).Distinct().ToLookup(one => one.Part, one => one.Action);
        return AtParts(
            "",
            index => [.. untimed[index].Where(action => !IsMeantWithoutTime(family.Parts[index], action)).Order().Select(AuditWords.Word)],
            (part, name, actions) => AuditWords.StepWithoutTime(family, part, name, actions));
    }

    private static bool IsMeantWithoutTime(Part part, StepAction action) => action switch
    {
        StepAction.Inspect => IsMeant(part, "look-without-time"),
        StepAction.SendOut => IsMeant(part, "away-without-days"),
        _ => false,
    };

    private static bool IsMeant(Part part, string code) => part.Meant.Any(meant => meant.Code == code);

    /// <summary>A message for every part at which something is seen, or one for all numbers of a repeated part at which the same is seen.</summary>
    /// <param name="lint">The lint that silences it where it is meant, or empty.</param>
    /// <param name="see">What is seen at the part of this place; nothing for none.</param>
    /// <param name="say">How it is worded, with the name that stands for all.</param>
    private IEnumerable<AuditMessage> AtParts(string lint, Func<int, string[]> see, Func<Part, string, string[], AuditMessage> say)
    {
        var seen = new List<(Part Part, string[] What, string Key)>();
        for (int index = 0; index < family.Parts.Length; index++)
        {
            Part part = family.Parts[index];
            if (!IsMeant(part, lint) && see(index) is { Length: > 0 } what)
                seen.Add((part, what, string.Join(' ', what)));
        }

        foreach (IGrouping<(string, string), (Part Part, string[] What, string Key)> alike in seen.GroupBy(one => (one.Part.RepeatOf ?? one.Part.Id.Value + "!", one.Key)))
        {
            (Part Part, string[] What, string Key)[] all = [.. alike];
            Part first = all[0].Part;
            if (first.RepeatOf is { } repeat && all.Length == repeats[repeat].Count())
                yield return say(first, repeat + "-#", all[0].What);
            else
                foreach ((Part part, string[] what, _) in all)
                    yield return say(part, part.Id.Value, what);
        }
    }
}
