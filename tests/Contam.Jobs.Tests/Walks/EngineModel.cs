using System.Collections.Immutable;
using Contam.Families;
using Contam.Jobs.Work;
using Contam.Measurement;
using Contam.Plans;

namespace Contam.Jobs.Tests.Walks;

/// <summary>
/// What is true of an engine on the bench, told only by what was accepted and the plan that holds: which part is on, off or away, what was done to it and when,
/// what was measured, what was seen that nobody has planned with. It shares no code with the fold, the gate, the reopening or the simulator, and knows nothing
/// of ticks that the record takes back: a part that was put on is on until somebody takes it off.
/// <para>
/// It is a model of harm: it says when the engine may not be run or a part not be put on. Whatever the record accepts beyond that is a fault; what it refuses
/// although the model would allow it is caution. Debris goes over open joints into whatever is on the engine; barriers are not relied on.
/// </para>
/// </summary>
internal sealed class EngineModel(Family family, PlanDocument plan)
{
    private readonly Dictionary<string, Place> places = family.Parts.ToDictionary(part => part.Id.Value, _ => new Place(), StringComparer.Ordinal);
    private readonly Dictionary<string, (Verdict Verdict, long At, bool IsStale)> readings = new(StringComparer.Ordinal);
    private readonly List<Command.Look> undecided = [];
    private readonly Dictionary<string, Command.Decide> outcomes = new(StringComparer.Ordinal);
    private PlanDocument plan = plan;
    private long now;
    private long lastRefit;

    /// <summary>Takes something that was accepted; the answer is what it should never have been accepted for, or <c>null</c>.</summary>
    /// <param name="command">What was accepted.</param>
    /// <param name="steps">The steps as they stood when it was asked for.</param>
    /// <param name="after">The plan after it.</param>
    public string? Take(Command command, ImmutableArray<WorkStep> steps, PlanDocument after)
    {
        now++;
        switch (command)
        {
            case Command.Tick tick:
                return Tick(steps[tick.Number - 1], steps);
            case Command.Untick tick:
                Untick(steps[tick.Number - 1]);
                break;
            case Command.Send one:
                Stale(one.Part);
                places[one.Part].IsAway = true;
                TakeOff(one.Part);
                break;
            case Command.Return one:
                Stale(one.Part);
                places[one.Part].IsAway = false;
                // What never comes off by any step goes back with the workshop's own hands.
                if (!steps.Any(step => step.Action == StepAction.Refit && step.Parts.Contains(one.Part)))
                    places[one.Part].IsOn = true;
                break;
            case Command.Measure one:
                readings[one.Limit.Id] = (one.Verdict, now, false);
                break;
            case Command.Look one:
                undecided.Add(one);
                break;
            case Command.Decide one:
                Decide(one);
                break;
            case Command.Replan:
                foreach (Command.Look find in undecided.Where(look => look.Found))
                    Soil(find.Part);
                // What was left as it was on the strength of a look that counts for nothing now may have held debris all the time.
                foreach (PlanFinding disproved in after.Findings.Where(look => look.Void && !plan.Findings.Any(old => old.Void && (old.Part, old.Debris) == (look.Part, look.Debris))))
                    Soil(disproved.Part);
                undecided.Clear();
                outcomes.Clear();
                plan = after;
                break;
            case Command.Release:
                return WhyNotRun(steps) is { } why ? $"released although {why}" : null;
            default:
                break;
        }

        return null;
    }

    /// <summary>Why the engine may not be run, by this model; <c>null</c> where it may.</summary>
    public string? WhyNotRun(ImmutableArray<WorkStep> steps)
    {
        if (undecided.Count > 0)
            return $"nobody has planned with what was seen at {undecided[0].Part}";
        if (plan.Looks.FirstOrDefault(IsMissing) is { } look)
            return $"nobody has said what look {look.Id} showed";
        if (OpenOrDirty() is { } harm)
            return harm;
        foreach (Limit limit in family.Limits)
        {
            // What hangs on a look is tested where it was done; whether it had to be is told by what was reached.
            bool isTested = steps.Any(step => step is { Action: StepAction.Test, Technician: not null } && step.Parts.Contains(limit.Part.Value)
                && (step.OnlyIf.IsEmpty && step.Unless.IsEmpty || places[limit.Part.Value].Work.ContainsKey(WorkAt(StepAction.Test, limit.Part.Value))));
            bool isHeld = limit.Measures is Families.Measure.PressureDrop or Families.Measure.VacuumDrop && steps.Any(step => step is { Phase: Phase.Prove, DueAfterRunningHours: null, OnlyIf.IsEmpty: true, Unless.IsEmpty: true } && step.Parts.Contains(limit.Part.Value));
            bool isRead = readings.TryGetValue(limit.Id, out (Verdict Verdict, long At, bool IsStale) reading);
            if (isRead && reading.Verdict is not (Verdict.Good or Verdict.Marginal))
                return $"{limit.Id} is {reading.Verdict}";
            if ((isTested || isHeld) && (!isRead || reading.IsStale || !isTested && reading.At < lastRefit))
                return $"{limit.Id} is unread";
        }

        return null;
    }

