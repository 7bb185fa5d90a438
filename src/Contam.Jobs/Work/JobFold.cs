using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Contam.Plans;

namespace Contam.Jobs.Work;

/// <summary>Folds a job's entries into how it stands. A pure function: the same entries give the same state. Linear in entries, but for looks at the readings of one part.</summary>
internal sealed class JobFold
{
    private readonly Func<string, PlanDocument> planOf;
    private readonly Dictionary<string, Tick> tickOf = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> reopened = new(StringComparer.Ordinal);
    private readonly List<LookTaken> looks = [];
    private readonly List<ReadingTaken> readings = [];
    private readonly List<string> ordered = [];
    private readonly List<string> arrived = [];
    private readonly List<string> away = [];
    private readonly List<string> sentOff = [];
    private readonly List<LookMade> made = [];
    private readonly Dictionary<string, Decided> outcomes = new(StringComparer.Ordinal);
    private ImmutableArray<LookStands> looksStand = [];
    private Opened? opened;
    private PlanDocument? plan;
    private string planSha256 = "";
    private WorkSteps? steps;
    private long? releasedAt;
    private Withdrawn? withdrawn;

    /// <summary>A fold of no entry yet.</summary>
    public JobFold(Func<string, PlanDocument> planOf)
    {
        this.planOf = planOf;
    }

