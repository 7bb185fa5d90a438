using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// Whether every exposed, every guarded and every failed part has the steps that its treatment asks for, and no part has others. The treatment itself is the shop's to
/// choose; that it is the one the shop's standard gives is not checked here.
/// </summary>
internal static class TreatedCheck
{
    /// <summary>The first part without its steps, or the first step without its part, or <c>null</c>. Linear in plan and family.</summary>
    internal static string? FirstFault(PlanDocument plan, Family family)
    {
        var work = new Work(plan);
        HashSet<string> failed = [.. plan.Failed.OrEmpty().Select(failure => failure.Part)];
        return plan.Parts.OrEmpty().Select(listed => Untreated(listed, failed.Contains(listed.Id), work, family)).FirstOrDefault(fault => fault is not null)
            ?? plan.Steps.OrEmpty().Select(step => Unasked(step, work, family)).FirstOrDefault(fault => fault is not null)
            ?? family.Parts.Select(part => LeftOff(part, work)).FirstOrDefault(fault => fault is not null)
            ?? RenewedByHalf(family, part => work.IsDone(part.Value, StepAction.Replace))
            ?? PutBack(family, work)
            ?? Unconfirmed(plan.Failed.OrEmpty(), plan.Steps.OrEmpty());
    }

    /// <summary>The first part that does not seal again once it was out, and goes back old; <c>null</c> for none.</summary>
    private static string? PutBack(Family family, Work work) =>
        family.Parts.FirstOrDefault(part => part.Kind.IsRenewedWhenOut && work.IsDone(part.Id.Value, StepAction.Remove) && !work.IsDone(part.Id.Value, StepAction.Replace)) is { } old
            ? PutBack(old)
            : null;

    /// <summary>That a part which does not seal again goes back old.</summary>
    internal static string PutBack(Part old) => $"{old.Id} is taken out and not renewed: the old one would go back";

    private static string? Untreated(PlanPart listed, bool hasFailed, Work work, Family family)
    {
        ImmutableArray<TreatmentKind> treatment = listed.Treatment.OrEmpty();
        // What a clean finding clears may be needed all the same where a look speaks against that finding.
        bool isCleared = !hasFailed && listed.Exposure.OrEmpty().All(line => line.Grade == Grade.Cleared) && (!work.HasLooks || listed.Asks.OrEmpty().IsEmpty);
        if (isCleared)
            return treatment.IsEmpty ? null : $"{listed.Id} is cleared and given a treatment all the same: it would not be known which is meant";
        if (treatment.IsEmpty)
            return hasFailed ? $"{listed.Id} has failed and is given no treatment: it would go back as it is" : $"{listed.Id} is given no treatment: it would go back as dirty as it is";
        foreach (TreatmentKind kind in treatment)
        {
            if (!work.IsDone(listed.Id, ActionOf(kind)))
                return $"{listed.Id} is to be treated by {Word(kind)}, but no step does so: it would go back without";
        }

        if (family.Find(new PartId(listed.Id)) is { LookUsesUp: true } && treatment.Contains(TreatmentKind.Inspect) && !treatment.Contains(TreatmentKind.Replace))
            return $"{listed.Id} is used up by the look at it, and no new one is asked for: it could not go back";
        return treatment.Contains(TreatmentKind.Replace) && !IsOffFor(listed.Id, work, family)
            ? $"{listed.Id} is to be replaced, but no step takes the old one off: the old one would stay"
            : null;
    }

    private static string? Unasked(PlanStep step, Work work, Family family)
    {
        if ((step.Phase == Phase.Prove && step.Action != StepAction.Test) || (step.Phase is Phase.MakeSafe or Phase.Confirm && step.About is null))
            return null;
        foreach (string part in PlayedStep.PartsOf(step))
        {
            ImmutableArray<TreatmentKind> treatment = work.TreatmentOf(part);
            bool isAsked = step.Action switch
            {
                // A loop is flushed as one, and with it what is otherwise cleaned by hand.
                StepAction.Flush when step.Parts.OrEmpty().Length > 1 => treatment.Contains(TreatmentKind.Flush) || treatment.Contains(TreatmentKind.Clean),
                // What nobody's debris came to is renewed only with another, or because it was out of its place.
                StepAction.Replace when treatment.IsEmpty => family.Find(new PartId(part)) is { } spared && (spared.Kind.IsRenewedWhenOut || IsRenewedWithAnother(spared, work)),
                // Only a part that is kept is worth measuring, and only when it is clean.
                StepAction.Inspect when step.About == LookAbout.Condition => PlayedStep.IsConditionLook(step)
                    && treatment.Any(kind => kind is TreatmentKind.Flush or TreatmentKind.Clean) && (work.HasLooks || !treatment.Contains(TreatmentKind.Replace)),
                StepAction.Inspect or StepAction.Flush or StepAction.Clean or StepAction.Test or StepAction.Replace =>
                    treatment.Any(kind => ActionOf(kind) == step.Action),
                StepAction.SendOut => !treatment.IsEmpty,
                _ => true,
            };
            if (!isAsked)
                return string.Create(CultureInfo.InvariantCulture, $"step {step.Number} treats {part} in a way that its treatment does not ask for: its list and its steps tell two things");
        }

        return null;
    }

