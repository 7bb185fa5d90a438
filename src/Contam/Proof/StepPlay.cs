using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>One play of a plan's steps: the rules of what may be done when. See <see cref="StepSimulator"/>.</summary>
internal sealed partial class StepPlay
{
    private readonly Family family;
    private readonly ImmutableArray<PlayedStep> steps;
    private readonly Bench bench;
    private readonly LastTreatments last;
    private readonly ImmutableArray<Fault>.Builder faults = ImmutableArray.CreateBuilder<Fault>();
    private readonly HashSet<(int Step, int Part)> faulty = [];
    private readonly bool[] isSuspect;
    private readonly bool[] isLookedAt;
    private readonly bool[] comesOff;
    private readonly bool[] wasTakenOff;
    private readonly bool[] wasPutBack;
    private readonly int[] away;
    private readonly PlayGround ground;

    /// <summary>A play of all steps of a plan.</summary>
    internal StepPlay(Family family, PlanDocument plan, bool remembers = true)
        : this(
            new PlayGround(family, new OpenJoints(family, plan.Failed.OrEmpty().Select(failure => new PartId(failure.Part)).ToHashSet())),
            [.. plan.Steps.OrEmpty().Select(step => PlayedStep.Of(step, family))],
            DirtyOf(family, plan),
            remembers)
    {
    }

    /// <summary>A play of these steps.</summary>
    /// <param name="ground">The engine.</param>
    /// <param name="steps">The steps that are done.</param>
    /// <param name="dirty">What is not clean when they begin.</param>
    /// <param name="remembers">See <see cref="Bench"/>.</param>
    internal StepPlay(PlayGround ground, ImmutableArray<PlayedStep> steps, IEnumerable<DirtyPart> dirty, bool remembers = true)
    {
        this.ground = ground;
        this.steps = steps;
        family = ground.Family;
        int count = family.Parts.Length;
        bench = new Bench(count, ground, remembers);
        isSuspect = new bool[count];
        isLookedAt = new bool[count];
        comesOff = new bool[count];
        wasTakenOff = new bool[count];
        wasPutBack = new bool[count];
        away = new int[count];
        foreach (DirtyPart part in dirty)
        {
            isLookedAt[part.Part] = part.IsLookedAt;
            isSuspect[part.Part] = part.IsSuspect;
            bench.Become(part.Part, part.IsSuspect ? Condition.Suspect : Condition.Dirty);
        }

        foreach (PlayedStep step in steps.Where(step => step.Step.Action == StepAction.Remove))
        {
            foreach (int part in step.Parts)
                comesOff[part] = true;
        }

        last = new LastTreatments(count, steps.Where(step => step.HasTimes), part => !isSuspect[part] ? null : isLookedAt[part] ? StepAction.Inspect : StepAction.Test);
    }

    /// <summary>Plays, and checks too that the parts are there and that each step waits for what it says it waits for.</summary>
    internal Simulation Play()
    {
        StepOrder.Check(steps, faults);
        CheckNames(steps, family, faults);
        return PlayAlone();
    }

    /// <summary>Plays steps of which is known that they can be played.</summary>
    internal Simulation PlayAlone()
    {
        foreach ((PlayedStep step, bool isFinish) in StepOrder.Events(steps))
        {
            if (isFinish)
                Finish(step);
            else
                Start(step);
        }

        for (int part = 0; part < family.Parts.Length; part++)
            CheckEnd(part);
        return new Simulation(faults.ToImmutable());
    }

    /// <summary>The first step that cannot be played as it stands, or <c>null</c>.</summary>
    internal static string? Misread(ImmutableArray<PlayedStep> steps, Family family)
    {
        ImmutableArray<Fault>.Builder faults = ImmutableArray.CreateBuilder<Fault>();
        StepOrder.Check(steps, faults);
        CheckNames(steps, family, faults);
        return faults is [Fault first, ..] ? first.ToString() : null;
    }