    /// <summary>The state that these entries come to.</summary>
    /// <param name="entries">In order, from the first; their sequences are 1, 2, 3, …</param>
    /// <param name="planOf">The plan of a hash.</param>
    /// <exception cref="ArgumentException">The first entry does not open a job, or a later one does.</exception>
    public static JobState Fold(IEnumerable<EntryBody> entries, Func<string, PlanDocument> planOf)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(planOf);
        var fold = new JobFold(planOf);
        long sequence = 0;
        foreach (EntryBody entry in entries)
            fold.Take(++sequence, entry);
        return fold.State();
    }

    /// <summary>The state after what was taken. It holds until the next entry is taken.</summary>
    public JobState State()
    {
        if (opened is null || plan is null || steps is null)
            throw new ArgumentException("a job begins with the entry that opens it");
        return new JobState
        {
            Opened = opened,
            Plan = plan,
            PlanSha256 = planSha256,
            Steps = steps,
            TickOf = tickOf,
            ReopenedBecause = reopened,
            Looks = [.. looks],
            Made = [.. made],
            Outcomes = outcomes,
            LooksStand = looksStand,
            Readings = [.. readings],
            Ordered = [.. ordered],
            Arrived = [.. arrived],
            Away = [.. away],
            SentOff = [.. sentOff],
            OutOfTurn = [.. tickOf.Values.Where(tick => tick.Entry.Anyway is not null).OrderBy(tick => tick.Sequence)],
            ReleasedAt = releasedAt,
            Withdrawn = withdrawn,
        };
    }

    /// <summary>Takes the next entry.</summary>
    public void Take(long sequence, EntryBody entry)
    {
        if (entry is Opened != (sequence == 1))
            throw new ArgumentException(sequence == 1 ? "a job begins with the entry that opens it" : "a job is opened once");
        switch (entry)
        {
            case Opened one:
                opened = one;
                TakePlan(one.Plan, []);
                looks.AddRange(one.Looks.Select(seen => new LookTaken(sequence, seen, seen.LookedBy ?? one.By, IsAnswered: true)));
                break;
            case Ticked one:
                TakeTick(sequence, one);
                break;
            case Unticked one:
                OpenAgain(new OpenAgain(one.Step.Key, one.Because));
                foreach (OpenAgain also in one.Reopened)
                    OpenAgain(also);
                looksStand = one.Looks ?? looksStand;
                if (steps!.Find(one.Step.Key) is not { IsBeforeRelease: false })
                    releasedAt = null;
                break;
            case Measured one:
                readings.Add(new ReadingTaken(sequence, one, IsStale: false));
                if (one.Verdict is not ("good" or "marginal"))
                    releasedAt = null;
                break;
            case Supplied one:
                AddOnce(one.Arrived ? arrived : ordered, one.Item);
                break;
            case Moved one:
                TakeMove(one);
                break;
            case Looked one:
                looks.Add(new LookTaken(sequence, one.Seen, one.By, IsAnswered: false));
                if (one.Seen.Found)
                    releasedAt = null;
                break;
            case Decided one:
                TakeOutcome(sequence, one);
                break;
            case Replanned one:
                TakeReplanned(one);
                break;
            case Released:
                releasedAt = sequence;
                withdrawn = null;
                break;
            case Withdrawn one:
                releasedAt = null;
                withdrawn = one;
                break;
            default:
                // Notes and photos change nothing.
                break;
        }
    }

    private void TakePlan(string sha256, ImmutableArray<CarriedStep> carried)
    {
        planSha256 = sha256;
        plan = planOf(sha256);
        steps = WorkSteps.Of(plan, carried);
        outcomes.Clear();
        looksStand = LookTable.Unsaid(plan);
        for (int index = 0; index < made.Count; index++)
            made[index] = made[index] with { IsOfThisPlan = false };
    }

    private void TakeOutcome(long sequence, Decided entry)
    {
        if (outcomes.ContainsKey(entry.Look))
            Forget(entry.Look);
        outcomes[entry.Look] = entry;
        made.Add(new LookMade(sequence, entry, plan!.Looks.FirstOrDefault(look => look.Id == entry.Look) ?? throw new ArgumentException($"the plan has no look {entry.Look}"), IsOfThisPlan: true));
        looks.AddRange(entry.Seen.Select(seen => new LookTaken(sequence, seen, entry.By, IsAnswered: !(seen.Found && entry.Beyond == true))));
        foreach (OpenAgain one in entry.Reopened)
            OpenAgain(one);
        looksStand = entry.Looks;
        releasedAt = null;
    }

    /// <summary>An outcome no longer counts. A find stays one.</summary>
    private void Forget(string letter)
    {
        outcomes.Remove(letter);
        if (made.FindIndex(one => one.IsOfThisPlan && one.Entry.Look == letter) is not (>= 0 and var place))
            return;
        looks.RemoveAll(look => look.Sequence == made[place].Sequence && !look.Seen.Found);
        made.RemoveAt(place);
    }

    private void TakeTick(long sequence, Ticked entry)
    {
        tickOf[entry.Step.Key] = new Tick(sequence, entry);
        reopened.Remove(entry.Step.Key);
        if (steps!.Find(entry.Step.Key) is { Action: StepAction.Refit } refit)
            sentOff.RemoveAll(refit.Parts.Contains);
        // What was measured before the part was worked on says nothing of how it is now.
        if (steps!.Find(entry.Step.Key) is { Action: StepAction.Flush or StepAction.Clean or StepAction.Replace or StepAction.SendOut or StepAction.Remove } step)
            Stale(step.Parts);
    }

    private void TakeMove(Moved entry)
    {
        // What was measured before it went, or before it was at the workshop, says nothing of how it comes back.
        Stale([entry.Part]);
        foreach (OpenAgain one in entry.Reopened)
            OpenAgain(one);
        looksStand = entry.Looks ?? looksStand;
        if (entry.Back)
        {
            away.Remove(entry.Part);
            // A part that no step puts back goes on by the same hands that took it off.
            if (!steps!.All.Any(step => step.Action == StepAction.Refit && step.Parts.Contains(entry.Part)))
                sentOff.Remove(entry.Part);
            return;
        }

        AddOnce(away, entry.Part);
        AddOnce(sentOff, entry.Part);
        releasedAt = null;
    }

    private void TakeReplanned(Replanned entry)
    {
        foreach (OpenAgain one in entry.Reopened)
            OpenAgain(one);
        TakePlan(entry.Plan, entry.Carried);
        for (int index = 0; index < looks.Count; index++)
        {
            if (entry.Answers.Contains(looks[index].Sequence))
                looks[index] = looks[index] with { IsAnswered = true };
        }

        releasedAt = null;
    }

    private void OpenAgain(OpenAgain one)
    {
        if (steps!.Find(one.Key) is { Action: not (StepAction.Refit or StepAction.Prove) } step)
            Stale(step.Parts);
        // A clean look whose step is open again is to be made again; a find stays one.
        foreach (string letter in steps!.Find(one.Key)?.Looks ?? [])
        {
            if (outcomes.TryGetValue(letter, out Decided? outcome) && outcome.Outcome == "clean")
                Forget(letter);
        }

        tickOf.Remove(one.Key);
        reopened[one.Key] = one.Because;
    }

    private void Stale(ImmutableArray<string> parts)
    {
        for (int index = 0; index < readings.Count; index++)
        {
            if (!readings[index].IsStale && parts.Contains(readings[index].Entry.Part))
                readings[index] = readings[index] with { IsStale = true };
        }
    }

    private static void AddOnce(List<string> list, string one)
    {
        if (!list.Contains(one))
            list.Add(one);
    }
}
