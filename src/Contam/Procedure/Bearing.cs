using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>Whether a caution or a wording of the standard bears on a job.</summary>
internal sealed class Bearing
{
    private readonly Dictionary<PartId, Circuit[]> circuitsOf;

    // Parts with a circuit whose fluid comes to them while nothing has failed.
    private readonly HashSet<(PartId Part, string Circuit)> atHome;
    private readonly ImmutableArray<DebrisSpread> spreads;
    private readonly Family family;
    private readonly string machine;

    public Bearing(Family family, ImmutableArray<DebrisSpread> spreads)
    {
        this.spreads = spreads;
        this.family = family;
        machine = MachineName.Of(family.Machine);
        circuitsOf = family.Circuits
            .SelectMany(circuit => circuit.Parts.Select(part => (Part: part, Circuit: circuit)))
            .GroupBy(pair => pair.Part)
            .ToDictionary(group => group.Key, group => group.Select(pair => pair.Circuit).ToArray());
        atHome = [.. family.Joints.Where(joint => joint.OnlyIfFailed is null).SelectMany(joint => new[] { (joint.From, joint.Circuit), (joint.To, joint.Circuit) })];
    }

    /// <summary>The circuits that a part stands in, in the order of the family.</summary>
    public IReadOnlyList<Circuit> CircuitsOf(Part part) => CircuitsAt(part);

    private Circuit[] CircuitsAt(Part part) => circuitsOf.TryGetValue(part.Id, out Circuit[]? circuits) ? circuits : [];

    /// <summary>The debris that could have come to a part, in the order of the plan.</summary>
    public IEnumerable<Debris> DebrisAt(Part part) => spreads.Where(spread => spread.Find(part.Id) is not null).Select(spread => spread.Debris);

    /// <summary>
    /// Whether every condition that is said fits the job: its action, or the kind, circuits, fluids and debris of any of its parts.
    /// Writing something down, waiting and sending out are done with clean hands; only what names that action fits them.
    /// </summary>
    public bool Fits(BearsOn on, Job job)
    {
        if (job.Action is StepAction.Note or StepAction.SendOut && on.Action != job.Action)
            return false;
        // Most conditions fail at the action or the kind, which cost nothing to look at.
        return (on.Action is not { } action || action == job.Action)
            && (on.Machine is null || on.Machine == machine)
            && (on.Has is not { } has || family.Circuits.Any(circuit => FluidSort.Fits(has, family, circuit)))
            && (on.Treatment is not { } treatment || IsTreatment(job) && ActionOf(treatment) == job.Action)
            && (on.Kind is not { } kind || IsKind(job.At, kind))
            && (on.Debris is not { } debris || IsReachedBy(job.At, debris))
            && (on.Circuit is null && on.Fluid is null || FitsCircuits(on, job));
    }

    /// <summary>Whether a wording fits the job: as a caution does, and its kind is that of every part. A text for a bearing is not one for its shaft.</summary>
    public bool Words(BearsOn on, Job job) => Fits(on, job) && (on.Kind is not { } kind || job.At.All(part => part.Kind.Name == kind)) && (on.Fluid is not { } fluid || IsDoneWith(fluid, job));

    private bool IsDoneWith(string fluid, Job job) => !job.Circuits.IsEmpty || CircuitOfWork(job) is not { } circuit || FluidSort.Fits(fluid, family, circuit);

    /// <summary>
    /// The circuit by whose fluid the work at parts is done. Parts that stand in several circuits are cleaned with one fluid that is not air, and that is at home
    /// there: a gear housing that sea water reaches only through a crack is not flushed with water. Of several at home the first in the order of the family.
    /// </summary>
    public Circuit? CircuitOfWork(Job job)
    {
        Circuit[] all = [.. job.At.SelectMany(CircuitsAt)];
        Circuit[] wet = [.. all.Where(circuit => circuit.Fluid is not null)];
        return Array.Find(wet, circuit => job.At.Any(part => atHome.Contains((part.Id, circuit.Name)))) ?? wet.FirstOrDefault() ?? all.FirstOrDefault();
    }

    /// <summary>Whether a job is part of what a part is treated by; a look whether it has failed is not, nor is a look at it when it is clean.</summary>
    private static bool IsTreatment(Job job) => job.Frame is null && (job.Action == StepAction.Inspect ? job.About == LookAbout.Debris : job.Phase < Phase.Prove || job.Action == StepAction.Test);

    private static StepAction ActionOf(TreatmentKind treatment) => treatment switch
    {
        TreatmentKind.Inspect => StepAction.Inspect,
        TreatmentKind.Flush => StepAction.Flush,
        TreatmentKind.Clean => StepAction.Clean,
        TreatmentKind.Test => StepAction.Test,
        TreatmentKind.Replace => StepAction.Replace,
        _ => throw new ArgumentOutOfRangeException(nameof(treatment), treatment, "not a treatment"),
    };

    private static bool IsKind(ImmutableArray<Part> parts, string kind)
    {
        foreach (Part part in parts)
        {
            if (part.Kind.Name == kind)
                return true;
        }

        return false;
    }

    private bool IsReachedBy(ImmutableArray<Part> parts, string debris)
    {
        foreach (DebrisSpread spread in spreads)
        {
            if (spread.Debris.Name != debris)
                continue;
            foreach (Part part in parts)
            {
                if (spread.Find(part.Id) is not null)
                    return true;
            }
        }

        return false;
    }

    /// <summary>Whether a circuit that the job is done at has the name that is said, and one the fluid; a circuit that is made safe needs no part.</summary>
    private bool FitsCircuits(BearsOn on, Job job)
    {
        bool hasName = on.Circuit is null;
        bool hasFluid = on.Fluid is null;
        if (job.Action is StepAction.MakeSafe or StepAction.Prove)
        {
            foreach (Circuit circuit in job.Circuits)
                Look(circuit);
        }

        foreach (Part part in job.At)
        {
            foreach (Circuit circuit in CircuitsAt(part))
                Look(circuit);
        }

        return hasName && hasFluid;

        void Look(Circuit circuit)
        {
            hasName |= circuit.Name == on.Circuit;
            hasFluid |= on.Fluid is not null && FluidSort.Fits(on.Fluid, family, circuit);
        }
    }

    /// <summary>How closely a condition is drawn; the closest one that fits is used. Kind counts most, then debris, circuit, fluid, what the machine has, what it is, treatment, action.</summary>
    public static int Closeness(BearsOn on) =>
        (on.Kind is null ? 0 : 128) + (on.Debris is null ? 0 : 64) + (on.Circuit is null ? 0 : 32) + (on.Fluid is null ? 0 : 16)
        + (on.Has is null ? 0 : 8) + (on.Machine is null ? 0 : 4) + (on.Treatment is null ? 0 : 2) + (on.Action is null ? 0 : 1);
}
