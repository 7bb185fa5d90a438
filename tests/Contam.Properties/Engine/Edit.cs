using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.Support;
using Contam.Support.Generation;

namespace Contam.Properties.Engine;

/// <summary>Something that somebody changes in a plan so that it asks for less, or for something else, than it should.</summary>
/// <param name="What">What is changed, in words.</param>
/// <param name="Plan">The plan as changed.</param>
internal sealed record Edit(string What, PlanDocument Plan);

/// <summary>Draws edits of a plan. Every one of them weakens the plan, however well it is covered up.</summary>
internal sealed class Edits(TestCase asked, PlanDocument plan, Random random)
{
    /// <summary>One edit of every sort that this plan has something to be edited by.</summary>
    internal IEnumerable<(string Sort, Edit Edit)> OneOfEach()
    {
        foreach (Func<Edit?> edit in All())
        {
            if (edit() is { } made)
                yield return (edit.Method.Name, made);
        }
    }

    /// <summary>The names of all sorts.</summary>
    internal IEnumerable<string> Sorts => All().Select(edit => edit.Method.Name);

    private Func<Edit?>[] All() =>
    [
        DropPart, DropPartAndCountIt, DropStep, DropStepAndCloseTheGap, DropTreatment, DropAllTreatment, LowerGrade, LowerReach, LowerSource,
        ChangeHop, ChangeSource, ChangePath, SwapWorkAtOnePart, SwapStepWithWhatItWaitsFor, StartEarly, DropSeal, NameNobody, TwoAtOnce,
        DropConditional, CountWrong, OtherHash, OtherFamily, DropEvidence, AcceptFinding, ForgetFind, DropDebrisLine,
    ];

    private Edit? DropPart() => plan.Parts.Length == 0 ? null
        : new Edit("a part is dropped", plan with { Parts = plan.Parts.RemoveAt(random.Next(plan.Parts.Length)) });

    private Edit? DropPartAndCountIt() => plan.Parts.Length == 0 ? null
        : new Edit("a part is dropped and counted as clear", plan with { Parts = plan.Parts.RemoveAt(random.Next(plan.Parts.Length)), Clear = plan.Clear + 1 });

    private Edit? DropDebrisLine() => OfParts("a line of a part is dropped", part => part.Exposure.Length > 1, part => part with
    {
        Exposure = part.Exposure.RemoveAt(random.Next(part.Exposure.Length)),
    });

    private Edit? DropStep()
    {
        // The last step leaves no gap; that it is missed is another edit's business.
        return plan.Steps.Length < 2 ? null : new Edit("a step is dropped", plan with { Steps = plan.Steps.RemoveAt(random.Next(plan.Steps.Length - 1)) });
    }

    private Edit? DropStepAndCloseTheGap()
    {
        PlanStep[] needed = [.. plan.Steps.Where(IsNeeded)];
        if (needed.Length == 0)
            return null;
        PlanStep dropped = random.Of(needed);
        return new Edit($"step {dropped.Number} ({dropped.Action} {Name(dropped)}) is dropped and the rest renumbered", plan with { Steps = Without([dropped]) });
    }

    // That a loop is flushed through a part which is only to be cleaned is no fault, so there a flush dropped from the list would weaken nothing.
    private Edit? DropTreatment() => OfParts("a treatment is dropped", part => part.Treatment.Length > 1, part => part with
    {
        Treatment = part.Treatment.Remove(random.Of([.. part.Treatment.Where(kind => kind != TreatmentKind.Flush || plan.Steps.All(step => !step.Parts.Contains(part.Id)))])),
    });

    private Edit? DropAllTreatment()
    {
        PlanPart[] treated = [.. plan.Parts.Where(part => part.Treatment.Length > 0)];
        if (treated.Length == 0)
            return null;
        PlanPart spared = random.Of(treated);
        return new Edit($"{spared.Id} is left alone altogether", plan with
        {
            Parts = plan.Parts.Replace(spared, spared with { Treatment = [] }),
            Steps = Without([.. plan.Steps.Where(step => step.Part == spared.Id && step.Phase is Phase.Strip or Phase.CleanOut or Phase.Test or Phase.Refit)]),
        });
    }

    private Edit? LowerGrade() => OfLines("a grade is lowered", line => line.Grade != Grade.Cleared, line => line with
    {
        Grade = line.Grade == Grade.Exposed && random.Next(2) == 0 ? Grade.Guarded : Grade.Cleared,
    });