    private string? Tick(WorkStep step, ImmutableArray<WorkStep> steps)
    {
        bool tries = step.Phase == Phase.Prove && step.Action is not (StepAction.Note or StepAction.Test);
        if (tries && (step.DueAfterRunningHours is null ? OpenOrDirty() : WhyNotRun(steps)) is { } harm)
            return $"step {step.Number} tries the engine although {harm}";
        foreach (string part in step.Parts)
        {
            Place place = places[part];
            if (place.IsAway && step.Action is not (StepAction.SendOut or StepAction.Note))
                return $"step {step.Number} works on {part}, which is away";
            switch (step.Action)
            {
                case StepAction.Remove when step.Phase != Phase.Prove:
                    Stale(part);
                    TakeOff(part);
                    break;
                case StepAction.Refit when step.Phase != Phase.Prove:
                    if (Undone(part, ofCleaning: true) is { } undone)
                        return $"step {step.Number} puts {part} on without {undone}";
                    place.IsOn = true;
                    lastRefit = now;
                    break;
                case StepAction.Flush or StepAction.Clean or StepAction.Replace or StepAction.Inspect or StepAction.Test when IsWork(step):
                    if (step.Action is StepAction.Clean or StepAction.Replace && place.IsOn && steps.Any(one => one.Action == StepAction.Remove && one.Parts.Contains(part)))
                        return $"step {step.Number} cleans {part} while it is on";
                    if (step.Action is StepAction.Flush or StepAction.Clean or StepAction.Replace)
                        Stale(part);
                    place.Work[WorkAt(step.Action, part)] = now;
                    break;
                case StepAction.SendOut:
                    Stale(part);
                    break;
                default:
                    break;
            }
        }

        return null;
    }

    // Looks for debris are made before anything is wiped away, tests where something is open, and new parts may come with the refit.
    private static bool IsWork(WorkStep step) => step.Action switch
    {
        StepAction.Inspect => step.About == LookAbout.Debris,
        StepAction.Test => step.Phase is not (Phase.MakeSafe or Phase.Confirm),
        StepAction.Replace => step.Phase is Phase.CleanOut or Phase.Refit,
        _ => step.Phase == Phase.CleanOut,
    };

    private void Untick(WorkStep step)
    {
        foreach (PlanLook look in plan.Looks.Where(look => look.Step == step.Number && outcomes.TryGetValue(look.Id, out Command.Decide? said) && said.Outcome == LookOutcome.Clean))
            outcomes.Remove(look.Id);
        foreach (string part in step.Parts)
        {
            Place place = places[part];
            switch (step.Action)
            {
                case StepAction.Remove when step.Phase != Phase.Prove:
                    Stale(part);
                    // It never came off, so that nothing that was said of it on the bench is so.
                    place.IsOn = !place.IsAway;
                    break;
                case StepAction.Refit when step.Phase != Phase.Prove:
                    TakeOff(part);
                    break;
                case StepAction.Flush or StepAction.Clean or StepAction.Replace or StepAction.Inspect or StepAction.Test when IsWork(step):
                    Stale(part);
                    place.Work.Remove(WorkAt(step.Action, part));
                    break;
                default:
                    break;
            }
        }
    }

