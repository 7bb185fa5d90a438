using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace Contam.Plans;

/// <summary>
/// A plan as a document: the JSON contract <c>contam-plan/1</c>. Arrays stand in a fixed order.
/// Equality of two documents is equality of their JSON, not of these records.
/// </summary>
public sealed record PlanDocument
{
    /// <summary>The name of the contract.</summary>
    public const string FormatName = "contam-plan/1";

    /// <summary>Always <see cref="FormatName"/>.</summary>
    public string Format { get; init; } = FormatName;

    /// <summary>The family that was planned for.</summary>
    public required PlanFamily Family { get; init; }

    /// <summary>The standard that was planned by.</summary>
    public required PlanStandard Standard { get; init; }

    /// <summary>Ids of the failed parts, in the order of the family.</summary>
    public ImmutableArray<string> Failed { get; init; } = [];

    /// <summary>Where no failed part was named: how the failed parts were taken from what was found. Else left out.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public PlanFromFindings? FromFindings { get; init; }

    /// <summary>Names of the debris, in the order of the catalogue.</summary>
    public ImmutableArray<string> Debris { get; init; } = [];

    /// <summary>What was found, in the order given.</summary>
    public ImmutableArray<PlanFinding> Findings { get; init; } = [];

    /// <summary>Cautions, by the first step that they bear on.</summary>
    public ImmutableArray<PlanCaution> Cautions { get; init; } = [];

    /// <summary>Every part that the debris reaches or could have reached, in the order of the family.</summary>
    public ImmutableArray<PlanPart> Parts { get; init; } = [];

    /// <summary>Parts that only closed conditional joints would reach.</summary>
    public ImmutableArray<PlanConditional> Conditional { get; init; } = [];

    /// <summary>How many parts have no path from the failure at all.</summary>
    public int Clear { get; init; }

    /// <summary>What the work takes, before it begins.</summary>
    public PlanBefore Before { get; init; } = PlanBefore.Nothing;

    /// <summary>The methods that the steps use, numbered in the order of first use.</summary>
    public ImmutableArray<PlanMethod> Methods { get; init; } = [];

    /// <summary>The looks that decide how far to go, in order of work; empty for a flat plan.</summary>
    public ImmutableArray<PlanLook> Looks { get; init; } = [];

    /// <summary>Which finds at looks make clean looks void, so that these count as found as well; empty where none can.</summary>
    public ImmutableArray<PlanDisproof> Disproofs { get; init; } = [];

    /// <summary>By what the steps are numbered.</summary>
    public PlanSequence Sequence { get; init; }

    /// <summary>The steps, by number.</summary>
    public ImmutableArray<PlanStep> Steps { get; init; } = [];

    /// <summary>What must be ordered.</summary>
    public ImmutableArray<PlanOrderLine> Order { get; init; } = [];

    /// <summary>Hours.</summary>
    public required PlanHours Hours { get; init; }

    /// <summary>
    /// Only where an accepted clean finding cuts something: reach and hops, for each such debris once with those findings counted and once without.
    /// Else <c>null</c>, and the exposures of the parts are the evidence.
    /// </summary>
    public ImmutableArray<PlanEvidence>? Evidence { get; init; }
}

/// <summary>Which family.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Title">Its title.</param>
/// <param name="Sha256">The hash of what was read.</param>
public sealed record PlanFamily(string Id, string Title, string Sha256);

/// <summary>Which standard.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Sha256">The hash of what was read.</param>
public sealed record PlanStandard(string Id, string Sha256);

/// <summary>How the failed parts of a plan were taken from what was found.</summary>
/// <param name="Share">Suspects with at least this share of the suspicion count as failed.</param>
/// <param name="Suspects">The suspects that count as failed, by debris, then by falling share; one that is suspected of several debris stands once for each.</param>
/// <param name="NotCounted">For each debris with suspects that do not count, how many, and their shares together.</param>
public sealed record PlanFromFindings(double Share, ImmutableArray<PlanSuspect> Suspects, ImmutableArray<PlanNotCounted> NotCounted);

