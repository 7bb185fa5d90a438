using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Contam.Plans;

/// <summary>A step of the procedure.</summary>
public sealed record PlanStep
{
    /// <summary>Its number, from 1.</summary>
    public int Number { get; init; }

    /// <summary>Its phase.</summary>
    public Phase Phase { get; init; }

    /// <summary>What it does.</summary>
    public StepAction Action { get; init; }

    /// <summary>The part it is done at; <c>null</c> where it is done at several or at none.</summary>
    public string? Part { get; init; }

    /// <summary>The parts it is done at, where they are several; else empty.</summary>
    public ImmutableArray<string> Parts { get; init; } = [];

    /// <summary>What the technician reads: what is special here; the rest is in the method.</summary>
    public string Text { get; init; } = "";

    /// <summary>The number of the method that it uses, one of <see cref="PlanDocument.Methods"/>; <c>null</c> for none.</summary>
    public string? Method { get; init; }

    /// <summary>Letters of looks: it is done when debris was found at any of them; empty for whatever is seen.</summary>
    public ImmutableArray<string> OnlyIf { get; init; } = [];

    /// <summary>Letters of looks: it is struck when debris was found at any of them, as a harder treatment takes its place.</summary>
    public ImmutableArray<string> Unless { get; init; } = [];

    /// <summary>Numbers of the steps that must be finished first; the nearest only, however the looks come out; rising. A step that is not done is not waited for.</summary>
    public ImmutableArray<int> After { get; init; } = [];

    /// <summary>A technician's minutes; for a send-out the working minutes away.</summary>
    public double Minutes { get; init; }

    /// <summary>Start, in working minutes from the beginning.</summary>
    public double Start { get; init; }

    /// <summary>Finish, in working minutes from the beginning.</summary>
    public double Finish { get; init; }

    /// <summary>Which technician, from 1; <c>null</c> where none is needed.</summary>
    public int? Technician { get; init; }

    /// <summary>Whether a delay here delays the end.</summary>
    public bool Critical { get; init; }

    /// <summary>New single-use seals fitted in this step, one entry a piece.</summary>
    public ImmutableArray<string> Seals { get; init; } = [];

    /// <summary>Whether the part is only in the way of another.</summary>
    public bool ForAccess { get; init; }

    /// <summary>Parts that stay fitted beyond an in-place flush and are blanked off while it runs.</summary>
    public ImmutableArray<string> Blank { get; init; } = [];

    /// <summary>
    /// Running hours after which the step is due: 0 for the first run itself. <c>null</c> where it must be done before the engine is started.
    /// </summary>
    public double? DueAfterRunningHours { get; init; }

    /// <summary>What a look is for; left out for other work.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LookAbout? About { get; init; }

    /// <summary>The circuit that is made safe; left out for other work.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Circuit { get; init; }

    /// <summary>The name of the standard's frame step that this is, such as <c>order</c>; left out for work that the frame does not give. Words may change, this does not.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Frame { get; init; }

    /// <summary>The reservoirs that are drained in this step; left out where there is none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ImmutableArray<string>? Drains { get; init; }

    /// <summary>The circuits that are filled in this step; left out where there is none.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ImmutableArray<string>? Fills { get; init; }
}

/// <summary>A way of working that several steps share, said once.</summary>
/// <param name="Id">M1, M2 and so on.</param>
/// <param name="Title">Its name.</param>
/// <param name="Text">What is done, until when, and what would make one stop.</param>
/// <param name="Tools">Tools.</param>
/// <param name="Supplies">What is used up, by name; how much of it stands in <see cref="PlanBefore"/>.</param>
public sealed record PlanMethod(string Id, string Title, string Text, ImmutableArray<string> Tools, ImmutableArray<string> Supplies);