    /// <summary>Debris that is at a place has gone on to whatever is on the engine beyond, since that was last worked on.</summary>
    private void Soil(string from)
    {
        Place source = places[from];
        source.Work.Clear();
        var reached = new HashSet<string>(StringComparer.Ordinal) { from };
        var due = new Queue<string>([from]);
        while (due.TryDequeue(out string? at))
        {
            foreach (Joint joint in family.Joints.Where(joint => joint.From.Value == at && joint.OnlyIfFailed is null && reached.Add(joint.To.Value)))
                due.Enqueue(joint.To.Value);
        }

        foreach (string part in reached.Where(part => part != from && places[part].IsOn))
        {
            foreach (((StepAction, string) work, long at) in places[part].Work.ToArray())
            {
                if (source.IsOn || source.CameOff >= at)
                    places[part].Work.Remove(work);
            }
        }
    }

    private string? OpenOrDirty()
    {
        foreach (Part part in family.Parts)
        {
            Place place = places[part.Id.Value];
            if (place.IsAway)
                return $"{part.Id} is away";
            if (!place.IsOn)
                return $"{part.Id} is off";
            if (Undone(part.Id.Value, ofCleaning: false) is { } undone)
                return $"{part.Id} is without {undone}";
        }

        return null;
    }

    private string? Undone(string part, bool ofCleaning)
    {
        if (!plan.Looks.IsEmpty)
            return UndoneByLooks(part, ofCleaning);
        ImmutableArray<TreatmentKind> asked = plan.Parts.FirstOrDefault(one => one.Id == part)?.Treatment ?? [];
        bool isOnlyLookedAt = asked.All(kind => kind is TreatmentKind.Inspect or TreatmentKind.Test);
        foreach (TreatmentKind kind in asked.Where(kind => !ofCleaning || isOnlyLookedAt || kind is not (TreatmentKind.Inspect or TreatmentKind.Test)))
        {
            StepAction action = Enum.Parse<StepAction>(kind.ToString());
            if (!places[part].Work.ContainsKey(WorkAt(action, part)))
                return $"{kind} for {DebrisAt(part)}";
        }

        return null;
    }

    /// <summary>What of a part that debris can have come to past no clean look is not done: of none of the grades that the plan knows is all done that it asks for.</summary>
    private string? UndoneByLooks(string part, bool ofCleaning)
    {
        foreach (string debris in plan.Debris.Where(debris => Reached(debris, CleanPlaces(debris)).Contains(part)))
        {
            PlanAsk[] asks = [.. (plan.Parts.FirstOrDefault(one => one.Id == part)?.Asks ?? []).Where(ask => ask.Debris == debris)];
            if (!asks.Any(ask => ask.Treatment.All(kind => IsDone(ask, kind))))
                return $"what {debris} asks for: {string.Join(" or ", asks.Select(ask => string.Join('+', ask.Treatment)))}";
        }

        return null;

        bool IsDone(PlanAsk ask, TreatmentKind kind) =>
            places[part].Work.ContainsKey(WorkAt(Enum.Parse<StepAction>(kind.ToString()), part))
            || kind is TreatmentKind.Flush or TreatmentKind.Clean && places[part].Work.ContainsKey(WorkAt(StepAction.Replace, part))
            || kind is TreatmentKind.Inspect && plan.Looks.Any(look => look.Places.Contains(part) && outcomes.TryGetValue(look.Id, out Command.Decide? said) && said.Outcome == LookOutcome.InDoubt)
            || ofCleaning && kind is TreatmentKind.Inspect or TreatmentKind.Test && !ask.Treatment.All(one => one is TreatmentKind.Inspect or TreatmentKind.Test);
    }

    private void Decide(Command.Decide one)
    {
        PlanLook look = plan.Looks.First(look => look.Id == one.Letter);
        bool wasClean = outcomes.TryGetValue(one.Letter, out Command.Decide? before) && before.Outcome == LookOutcome.Clean;
        string[] voidBefore = [.. VoidPlaces()];
        outcomes[one.Letter] = one;
        if (one.Outcome == LookOutcome.Found && !look.Debris.Contains(one.Debris.Name))
            undecided.Add(new Command.Look(one.At!, one.Debris, Found: true));
        if (one.Outcome == LookOutcome.Found && wasClean)
            Soil(one.At!);
        // What was left as it was on the strength of a look that counts for nothing now may have held debris all the time.
        foreach (string place in VoidPlaces().Except(voidBefore).ToArray())
            Soil(place);
        // Who says what it showed has looked.
        foreach (string place in one.Outcome == LookOutcome.InDoubt ? [] : look.Places)
            places[place].Work[WorkAt(StepAction.Inspect, place)] = now;
    }

