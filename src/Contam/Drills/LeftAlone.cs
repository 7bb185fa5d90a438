using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Drills;

/// <summary>
/// Asks what can be left alone once one look of the plan is clean: just one choice is struck then. The others hang on another look that is still to be made, or
/// are treated whatever the looks show.
/// </summary>
internal static class LeftAlone
{
    private const int MostWrong = 3;
    private const int LeastWrong = 2;

    public static Posed Pose(DrillRequest request)
    {
        PlanDocument plan = Planner.Plan(new PlanRequest(request.Family, request.Standard, request.Failures, request.Debris) { TakesFirstSchedule = true, MostLooks = HowFar.MostLooks });
        if (plan.Looks.IsEmpty)
            return Posed.Not(DrillKind.LeftAlone, DrillSilence.NoLookDecides);
        var dice = new DrillDice(request.Seed, DrillKind.LeftAlone);
        HashSet<PartId> places = [.. plan.Looks.SelectMany(look => look.Places).Select(id => new PartId(id))];
        HashSet<string> failed = [.. request.Failed.Select(part => part.Value)];
        var pastNoLook = ShortestWays.From(request, isShut: places.Contains);
        foreach (PlanLook look in dice.Shuffled(plan.Looks))
        {
            HashSet<string> closed = NotFoundWith(plan.Looks, look.Id);
            HashSet<string> treated = TreatedWith(request, look);
            LeftAloneChoice[] all = [.. plan.Parts.Where(part => part.Treatment.Length > 0 && !failed.Contains(part.Id) && !look.Places.Contains(part.Id)).Select(Of)];
            // A step may be done for what has to be known before another look: what nothing asks for any more is no wrong choice, though the sheet does not strike it.
            LeftAloneChoice[] right = [.. all.Where(choice => choice.IsRight && !treated.Contains(choice.Part.Value))];
            LeftAloneChoice[] still = [.. all.Where(choice => !choice.IsRight && treated.Contains(choice.Part.Value))];
            List<LeftAloneChoice> wrong = Mixed.Of(dice, MostWrong, [.. still.Where(choice => choice.StillOpen.Length > 0)], (IReadOnlyCollection<LeftAloneChoice>)[.. still.Where(choice => choice.OnlyIf.IsEmpty)]);
            if (right.Length > 0 && wrong.Count >= LeastWrong)
                return Posed.As(new DrillQuestion(DrillKind.LeftAlone, [.. dice.Shuffled<DrillChoice>([dice.Pick(right), .. wrong])]) { Looks = plan.Looks, CleanLook = look.Id });

            LeftAloneChoice Of(PlanPart part) => new(new PartId(part.Id), part.OnlyIf)
            {
                StillOpen = [.. part.OnlyIf.Where(letter => !closed.Contains(letter))],
                Path = part.OnlyIf.IsEmpty ? pastNoLook.PathTo(new PartId(part.Id)) : [],
            };
        }

        return Posed.Not(DrillKind.LeftAlone, DrillSilence.TooFewParts);
    }

    /// <summary>The parts that are treated where this look is on record as clean and no other is made.</summary>
    private static HashSet<string> TreatedWith(DrillRequest request, PlanLook clean)
    {
        var asked = new PlanRequest(request.Family, request.Standard, request.Failures, request.Debris)
        {
            TakesFirstSchedule = true,
            Findings = [.. clean.Places.SelectMany(place => request.Debris.Select(debris => new Finding(new PartId(place), debris, Found: false)))],
        };
        return [.. Planner.Plan(asked).Parts.Where(part => !part.Treatment.IsEmpty).Select(part => part.Id)];
    }

    /// <summary>The letters of the looks that find nothing where this one is clean: itself, and those that are not made then.</summary>
    private static HashSet<string> NotFoundWith(ImmutableArray<PlanLook> looks, string clean)
    {
        var closed = new HashSet<string>(StringComparer.Ordinal) { clean };
        // A look hangs on earlier ones alone.
        foreach (PlanLook look in looks.Where(look => look.OnlyIf.Length > 0 && look.OnlyIf.All(closed.Contains)))
            closed.Add(look.Id);
        return closed;
    }
}