    private Edit? LowerReach() => OfLines("a reach is lowered", line => line.ReachUm != 0, line => line with
    {
        ReachUm = line.ReachUm is { } reach ? reach * random.NextDouble() * 0.999 : random.Next(0, 5000),
    });

    // Cover the lower reach up all the way down the hops.
    private Edit? LowerSource()
    {
        string debris = random.Of(plan.Debris);
        double below = random.Next(1, 400);
        bool changed = false;
        ImmutableArray<PlanPart> parts = [.. plan.Parts.Select(part => part with
        {
            Exposure = [.. part.Exposure.Select(line =>
            {
                if (line.Debris != debris || (line.ReachUm ?? double.PositiveInfinity) <= below)
                    return line;
                changed = true;
                return line with { ReachUm = below };
            })],
        })];
        return changed ? new Edit($"every reach by {debris} is cut down to {below}", plan with { Parts = parts }) : null;
    }

    private Edit? ChangeHop() => OfLines("a hop is changed", _ => true, (part, line) =>
    {
        HashSet<string> before = [.. asked.Family.Joints.Where(joint => joint.To.Value == part.Id).Select(joint => joint.From.Value), line.Via ?? ""];
        string[] others = [.. asked.Family.Parts.Select(other => other.Id.Value).Where(other => !before.Contains(other))];
        return others.Length == 0 ? line with { Via = line.Via is null ? part.Id + "x" : null } : line with { Via = random.Of(others) };
    });

    private Edit? ChangeSource() => OfLines("a source is changed", _ => asked.Family.Parts.Length > 1, line => line with
    {
        From = random.Of([.. asked.Family.Parts.Select(part => part.Id.Value).Where(part => part != line.From)]),
    });

    private Edit? ChangePath() => OfParts("a path is changed", part => part.Path.Length > 1, part => part with
    {
        Path = random.Next(3) switch
        {
            0 => part.Path.RemoveAt(random.Next(part.Path.Length)),
            1 => part.Path.Insert(random.Next(part.Path.Length), random.Of(asked.Family.Parts).Id.Value),
            _ => [.. part.Path.Reverse()],
        },
    });

    // Off, the last cleaning, and on again have only one order.
    private Edit? SwapWorkAtOnePart()
    {
        PlanPart[] removed = [.. plan.Parts.Where(part => plan.Steps.Any(step => step.Part == part.Id && step.Action == StepAction.Refit && step.Phase == Phase.Refit))];
        if (removed.Length == 0)
            return null;
        string id = random.Of(removed).Id;
        PlanStep refit = plan.Steps.First(step => step.Part == id && step.Action == StepAction.Refit);
        PlanStep[] before = [.. plan.Steps.Where(step => step.Part == id && (step.Action == StepAction.Remove || IsLastCleaning(step)))];
        if (before.Length == 0)
            return null;
        PlanStep earlier = random.Of(before);
        return new Edit($"{earlier.Action} and refit of {id} change places", plan with { Steps = Swapped(earlier, refit) });
    }

    // Numbers and times change hands; what waits for which stays as it is written.
    private Edit? SwapStepWithWhatItWaitsFor()
    {
        PlanStep[] waiting = [.. plan.Steps.Where(step => step.After.Length > 0)];
        if (waiting.Length == 0)
            return null;
        PlanStep step = random.Of(waiting);
        PlanStep before = plan.Steps[random.Of(step.After) - 1];
        return new Edit($"steps {before.Number} and {step.Number} change numbers and times", plan with
        {
            Steps = plan.Steps
                .SetItem(before.Number - 1, step with { Number = before.Number, Start = before.Start, Finish = before.Start + step.Minutes })
                .SetItem(step.Number - 1, before with { Number = step.Number, Start = step.Start, Finish = step.Start + before.Minutes }),
        });
    }

    private Edit? StartEarly()
    {
        PlanStep[] waiting = [.. plan.Steps.Where(step => step.After.Any(number => plan.Steps[number - 1].Finish > 0))];
        if (waiting.Length == 0)
            return null;
        PlanStep step = random.Of(waiting);
        double start = step.After.Max(number => plan.Steps[number - 1].Finish) - 0.5;
        return new Edit($"step {step.Number} starts half a minute early", plan with
        {
            Steps = plan.Steps.Replace(step, step with { Start = start, Finish = start + (step.Finish - step.Start) }),
        });
    }