/// <summary>A suspect that counts as failed.</summary>
/// <param name="Part">The part.</param>
/// <param name="Debris">What it is suspected of shedding.</param>
/// <param name="Share">Its share of the suspicion.</param>
public sealed record PlanSuspect(string Part, string Debris, double Share);

/// <summary>Suspects that do not count as failed.</summary>
/// <param name="Debris">The debris.</param>
/// <param name="Suspects">How many.</param>
/// <param name="Share">Their shares together.</param>
public sealed record PlanNotCounted(string Debris, int Suspects, double Share);

/// <summary>A finding that the plan was made with.</summary>
public sealed record PlanFinding
{
    /// <summary>A find to which nothing leads from a failed part.</summary>
    public const string OwnSource = "own";

    /// <summary>A find larger than anything that a failed part can send there.</summary>
    public const string FurtherSource = "further";

    /// <summary>The part that was looked at.</summary>
    public required string Part { get; init; }

    /// <summary>The debris.</summary>
    public required string Debris { get; init; }

    /// <summary>Whether it was found; else the part was clean of it.</summary>
    public bool Found { get; init; }

    /// <summary>The size seen in µm, or <c>null</c>.</summary>
    public double? SizeUm { get; init; }

    /// <summary>Whether a clean finding was accepted, so that it may clear; <c>false</c> for a find.</summary>
    public bool Accepted { get; init; }

    /// <summary>Why a clean finding was not accepted; <c>null</c> where it was, and for a find.</summary>
    public string? NotAcceptedBecause { get; init; }

    /// <summary>Whether it is a clean finding that a find disproves: it clears nothing.</summary>
    public bool Void { get; init; }

    /// <summary>For a void finding the part where the find was made that disproves it; else <c>null</c>.</summary>
    public string? ContradictedBy { get; init; }

    /// <summary>
    /// For a find what it says of a source: <c>own</c> where nothing leads there from a failed part, <c>further</c> where it is larger than anything that a
    /// failed part can send there; else <c>null</c>.
    /// </summary>
    public string? Source { get; init; }

    /// <summary>Who looked, or <c>null</c>.</summary>
    public string? By { get; init; }

    /// <summary>When, as written, or <c>null</c>.</summary>
    public string? When { get; init; }
}

/// <summary>A caution.</summary>
/// <param name="Text">The text.</param>
/// <param name="Source">Its source.</param>
/// <param name="BeforeStep">The number of the first step that it bears on.</param>
public sealed record PlanCaution(string Text, string Source, int BeforeStep)
{
    /// <summary>The numbers of all steps that it bears on, rising; empty where it bears on the whole procedure.</summary>
    public ImmutableArray<int> Steps { get; init; } = [];
}

/// <summary>A look that decides how far to go. A look counts as found where debris was found at any of its places, or where a find elsewhere disproves a clean one.</summary>
public sealed record PlanLook
{
    /// <summary>Its letter: A for the first.</summary>
    public required string Id { get; init; }

    /// <summary>The ids of the places; several are like places that are looked at together.</summary>
    public ImmutableArray<string> Places { get; init; } = [];

    /// <summary>The names of the debris that it is for.</summary>
    public ImmutableArray<string> Debris { get; init; } = [];

    /// <summary>The number of the step in which it is made.</summary>
    public int Step { get; init; }

    /// <summary>A technician's minutes for the look at all its places, with what comes off for them alone.</summary>
    public double Minutes { get; init; }

    /// <summary>Letters of earlier looks: it is made when debris was found at any of them; empty for always.</summary>
    public ImmutableArray<string> OnlyIf { get; init; } = [];

    /// <summary>The chance of a find where it is made, from 0 to 1: shares of common practice, good for ranking only.</summary>
    public double Odds { get; init; }

    /// <summary>The ids of the parts that may be left alone on the strength of it.</summary>
    public ImmutableArray<string> Clears { get; init; } = [];

    /// <summary>A technician's minutes of the steps whose condition names it.</summary>
    public double MinutesHanging { get; init; }
}

