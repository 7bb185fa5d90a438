using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Looks;
using Contam.Procedure;
using Contam.Treatment;

namespace Contam.Plans;

/// <summary>The deciding looks of a plan, and what hangs on them: what the choice of looks came to, in the words of the procedure and of the document.</summary>
internal sealed class Branching
{
    private readonly LookQuestion question;
    private readonly LookPlan chosen;
    private readonly Dictionary<PartId, PartLooks> partOf;
    private readonly Dictionary<LookCondition, ulong[]> metIn = [];

    private Branching(LookQuestion question, LookPlan chosen)
    {
        this.question = question;
        this.chosen = chosen;
        partOf = chosen.Plan.Parts.ToDictionary(part => part.Part.Id);
    }

    /// <summary>For this request; <c>null</c> for a flat plan.</summary>
    /// <exception cref="ArgumentException">The looks that are asked for cannot decide.</exception>
    public static Branching? Of(PlanRequest request)
    {
        if (request is { MostLooks: 0, LookAt: null })
            return null;
        if (request.Debris.IsEmpty)
            return request.LookAt is null ? null : throw new ArgumentException("nothing was shed and nothing was found, so that a look decides nothing", nameof(request));
        ChoiceQuestion asked = HowFar.QuestionOf(request);
        LookPlan chosen = DecidingLooks.Choose(asked);
        if (chosen.Plan.Looks.FirstOrDefault(look => look.IsNeverDue) is { } never)
            throw new ArgumentException($"a look at {never.Places[0]} decides nothing: what is on record clears every way to it", nameof(request));
        return chosen.Plan.Looks.IsEmpty ? null : new Branching(asked.Question, chosen);
    }

    public int Count => chosen.Plan.Looks.Length;

    /// <summary>Every way in which the looks can come out, that with all of them clean first, and how likely it is.</summary>
    public IEnumerable<(LookHistory History, double Likely)> Histories => chosen.Plan.Histories!.Value.Zip(chosen.Likely);

    /// <summary>What every part could need, in the order of the family.</summary>
    public ImmutableArray<PartTreatment> Treatments => [.. chosen.Plan.Parts.Select(part => new PartTreatment(part.Part, [.. part.Treatments.Select(one => one.Treatment)], RuleOf(part)))];

    /// <summary>The looks for the procedure.</summary>
    public ImmutableArray<PlannedLook> Looks(Family family) =>
        [.. chosen.Plan.Looks.Select(look => new PlannedLook([.. look.Places.Select(place => family[place])], look.Due))];

    /// <summary>When each treatment is done.</summary>
    public Dictionary<(PartId, TreatmentKind), LookCondition> When() =>
        chosen.Plan.Parts.SelectMany(part => part.Treatments.Select(one => (Key: (part.Part.Id, one.Treatment), one.When))).ToDictionary(one => one.Key, one => one.When);

    /// <summary>What each grade that can come about asks for at a part.</summary>
    public ImmutableArray<GradeAsk> AsksOf(Part part) => partOf.TryGetValue(part.Id, out PartLooks? looks) ? looks.Asks : [];

    /// <summary>The looks for the document.</summary>
    /// <param name="jobs">Their jobs, by number.</param>
    /// <param name="steps">The steps.</param>
    public ImmutableArray<PlanLook> Of(IReadOnlyList<int> jobs, ImmutableArray<PlanStep> steps) =>
    [
        .. chosen.Plan.Looks.Select((look, place) => new PlanLook
        {
            Id = Letter(place),
            Places = [.. look.Places.Select(part => part.Value)],
            Debris = [.. look.Debris.Select(debris => debris.Name)],
            Step = jobs[place] + 1,
            Minutes = Rounded(chosen.Figures[place].Minutes),
            OnlyIf = Letters(PlannedLooks.Simplest([.. chosen.Plan.Looks.Select(one => one.Due)], look.Due).OnlyIf),
            Odds = Math.Round(chosen.Figures[place].Odds, 4),
            Clears = [.. look.Clears.Select(part => part.Value)],
            MinutesHanging = Rounded(steps.Where(step => step.Technician is not null && step.OnlyIf.Contains(Letter(place))).Sum(step => step.Minutes)),
        }),
    ];

    /// <summary>Which finds make which clean looks void, for the document.</summary>
    public ImmutableArray<PlanDisproof> Disproofs() =>
    [
        .. new KnownVoids(FixedLooks.Of(question, [.. chosen.Plan.Looks.Select(look => look.Places)])).Rules()
            .Select(rule => new PlanDisproof(Letters(LookMask.Looks(rule.Found)), Letters(LookMask.Looks(rule.Clean)), Letters(LookMask.Looks(rule.Void)))),
    ];

    /// <summary>Whether a job is done wherever these two are, over every history.</summary>
    public bool IsDoneWhere(LookCondition job, LookCondition one, LookCondition other)
    {
        if (job.IsAlways)
            return true;
        ulong[] met = MetIn(job), first = MetIn(one), second = MetIn(other);
        for (int i = 0; i < met.Length; i++)
        {
            if ((first[i] & second[i] & ~met[i]) != 0)
                return false;
        }

        return true;
    }

    private ulong[] MetIn(LookCondition condition)
    {
        if (metIn.TryGetValue(condition, out ulong[]? known))
            return known;
        ImmutableArray<LookHistory> histories = chosen.Plan.Histories!.Value;
        var bits = new ulong[(histories.Length + 63) / 64];
        for (int i = 0; i < histories.Length; i++)
            bits[i / 64] |= histories[i].Meets(condition) ? 1UL << (i % 64) : 0;
        metIn.Add(condition, bits);
        return bits;
    }

    /// <summary>The letters of looks.</summary>
    public static ImmutableArray<string> Letters(ImmutableArray<int> looks) => [.. looks.Select(Letter)];

    private static string Letter(int look) => LookCondition.LetterOf(look).ToString(CultureInfo.InvariantCulture);

    // Where one debris asks for a new part, that rule is the reason a person wants to read.
    private static Rule? RuleOf(PartLooks part) => part.Treatments.IsEmpty ? null
        : (part.Asks.FirstOrDefault(ask => ask.Choice.Treatments.Contains(TreatmentKind.Replace)) ?? part.Asks.FirstOrDefault())?.Choice.Rule ?? part.MadeGoodBy;

    private static double Rounded(double minutes) => Math.Round(minutes, 2, MidpointRounding.AwayFromZero);
}