    /// <summary>What a plan says is not clean when its steps begin.</summary>
    internal static IEnumerable<DirtyPart> DirtyOf(Family family, PlanDocument plan) =>
        from listed in plan.Parts.OrEmpty()
        let part = family.IndexOf(new PartId(listed.Id))
        // A failed part is not as it should be, whatever comes to it.
        where part >= 0 && (plan.Failed.OrEmpty().Any(failure => failure.Part == listed.Id) || !listed.Exposure.OrEmpty().All(line => line.Grade == Grade.Cleared))
        select DirtyPart.Of(part, listed.Treatment.OrEmpty());

    private static void CheckNames(ImmutableArray<PlayedStep> steps, Family family, ImmutableArray<Fault>.Builder faults)
    {
        foreach (PlayedStep step in steps)
        {
            foreach (string id in PlayedStep.PartsOf(step.Step).Concat(step.Step.Blank.OrEmpty()).Where(id => family.IndexOf(new PartId(id)) < 0))
                faults.Add(new Fault(step.Step.Number, id, $"this engine has no part {id}"));
        }
    }

    private void Start(PlayedStep step)
    {
        if (step.Step.Phase == Phase.Prove && step.Step.Action != StepAction.Note)
            Prove(step);
        foreach (int part in step.Parts)
        {
            switch (step.Step.Action)
            {
                case StepAction.Remove when step.Step.Phase != Phase.Prove:
                    StartRemoving(step, part);
                    break;
                case StepAction.Refit when step.Step.Phase != Phase.Prove:
                    StartRefitting(step, part);
                    break;
                default:
                    StartTreating(step, part);
                    break;
            }
        }

        CheckSeals(step);
        Flush(step);
    }

    private void Finish(PlayedStep step)
    {
        Flush(step);
        foreach (int part in step.Parts)
        {
            switch (step.Step.Action)
            {
                case StepAction.Remove when step.Step.Phase != Phase.Prove:
                    CheckWays(step, part, "taken off");
                    CheckCarriersOff(step, part);
                    bench.Move(part, Whereabouts.Off);
                    break;
                case StepAction.Refit when step.Step.Phase != Phase.Prove:
                    CheckRefit(step, part);
                    bench.Move(part, Whereabouts.On);
                    CheckPutBack(step, part);
                    break;
                default:
                    FinishTreating(step, part);
                    break;
            }
        }

        // Only now are all of them clean, so that a loop flushed as one does not stand in its own way.
        foreach (int part in step.Parts.Where(part => last.IsLastCleaning(step, part) && (!isSuspect[part] || bench.ConditionOf(part) == Condition.Suspect)))
            bench.Become(part, Condition.Clean);
    }

    private static int FirstOf(IEnumerable<int> parts, Func<int, bool> isMeant)
    {
        foreach (int part in parts)
        {
            if (isMeant(part))
                return part;
        }

        return -1;
    }

    private void CheckEnd(int part)
    {
        if (bench.WhereaboutsOf(part) != Whereabouts.On)
            faults.Add(new Fault(null, Name(part), $"{Name(part)} is never put back"));
        if (bench.ConditionOf(part) == Condition.Dirty)
            faults.Add(new Fault(null, Name(part), $"{Name(part)} is left dirty") { IsUncleanAtEnd = true });
        if (bench.ConditionOf(part) == Condition.Suspect)
            faults.Add(new Fault(null, Name(part), $"{Name(part)} has never been looked at") { IsUncleanAtEnd = true });
    }

    // A step is at fault at a part once: what is wrong when it starts is not reported again when it finishes.
    private void Report(PlayedStep step, int part, string what, int from = -1)
    {
        if (faulty.Add((step.Step.Number, part)))
            faults.Add(new Fault(step.Step.Number, Name(part), what) { DirtiedFrom = from < 0 || bench.ConditionOf(from) == Condition.Suspect ? null : Name(from) });
    }

    private int FirstPart(Func<int, bool> isMeant) => Enumerable.Range(0, family.Parts.Length).First(isMeant);

    private string StillUnclean(int part) => bench.ConditionOf(part) == Condition.Dirty ? "is still dirty" : "has not been looked at";

    private string Name(int part) => family.Parts[part].Id.Value;
}
