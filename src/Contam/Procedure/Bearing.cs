using System.Collections.Frozen;
using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>Whether a caution or a wording of the standard bears on a job.</summary>
internal sealed class Bearing
{
    private readonly FrozenDictionary<PartId, Circuit[]> circuitsOf;
    private readonly ImmutableArray<DebrisSpread> spreads;

    public Bearing(Family family, ImmutableArray<DebrisSpread> spreads)
    {
        this.spreads = spreads;
        Circuits = family.Circuits;
        circuitsOf = family.Circuits
            .SelectMany(circuit => circuit.Parts.Select(part => (Part: part, Circuit: circuit)))
            .GroupBy(pair => pair.Part)
            .ToFrozenDictionary(group => group.Key, group => group.Select(pair => pair.Circuit).ToArray());
    }

    private ImmutableArray<Circuit> Circuits { get; }

    /// <summary>The circuits that a part stands in, in the order of the family.</summary>
    public IReadOnlyList<Circuit> CircuitsOf(Part part) => circuitsOf.TryGetValue(part.Id, out Circuit[]? circuits) ? circuits : [];

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
        Part[] parts = PartsOf(job);
        IEnumerable<Circuit> circuits = job.Action == StepAction.MakeSafe ? Circuits.Where(circuit => circuit.Name == job.Topic) : parts.SelectMany(CircuitsOf);
        return (on.Action is not { } action || action == job.Action)
            && (on.Treatment is not { } treatment || job.Phase is Phase.CleanOut or Phase.Test && StringComparer.Ordinal.Equals(treatment.ToString(), job.Action.ToString()))
            && (on.Kind is not { } kind || parts.Any(part => part.Kind.Name == kind))
            && (on.Debris is not { } debris || parts.SelectMany(DebrisAt).Any(one => one.Name == debris))
            && (on.Circuit is not { } name || circuits.Any(circuit => circuit.Name == name))
            && (on.Fluid is not { } fluid || circuits.Any(circuit => circuit.Fluid == fluid));
    }

    /// <summary>The parts that a job is done at.</summary>
    public static Part[] PartsOf(Job job) => job.Part is { } part ? [part] : [.. job.Parts];

    /// <summary>How closely a condition is drawn; the closest one that fits is used. Kind counts most, then debris, circuit, fluid, treatment, action.</summary>
    public static int Closeness(BearsOn on) =>
        (on.Kind is null ? 0 : 32) + (on.Debris is null ? 0 : 16) + (on.Circuit is null ? 0 : 8) + (on.Fluid is null ? 0 : 4) + (on.Treatment is null ? 0 : 2) + (on.Action is null ? 0 : 1);
}
