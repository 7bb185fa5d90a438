using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>One piece of work of a procedure: what will be a step.</summary>
internal sealed class Job
{
    private ImmutableArray<Part> at;

    public Job(int id, Phase phase, StepAction action)
    {
        Id = id;
        Phase = phase;
        Action = action;
    }

    /// <summary>Its place in <see cref="JobGraph.Jobs"/>.</summary>
    public int Id { get; }

    public Phase Phase { get; }

    public StepAction Action { get; }

    /// <summary>The part it is done at, or <c>null</c> where it is done at several or at none.</summary>
    public Part? Part { get; init; }

    /// <summary>Parts that come new inside of <see cref="Part"/>.</summary>
    public ImmutableArray<Part> With { get; init; } = [];

    /// <summary>The parts it is done at, where they are several.</summary>
    public ImmutableArray<Part> Parts { get; init; } = [];

    /// <summary>The parts it is done at, be it one or several.</summary>
    public ImmutableArray<Part> At => Part is null ? Parts : at.IsDefault ? at = [Part, .. With] : at;

    /// <summary>A technician's minutes, or, where no technician is needed, the working minutes that pass.</summary>
    public double Minutes { get; init; }

    /// <summary>Whether time passes here without a technician: away, or on its way.</summary>
    public bool IsWait { get; init; }

    /// <summary>Whether a technician's hands are needed while it lasts; what takes no time binds nobody.</summary>
    public bool NeedsHands => !IsWait && Minutes > 0;

    /// <summary>Whether it is done at each of its parts by itself, one after the other, rather than at all of them in one go.</summary>
    public bool IsEach { get; init; }

    /// <summary>Whether the part is only in the way.</summary>
    public bool ForAccess { get; init; }

    /// <summary>Done at the outside workshop that has the part.</summary>
    public bool IsOutside { get; init; }

    /// <summary>What the step is about, where action and part do not say it: a circuit, or a stage of the proof.</summary>
    public string Topic { get; init; } = "";

    /// <summary>The step of the frame that it is, or <c>null</c> for work on parts.</summary>
    public FrameStep? Frame { get; init; }

    /// <summary>The circuits that a step of the frame is about.</summary>
    public ImmutableArray<Circuit> Circuits { get; init; } = [];

    /// <summary>The running hours after which it is due: 0 for the first run itself; <c>null</c> where it must be done before the engine is started.</summary>
    public double? DueAfterRunningHours { get; init; }

    /// <summary>What a note on places to look is about, else <c>null</c>.</summary>
    public CleanPlaces? CleanPlaces { get; init; }

    /// <summary>Fitted parts beyond an in-place flush that are blanked off while it runs.</summary>
    public ImmutableArray<Part> Blank { get; set; } = [];

    /// <summary>New single-use seals that it fits, one entry a piece.</summary>
    public ImmutableArray<string> Seals { get; init; } = [];

    /// <summary>What a look at a part is for; <c>null</c> for other work, and for a look whether a part has failed.</summary>
    public LookAbout? About { get; init; }

    /// <summary>The circuit that is made safe, by name, else <c>null</c>.</summary>
    public string? Circuit { get; init; }

    /// <summary>The reservoirs that are drained in it.</summary>
    public ImmutableArray<Part> Drains { get; init; } = [];

    /// <summary>When it is done at all.</summary>
    public LookCondition Condition { get; set; } = LookCondition.Always;

    /// <summary>The number of the deciding look that it is, or <c>null</c>.</summary>
    public int? DecidingLook { get; init; }

    /// <summary>The job by whose part this one is worded, where it stands for several that are worded alike; else <c>null</c>.</summary>
    public Job? WordedAs { get; init; }

    /// <summary>The same job under another number.</summary>
    public Job Renumbered(int id) => new(id, Phase, Action)
    {
        Part = Part,
        With = With,
        Parts = Parts,
        Minutes = Minutes,
        IsWait = IsWait,
        IsEach = IsEach,
        ForAccess = ForAccess,
        IsOutside = IsOutside,
        Topic = Topic,
        Frame = Frame,
        Circuits = Circuits,
        DueAfterRunningHours = DueAfterRunningHours,
        CleanPlaces = CleanPlaces,
        Blank = Blank,
        Seals = Seals,
        About = About,
        Circuit = Circuit,
        Drains = Drains,
        Condition = Condition,
        DecidingLook = DecidingLook,
        WordedAs = WordedAs,
    };
}