/// <summary>
/// A find that clean looks cannot explain: it speaks against them. Each field holds letters of looks, in their order. A look that is void counts as found in every
/// condition. Only what was really found makes something void, not a look that counts as found.
/// </summary>
/// <param name="Found">Where debris was found at this look; empty for a find that the plan was made with.</param>
/// <param name="Clean">And all of these are clean,</param>
/// <param name="Void">then those of these that are clean are void.</param>
public sealed record PlanDisproof(ImmutableArray<string> Found, ImmutableArray<string> Clean, ImmutableArray<string> Void);

/// <summary>What the standard asks of a part for one debris that has come so far.</summary>
/// <param name="Debris">The debris.</param>
/// <param name="Grade">How far: exposed or guarded. A failed part, and a guarded one that its clearance or <see cref="PlanPart.ClearedBy"/> makes count so, is asked about as exposed.</param>
/// <param name="Treatment">The treatments.</param>
/// <param name="Rule">The rule they come from.</param>
public sealed record PlanAsk(string Debris, Grade Grade, ImmutableArray<TreatmentKind> Treatment, PlanRule Rule);

/// <summary>A part that the debris reaches or could have reached.</summary>
public sealed record PlanPart
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Its kind.</summary>
    public required string Kind { get; init; }

    /// <summary>The circuits it stands in.</summary>
    public ImmutableArray<string> Circuits { get; init; } = [];

    /// <summary>What reaches it, a line for each debris, in the order of <see cref="PlanDocument.Debris"/>.</summary>
    public ImmutableArray<PlanExposure> Exposure { get; init; } = [];

    /// <summary>Its treatments, in the order of <see cref="TreatmentKind"/>; empty exactly where it is cleared of everything.</summary>
    public ImmutableArray<TreatmentKind> Treatment { get; init; } = [];

    /// <summary>The rule that gave the treatment, the first where several did; <c>null</c> where it is cleared of everything.</summary>
    public PlanRule? Rule { get; init; }

    /// <summary>Letters of looks: it is treated when debris was found at any of them; empty for always. A step of it may have a narrower condition.</summary>
    public ImmutableArray<string> OnlyIf { get; init; } = [];

    /// <summary>What spares it: <c>nothing</c>, <c>two-looks</c> or <c>one-look</c>.</summary>
    public string ClearedBy { get; init; } = "one-look";

    /// <summary>The clearance in µm, from which on a particle counts as of full size; <c>null</c> for none.</summary>
    public double? ClearanceUm { get; init; }

    /// <summary>What each grade that can come about asks for, in the order of the debris; exposed before guarded.</summary>
    public ImmutableArray<PlanAsk> Asks { get; init; } = [];

    /// <summary>How the first line of <see cref="Exposure"/> comes here, from the source to this part.</summary>
    public ImmutableArray<string> Path { get; init; } = [];
}

/// <summary>How one debris reaches a part.</summary>
/// <param name="Debris">The debris.</param>
/// <param name="Grade">How far.</param>
/// <param name="ReachUm">The largest particle that can get here in µm; <c>null</c> for unlimited.</param>
/// <param name="From">The source that the hops lead back to.</param>
/// <param name="Via">The part that the debris came through last; <c>null</c> for a source itself.</param>
public sealed record PlanExposure(string Debris, Grade Grade, double? ReachUm, string From, string? Via);

/// <summary>A rule of the standard.</summary>
/// <param name="File">Its file.</param>
/// <param name="Line">Its line.</param>
/// <param name="Because">Its reason.</param>
public sealed record PlanRule(string File, int Line, string Because);

/// <summary>Parts that would be reached too if another part had failed.</summary>
/// <param name="IfFailed">Look at this part.</param>
/// <param name="Parts">If it has failed, these are reached too, in the order of the family.</param>
/// <param name="AlsoFailed">These must have failed with it, or the parts are not reached; usually empty.</param>
public sealed record PlanConditional(string IfFailed, ImmutableArray<string> Parts, ImmutableArray<string> AlsoFailed);

