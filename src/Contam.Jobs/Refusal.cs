using System.Collections.Immutable;
using Contam.Jobs.Work;

namespace Contam.Jobs;

/// <summary>Why something is not written into a job. Facts, not words: whoever asked words them.</summary>
public abstract record Refusal
{
    private protected Refusal()
    {
    }
}

/// <summary>The job has no step of this number.</summary>
/// <param name="Number">What was asked for.</param>
/// <param name="Steps">How many steps there are.</param>
public sealed record NoSuchStep(int Number, int Steps) : Refusal;

/// <summary>The step is done.</summary>
/// <param name="Step">The step.</param>
/// <param name="By">Who did it.</param>
public sealed record DoneAlready(WorkStep Step, string By) : Refusal;

/// <summary>The step is open.</summary>
/// <param name="Step">The step.</param>
public sealed record OpenAlready(WorkStep Step) : Refusal;

/// <summary>Another step comes first, and no reason was given for doing this one before it.</summary>
/// <param name="Step">The step.</param>
/// <param name="First">Of those that come before it the first that can be done now.</param>
public sealed record NotItsTurn(WorkStep Step, WorkStep First) : Refusal;

/// <summary>The step runs the engine, and the engine may not be run.</summary>
/// <param name="Step">The step.</param>
/// <param name="Missing">What stands between; empty where only nobody has released it yet.</param>
public sealed record RunsTheEngine(WorkStep Step, ImmutableArray<Missing> Missing) : Refusal;

/// <summary>With what is done, the step would do harm or cannot be done: no reason helps.</summary>
/// <param name="Step">The step.</param>
/// <param name="What">What would go wrong, as a clause that names the part.</param>
public sealed record WouldHarm(WorkStep Step, string What) : Refusal;

/// <summary>A part that the step is done at, or without which the engine cannot be tried, is at an outside workshop.</summary>
/// <param name="Step">The step.</param>
/// <param name="Part">The part.</param>
public sealed record IsAway(WorkStep Step, string Part) : Refusal;

/// <summary>The engine may not be run: something is missing.</summary>
/// <param name="Missing">What, at least one thing.</param>
public sealed record NotComplete(ImmutableArray<Missing> Missing) : Refusal;

/// <summary>The part is not at an outside workshop.</summary>
/// <param name="Part">The part.</param>
public sealed record NotAway(string Part) : Refusal;

/// <summary>The part is at an outside workshop already.</summary>
/// <param name="Part">The part.</param>
public sealed record AwayAlready(string Part) : Refusal;

/// <summary>What sort of thing was named.</summary>
public enum NamedThing
{
    /// <summary>An item of the plan's order list.</summary>
    Item,

    /// <summary>A part with a step in this job, or one that is away.</summary>
    Part,

    /// <summary>A limit of the family.</summary>
    Limit,

    /// <summary>A debris of the standard.</summary>
    Debris,

    /// <summary>A look of the plan, by its letter.</summary>
    Look,
}

/// <summary>There is nothing of this name.</summary>
/// <param name="Thing">What was named.</param>
/// <param name="Name">The name.</param>
/// <param name="Known">The names there are.</param>
public sealed record NoSuchThing(NamedThing Thing, string Name, ImmutableArray<string> Known) : Refusal;

/// <summary>A part that was worked on is said to be clean, which says nothing of what came through it before.</summary>
/// <param name="Part">The part.</param>
/// <param name="Step">The step in which it was worked on.</param>
public sealed record WorkedOnBefore(string Part, WorkStep Step) : Refusal;

/// <summary>A part where debris was found is said to be clean of it; a later look does not take a find back.</summary>
/// <param name="Part">The part.</param>
/// <param name="Debris">The debris.</param>
public sealed record FoundBefore(string Part, string Debris) : Refusal;

/// <summary>The look has an outcome already, and it was not said that the new one takes its place.</summary>
/// <param name="Look">Its letter.</param>
/// <param name="Outcome">The outcome: <c>clean</c>, <c>found</c> or <c>in-doubt</c>.</param>
/// <param name="By">Who looked.</param>
public sealed record LookedBefore(string Look, string Outcome, string By) : Refusal;

/// <summary>The look is not due: it hangs on earlier looks.</summary>
/// <param name="Look">Its letter.</param>
/// <param name="HangsOn">Their letters.</param>
/// <param name="IsUndecided">Whether they have no outcome yet; else they were clean.</param>
public sealed record LookNotDue(string Look, ImmutableArray<string> HangsOn, bool IsUndecided) : Refusal;

/// <summary>The look is not made at this part.</summary>
/// <param name="Look">Its letter.</param>
/// <param name="Part">The part.</param>
/// <param name="Places">Where it is made.</param>
public sealed record NoPlaceOfLook(string Look, string Part, ImmutableArray<string> Places) : Refusal;

/// <summary>The step is a look that decides, and nobody has said what it showed.</summary>
/// <param name="Step">The step.</param>
/// <param name="Look">The look's letter.</param>
public sealed record NeedsOutcome(WorkStep Step, string Look) : Refusal;

/// <summary>The job is released: what a look shows now is a find of its own.</summary>
/// <param name="Look">The look's letter.</param>
public sealed record ReleasedBefore(string Look) : Refusal;

/// <summary>Somebody has written to the job since it was read, so that what was shown is no longer what would be written.</summary>
public sealed record WrittenMeanwhile : Refusal;

/// <summary>A text cannot be kept.</summary>
/// <param name="Field">Which: name, customer, engine, technician, note, reason, file.</param>
/// <param name="Fault">What is wrong with it.</param>
public sealed record TextRefused(string Field, RecordTextFault Fault) : Refusal;

/// <summary>A plan does not hold, or is not the one that its own question gives.</summary>
/// <param name="Why">A clause.</param>
/// <param name="IsAnother">Whether planning again gives another; else the plan itself does not hold.</param>
public sealed record PlanRefused(string Why, bool IsAnother) : Refusal;

/// <summary>A plan counts parts as clean that nobody here has confirmed.</summary>
/// <param name="Findings">Each of them.</param>
public sealed record NotConfirmed(ImmutableArray<CleanFinding> Findings) : Refusal;
