using System.Collections.Immutable;
using Contam.Families;
using Contam.Looks;
using Contam.Procedure;
using Contam.Treatment;

namespace Contam.Plans;

/// <summary>
/// How far to go after a failure: the few looks that decide most, what is sure whatever they show, and what hangs on which of them. Whatever the looks show,
/// every part that the debris could have reached then is treated; how often debris passes on chooses the looks and never what is treated.
/// </summary>
public static class HowFar
{
    /// <summary>The most looks that there are letters for.</summary>
    public const int MostLooks = 16;

    /// <summary>Answers for this failure. The same question always gives the same answer.</summary>
    /// <param name="request">Family, standard, failure, debris, and what was seen beforehand.</param>
    /// <param name="mostLooks">The most looks, from 0 to <see cref="MostLooks"/>.</param>
    /// <param name="lookAt">Where to look, held fixed; <c>null</c> to have it chosen.</param>
    /// <exception cref="ArgumentOutOfRangeException">More looks are asked for than there are letters, or fewer than none.</exception>
    /// <exception cref="ArgumentException">No debris is asked about, or a place is named at which a look decides nothing, or too many are.</exception>
    /// <exception cref="KeyNotFoundException">A part is named that the family does not have.</exception>
    public static LooksAnswer Of(PlanRequest request, int mostLooks = MostLooks, ImmutableArray<PartId>? lookAt = null)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (request.Debris.IsDefaultOrEmpty)
            throw new ArgumentException("looks need a debris to look for", nameof(request));
        ChoiceQuestion asked = QuestionOf(request) with { MostLooks = mostLooks, LookAt = lookAt };
        LookPlan plan = DecidingLooks.Choose(asked);
        double without = plan.Plan.Looks.IsEmpty ? plan.MinutesMost : DecidingLooks.Choose(asked with { MostLooks = 0, LookAt = null }).MinutesMost;
        return new LooksAnswer(
            [.. plan.Plan.Looks.Select((look, place) => LookOf(look, place, plan.Figures[place]))],
            [.. plan.Plan.Parts.Select(part => new PartOfLooks(part.Part.Id.Value, part.When, [.. part.Treatments.Select(one => new TreatmentOfLooks(one.Treatment, one.When))]))],
            new LooksMinutes(Rounded(plan.MinutesAllClean), Rounded(plan.MinutesExpected), Rounded(plan.MinutesMost), Rounded(without)),
            plan.Method switch
            {
                ChoiceMethod.Named => LooksChosen.Named,
                ChoiceMethod.All => LooksChosen.OfAll,
                _ => LooksChosen.BySearch,
            },
            plan.Plan.Histories?.Length ?? 1)
        {
            PlacesThatCount = plan.PlacesThatCould,
        };
    }

    /// <summary>What the choice of looks is asked.</summary>
    internal static ChoiceQuestion QuestionOf(PlanRequest request)
    {
        var question = new LookQuestion(request.Family, request.Standard, request.Failures.InOrderOf(request.Family), [.. request.Debris.Distinct()])
        {
            Findings = request.Findings,
        };
        return new ChoiceQuestion(question, new WorkTimes(request.Standard).Of, new PassingOn(request.Standard).ShareOf) { MostLooks = request.MostLooks, LookAt = request.LookAt };
    }

    private static LookToMake LookOf(DecidingLook look, int place, LookFigures figures) => new(
        LookCondition.LetterOf(place),
        [.. look.Places.Select(part => part.Value)],
        [.. look.Debris.Select(debris => debris.Name)],
        look.Due,
        Rounded(figures.Minutes),
        Math.Round(figures.Odds, 4),
        Rounded(figures.MinutesHanging),
        [.. look.Clears.Select(part => part.Value)]);

    private static double Rounded(double minutes) => Math.Round(minutes, 2, MidpointRounding.AwayFromZero);
}