    /// <summary>Whether a look must be made, and has no outcome. One from whose place something leads to a find may count as found without being made.</summary>
    private bool IsMissing(PlanLook look) =>
        !outcomes.ContainsKey(look.Id) && (look.OnlyIf.IsEmpty || look.OnlyIf.Any(CountsAsFound))
        && !look.Places.Any(place => plan.Debris.Any(debris => Finds(debris).Any(find => LeadsTo(place, find))));

    private bool CountsAsFound(string letter) => outcomes.TryGetValue(letter, out Command.Decide? said) && (said.Outcome != LookOutcome.Clean || plan.Looks.First(look => look.Id == letter).Places.Any(VoidPlaces().Contains));

    private IEnumerable<string> Finds(string debris) => plan.Findings.Where(finding => finding.Found && finding.Debris == debris).Select(finding => finding.Part)
        .Concat(outcomes.Values.Where(said => said.Outcome == LookOutcome.Found && said.Debris.Name == debris).Select(said => said.At!));

    private HashSet<string> SaidClean(string debris) => plan.Findings.Where(finding => finding is { Found: false, Accepted: true, Void: false } && finding.Debris == debris).Select(finding => finding.Part)
        .Concat(plan.Looks.Where(look => look.Debris.Contains(debris) && outcomes.TryGetValue(look.Id, out Command.Decide? said) && said.Outcome == LookOutcome.Clean).SelectMany(look => look.Places)).ToHashSet(StringComparer.Ordinal);

    private HashSet<string> VoidPlaces() => plan.Debris.SelectMany(debris => SaidClean(debris).Except(CleanPlaces(debris))).ToHashSet(StringComparer.Ordinal);

    /// <summary>Places that are clean and that no find speaks against: a find to which debris from a failed part comes only past clean places makes those on its ways void.</summary>
    private HashSet<string> CleanPlaces(string debris)
    {
        HashSet<string> clean = SaidClean(debris);
        string[] failed = Shedding(debris);
        HashSet<string> open = From(failed, clean);
        HashSet<string> any = From(failed, []);
        foreach (string find in Finds(debris).Where(find => any.Contains(find) && !open.Contains(find)).ToArray())
            clean.RemoveWhere(place => any.Contains(place) && LeadsTo(place, find));
        return clean;
    }

    private HashSet<string> Reached(string debris, HashSet<string> clean) => [.. From([.. Shedding(debris), .. Finds(debris)], clean).Where(part => !clean.Contains(part))];

    private string[] Shedding(string debris) => [.. plan.Failed.Where(failure => failure.Debris.Contains(debris)).Select(failure => failure.Part)];

    private bool LeadsTo(string place, string find) => place != find && From([place], []).Contains(find);

    /// <summary>Where one gets to over open joints, past no place where it stops; those places are among it.</summary>
    private HashSet<string> From(IEnumerable<string> sources, HashSet<string> stops)
    {
        var reached = new HashSet<string>(sources, StringComparer.Ordinal);
        var due = new Queue<string>(reached);
        while (due.TryDequeue(out string? at))
        {
            foreach (Joint joint in family.Joints.Where(joint => joint.From.Value == at && joint.OnlyIfFailed is null && !stops.Contains(at) && reached.Add(joint.To.Value)))
                due.Enqueue(joint.To.Value);
        }

        return reached;
    }

    // A new part is new whatever was in the old one.
    private (StepAction Action, string Debris) WorkAt(StepAction action, string part) => (action, action == StepAction.Replace ? "" : DebrisAt(part));

    private string DebrisAt(string part) =>
        string.Join('+', plan.Parts.FirstOrDefault(one => one.Id == part)?.Exposure.Where(line => line.Grade != Grade.Cleared).Select(line => line.Debris).Order(StringComparer.Ordinal) ?? Enumerable.Empty<string>());

    private void TakeOff(string part)
    {
        if (!places[part].IsOn)
            return;
        places[part].IsOn = false;
        places[part].CameOff = now;
    }

    private void Stale(string part)
    {
        foreach (Limit limit in family.Limits.Where(limit => limit.Part.Value == part && readings.ContainsKey(limit.Id)))
            readings[limit.Id] = readings[limit.Id] with { IsStale = true };
    }

    private sealed class Place
    {
        public bool IsOn { get; set; } = true;

        public bool IsAway { get; set; }

        public long CameOff { get; set; }

        public Dictionary<(StepAction Action, string Debris), long> Work { get; } = [];
    }
}