    private Edit? DropSeal()
    {
        PlanStep[] closing = [.. plan.Steps.Where(step => step.Seals.Length > 0 && step is { Action: StepAction.Refit, Phase: Phase.Refit })];
        if (closing.Length == 0)
            return null;
        PlanStep step = random.Of(closing);
        return new Edit($"a seal of step {step.Number} is dropped", plan with { Steps = plan.Steps.Replace(step, step with { Seals = step.Seals.RemoveAt(0) }) });
    }

    private Edit? NameNobody()
    {
        PlanStep[] staffed = [.. plan.Steps.Where(step => step is { Technician: not null, Minutes: > 0, Action: StepAction.Remove or StepAction.Refit or StepAction.Clean or StepAction.Flush, Phase: not Phase.Prove })];
        if (staffed.Length == 0)
            return null;
        PlanStep step = random.Of(staffed);
        return new Edit($"step {step.Number} is nobody's", plan with { Steps = plan.Steps.Replace(step, step with { Technician = random.Next(2) == 0 ? null : plan.Hours.Technicians + 1 }) });
    }

    private Edit? TwoAtOnce()
    {
        PlanStep[] busy = [.. plan.Steps.Where(step => step.Technician is not null && step.Minutes > 0)];
        (PlanStep One, PlanStep Other)[] pairs =
        [
            .. busy.Zip(busy.Skip(1)).Where(pair => pair.First.Start < pair.Second.Finish && pair.Second.Start < pair.First.Finish && pair.First.Technician != pair.Second.Technician),
        ];
        if (pairs.Length == 0)
            return null;
        (PlanStep one, PlanStep other) = random.Of(pairs);
        return new Edit($"steps {one.Number} and {other.Number} are one technician's", plan with { Steps = plan.Steps.Replace(other, other with { Technician = one.Technician }) });
    }

    private Edit? DropConditional()
    {
        PlanConditional[] alone = [.. plan.Conditional.Where(entry => entry.AlsoFailed.Length == 0 && IsUnlisted(entry))];
        if (alone.Length == 0)
            return null;
        PlanConditional entry = random.Of(alone);
        string missed = random.Of([.. entry.Parts.Where(part => plan.Parts.All(listed => listed.Id != part))]);
        return new Edit($"what {entry.IfFailed} would let on is dropped", plan with
        {
            Conditional = random.Next(2) == 0
                ? [.. plan.Conditional.Where(other => other.IfFailed != entry.IfFailed)]
                : [.. plan.Conditional.Select(other => other.IfFailed == entry.IfFailed ? other with { Parts = other.Parts.Remove(missed) } : other)],
        });
    }

    private bool IsUnlisted(PlanConditional entry) => entry.Parts.Any(part => plan.Parts.All(listed => listed.Id != part));

    private Edit? CountWrong() => new("the clear parts are counted wrongly", plan with { Clear = plan.Clear + random.Of([-1, 1, 5]) });

    private Edit? OtherHash() => new("the hash is another", plan with { Family = plan.Family with { Sha256 = plan.Family.Sha256[1..] + "0" } });

    private Edit? OtherFamily() => new("the family is another", plan with { Family = plan.Family with { Id = plan.Family.Id + "-2" } });

    private Edit? DropEvidence() => plan.Evidence is not { IsEmpty: false } evidence ? null
        : new Edit("half of the evidence is dropped", plan with { Evidence = evidence.RemoveAt(random.Next(evidence.Length)) });

    // Accepting what may not be accepted, or what was not taken to clear anything.
    private Edit? AcceptFinding()
    {
        PlanFinding[] refused =
        [
            .. plan.Findings.Where(finding => finding is { Found: false, Accepted: false }
                && plan.Findings.All(other => !other.Accepted || other.Part != finding.Part || other.Debris != finding.Debris)
                && plan.Parts.Any(part => part.Id == finding.Part && part.Exposure.Any(line => line.Debris == finding.Debris && line.Grade != Grade.Cleared))
                && !asked.Family[new PartId(finding.Part)].IsCritical),
        ];
        if (refused.Length == 0)
            return null;
        PlanFinding finding = random.Of(refused);
        return new Edit($"the clean finding at {finding.Part} is accepted", plan with { Findings = plan.Findings.Replace(finding, finding with { Accepted = true }) });
    }