/// <summary>A way of working that several steps share, said once.</summary>
/// <param name="Id">M1, M2 and so on.</param>
/// <param name="Title">Its name.</param>
/// <param name="Text">What is done, until when, and what would make one stop.</param>
/// <param name="Tools">Tools.</param>
/// <param name="Supplies">What is used up, by name; how much of it stands in <see cref="PlanBefore"/>.</param>
public sealed record PlanMethod(string Id, string Title, string Text, ImmutableArray<string> Tools, ImmutableArray<string> Supplies);

/// <summary>What the work takes.</summary>
/// <param name="Hands">People.</param>
/// <param name="Tools">Tools, in the order of first use.</param>
/// <param name="Supplies">What is used up, in the order of first use. Spares and fluids stand in <see cref="PlanDocument.Order"/>.</param>
public sealed record PlanBefore(ImmutableArray<string> Hands, ImmutableArray<string> Tools, ImmutableArray<PlanSupply> Supplies)
{
    /// <summary>Nothing said.</summary>
    public static PlanBefore Nothing { get; } = new([], [], []);
}

/// <summary>Something that is used up.</summary>
/// <param name="Item">What.</param>
/// <param name="Quantity">How much.</param>
/// <param name="Unit">The unit; <c>null</c> for pieces.</param>
public sealed record PlanSupply(string Item, double Quantity, string? Unit);

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
}

/// <summary>A line of what must be ordered.</summary>
/// <param name="Item">What.</param>
/// <param name="Quantity">How many, or how much in <paramref name="Unit"/>.</param>
/// <param name="Why">seal, filter, replaced part, fluid.</param>
/// <param name="Unit"><c>L</c> for a fluid, else <c>null</c> for pieces.</param>
/// <param name="LeadDays">Working days until it is there; <c>null</c> for not said.</param>
public sealed record PlanOrderLine(string Item, double Quantity, string Why, string? Unit, double? LeadDays)
{
    /// <summary>Letters of looks: it is needed when debris was found at any of them; empty for whatever is seen.</summary>
    public ImmutableArray<string> OnlyIf { get; init; } = [];
}

/// <summary>Hours of a plan.</summary>
/// <param name="Bench">Technicians' hours, the most that the looks can lead to.</param>
/// <param name="Elapsed">Working hours from start to end with every step done.</param>
/// <param name="Technicians">How many technicians.</param>
/// <param name="LowerBoundElapsed">No order of these steps can end sooner than this.</param>
/// <param name="ElapsedFree">Working hours of the shortest schedule that was found when the phases of the bench are left free; at most <paramref name="Elapsed"/>.</param>
public sealed record PlanHours(double Bench, double Elapsed, int Technicians, double LowerBoundElapsed, double ElapsedFree)
{
    /// <summary>Technicians' hours where every look is clean: what is sure. The same as <see cref="Bench"/> for a flat plan.</summary>
    public double BenchAllClean { get; init; } = Bench;

    /// <summary>Technicians' hours to be expected, by shares of common practice.</summary>
    public double BenchExpected { get; init; } = Bench;

    /// <summary>Working hours from start to end where every look is clean.</summary>
    public double ElapsedAllClean { get; init; } = Elapsed;

    /// <summary>The hours of a working day, by the standard.</summary>
    public double WorkingDay { get; init; } = 8;
}

/// <summary>Reach and hops of one debris, under one reading of the clean findings.</summary>
/// <param name="Debris">The debris.</param>
/// <param name="CleanFindings">Whether accepted clean findings count.</param>
/// <param name="Parts">Every part that is reached, in the order of the family.</param>
public sealed record PlanEvidence(string Debris, bool CleanFindings, ImmutableArray<PlanReach> Parts);

/// <summary>How one part is reached.</summary>
/// <param name="Part">The part.</param>
/// <param name="ReachUm">The largest particle in µm; <c>null</c> for unlimited.</param>
/// <param name="From">The source that the hops lead back to.</param>
/// <param name="Via">The part before it; <c>null</c> for a source.</param>
public sealed record PlanReach(string Part, double? ReachUm, string From, string? Via);