    /// <summary>Whether the old part comes off: by itself, or inside of what it is renewed with.</summary>
    private static bool IsOffFor(string part, Work work, Family family)
    {
        if (work.IsDone(part, StepAction.Remove))
            return true;
        Part? at = family.Find(new PartId(part));
        while (at?.Assembly is { } whole)
        {
            if (work.IsDone(whole.Value, StepAction.Remove) && work.IsDone(whole.Value, StepAction.Replace))
                return true;
            at = family.Find(whole);
        }

        return false;
    }

    private static bool IsRenewedWithAnother(Part part, Work work) =>
        part.Together.Any(other => other != part.Id && work.IsDone(other.Value, StepAction.Replace)) || (part.Assembly is { } whole && work.IsDone(whole.Value, StepAction.Replace));

    /// <summary>The first part that is renewed without what makes a set with it, or left old inside of what is renewed whole; <c>null</c> for none.</summary>
    internal static string? RenewedByHalf(Family family, Func<PartId, bool> isRenewed)
    {
        foreach (Part part in family.Parts.Where(part => !part.Together.IsEmpty || part.Assembly is not null))
        {
            if (!isRenewed(part.Id))
            {
                if (part.Assembly is { } whole && isRenewed(whole))
                    return $"{whole} is renewed whole without {part.Id}, which is inside of it: the old would be built into the new";
            }
            else if (part.Together.FirstOrDefault(other => !isRenewed(other)) is { Value: not null } left)
            {
                return $"{part.Id} is renewed without {left}, with which it makes a set: new would run against old";
            }
        }

        return null;
    }

    private static string? LeftOff(Part part, Work work)
    {
        bool comesOff = work.IsDone(part.Id.Value, StepAction.Remove);
        bool goesOn = work.IsDone(part.Id.Value, StepAction.Refit);
        return (comesOff, goesOn) switch
        {
            (true, false) => $"{part.Id} is taken off, but no step puts it back: the engine would be run without it",
            (false, true) => $"{part.Id} is put back, but no step takes it off: it would not be opened at all",
            _ => null,
        };
    }

    /// <summary>The first failed part at which nobody looks before the engine is opened, or <c>null</c>.</summary>
    internal static string? Unconfirmed(ImmutableArray<PlanFailure> failed, ImmutableArray<PlanStep> steps)
    {
        HashSet<string> confirmed = [.. steps.Where(step => step.Phase == Phase.Confirm).SelectMany(PlayedStep.PartsOf)];
        string? missed = failed.Select(failure => failure.Part).FirstOrDefault(part => !confirmed.Contains(part));
        return missed is null ? null : $"no step looks at {missed} before the engine is opened: the cause of the failure would be missed";
    }

    private static StepAction ActionOf(TreatmentKind kind) => kind switch
    {
        TreatmentKind.Inspect => StepAction.Inspect,
        TreatmentKind.Flush => StepAction.Flush,
        TreatmentKind.Clean => StepAction.Clean,
        TreatmentKind.Test => StepAction.Test,
        _ => StepAction.Replace,
    };

    /// <summary>A treatment in words: <c>cleaning</c>.</summary>
    internal static string Word(TreatmentKind kind) => kind switch
    {
        TreatmentKind.Inspect => "inspection",
        TreatmentKind.Flush => "flushing",
        TreatmentKind.Clean => "cleaning",
        TreatmentKind.Test => "testing",
        _ => "replacement",
    };

    /// <summary>What is done at which part, by id: treatments where they belong, what comes off and goes on at any time before the engine is proved.</summary>
    private sealed class Work
    {
        private readonly HashSet<(string Part, StepAction Action)> done = [];
        private readonly Dictionary<string, ImmutableArray<TreatmentKind>> treatmentOf = new(StringComparer.Ordinal);

        internal Work(PlanDocument plan)
        {
            HasLooks = !plan.Looks.OrEmpty().IsEmpty;
            foreach (PlanPart listed in plan.Parts.OrEmpty())
                treatmentOf[listed.Id] = listed.Treatment.OrEmpty();
            foreach (PlanStep step in plan.Steps.OrEmpty())
            {
                bool counts = step.Action is StepAction.Remove or StepAction.Refit ? step.Phase != Phase.Prove : PlayedStep.IsTreatmentOf(step);
                foreach (string part in counts ? PlayedStep.PartsOf(step) : [])
                    done.Add((part, step.Action));
            }
        }

        /// <summary>Whether the steps and the treatments are those of all histories of a plan with looks together.</summary>
        internal bool HasLooks { get; }

        internal bool IsDone(string part, StepAction action) => done.Contains((part, action));

        internal ImmutableArray<TreatmentKind> TreatmentOf(string part) => treatmentOf.GetValueOrDefault(part, []);
    }
}