    private Edit? ForgetFind()
    {
        PlanFinding[] finds =
        [
            .. plan.Findings.Where(finding => finding.Found && plan.Debris.Contains(finding.Debris) && !plan.Failed.Any(failure => failure.Part == finding.Part && failure.Debris.Contains(finding.Debris))
                && plan.Parts.Any(part => part.Id == finding.Part && part.Exposure.Any(line => line.Debris == finding.Debris && line.Via is null))),
        ];
        if (finds.Length == 0)
            return null;
        PlanFinding find = random.Of(finds);
        return new Edit($"the find at {find.Part} is forgotten", plan with
        {
            Findings = [.. plan.Findings.Where(finding => !finding.Found || finding.Part != find.Part || finding.Debris != find.Debris)],
        });
    }

    private Edit? OfParts(string what, Func<PlanPart, bool> has, Func<PlanPart, PlanPart> change)
    {
        PlanPart[] some = [.. plan.Parts.Where(has)];
        if (some.Length == 0)
            return null;
        PlanPart part = random.Of(some);
        return new Edit($"{what}, at {part.Id}", plan with { Parts = plan.Parts.Replace(part, change(part)) });
    }

    private Edit? OfLines(string what, Func<PlanExposure, bool> has, Func<PlanExposure, PlanExposure> change) => OfLines(what, has, (_, line) => change(line));

    private Edit? OfLines(string what, Func<PlanExposure, bool> has, Func<PlanPart, PlanExposure, PlanExposure> change) =>
        OfParts(what, part => part.Exposure.Any(has), part =>
        {
            PlanExposure line = random.Of([.. part.Exposure.Where(has)]);
            return part with { Exposure = part.Exposure.Replace(line, change(part, line)) };
        });

    // Without it something that the plan itself asks for is not done.
    private bool IsNeeded(PlanStep step) => step.Part is { } id && (step.Action is StepAction.Remove or StepAction.Refit
        ? step.Phase != Phase.Prove && IsOnly(step)
        : step.Phase is Phase.CleanOut or Phase.Test && step.Action != StepAction.SendOut && plan.Parts.Any(part => part.Id == id) && IsOnly(step));

    private bool IsOnly(PlanStep step) => plan.Steps.Count(other => other.Action == step.Action && other.Phase != Phase.Prove && other.Phase != Phase.Confirm
        && (other.Part == step.Part || other.Parts.Contains(step.Part!))) == 1;

    private bool IsLastCleaning(PlanStep step) => step.Phase is Phase.CleanOut or Phase.Test
        && step.Action is StepAction.Flush or StepAction.Clean or StepAction.Replace
        && plan.Steps.Where(other => other.Part == step.Part && other.Phase is Phase.CleanOut or Phase.Test
            && other.Action is StepAction.Flush or StepAction.Clean or StepAction.Replace).MaxBy(other => (other.Finish, other.Number)) == step;

    // The work changes places, the places keep their numbers, times and hands.
    private ImmutableArray<PlanStep> Swapped(PlanStep one, PlanStep other) => plan.Steps
        .SetItem(one.Number - 1, WorkOf(other, one))
        .SetItem(other.Number - 1, WorkOf(one, other));

    private static PlanStep WorkOf(PlanStep work, PlanStep place) => place with
    {
        Phase = work.Phase,
        Action = work.Action,
        Part = work.Part,
        Parts = work.Parts,
        Text = work.Text,
        Seals = work.Seals,
        ForAccess = work.ForAccess,
        Blank = work.Blank,
    };

    // Numbers close up, and nothing waits any longer for what is gone; times stay.
    private ImmutableArray<PlanStep> Without(IReadOnlyCollection<PlanStep> dropped)
    {
        var newNumber = new Dictionary<int, int>();
        foreach (PlanStep step in plan.Steps.Where(step => !dropped.Contains(step)))
            newNumber[step.Number] = newNumber.Count + 1;
        return
        [
            .. plan.Steps.Where(step => newNumber.ContainsKey(step.Number)).Select(step => step with
            {
                Number = newNumber[step.Number],
                After = [.. step.After.Where(newNumber.ContainsKey).Select(number => newNumber[number])],
            }),
        ];
    }

    private static string Name(PlanStep step) => step.Part ?? string.Join('+', step.Parts);
}
