using System.Globalization;
using Contam.Jobs;
using Contam.Reports.Text;

namespace Contam.Cli.Jobs;

/// <summary>How a refusal of the record is worded, and what to type instead. The rules themselves stand with the record.</summary>
internal static class RefusalWords
{
    /// <summary>Whether what was typed cannot be meant, so that the call ends with 2; else the answer is no.</summary>
    public static bool IsWrongUse(Refusal refusal) => refusal is NoSuchStep or NoSuchThing or NoPlaceOfLook or NotAway or AwayAlready or WorkedOnBefore or FoundBefore or TextRefused;

    /// <summary>The refusal as a sentence or two; for wrong use without a capital, since the name of the command goes before it.</summary>
    public static string Of(Refusal refusal) => refusal switch
    {
        NoSuchStep one => string.Create(CultureInfo.InvariantCulture, $"there is no step {one.Number}: this job has steps 1 to {one.Steps}. contam job show lists them."),
        DoneAlready one => $"Step {Number(one.Step.Number)} is done already, by {one.By}.",
        OpenAlready one => $"Step {Number(one.Step.Number)} is open already.",
        NotItsTurn one => $"Step {Number(one.Step.Number)} is not its turn. First comes step {Number(one.First.Number)}: {one.First.Text}",
        RunsTheEngine one => $"Step {Number(one.Step.Number)} runs the engine, and the job is not released. contam job release says what is missing.",
        WouldHarm one => $"Step {Number(one.Step.Number)} cannot be done now: {one.What}. No reason helps here. Do what comes first, or untick what was not done: contam job next.",
        IsAway one => $"Step {Number(one.Step.Number)} cannot be done now: {one.Part} is at the outside workshop. When it is here again: contam job back {one.Part}.",
        NotAway one => $"{TextPage.Harmless(one.Part)} is not away. contam job next says what is.",
        AwayAlready one => $"{TextPage.Harmless(one.Part)} is away already. contam job next says what is.",
        NoSuchThing one => NoSuch(one),
        LookedBefore one => $"Look {one.Look} has an outcome: {one.Outcome}, by {one.By}. Where that was wrong, say the new one with --again.",
        LookNotDue { IsUndecided: true } one => $"Look {one.Look} is not due yet: it is made only where look {string.Join(" or ", one.HangsOn)} shows debris. Say first what that look showed.",
        LookNotDue one => $"Look {one.Look} is not due: it is made only where look {string.Join(" or ", one.HangsOn)} shows debris, and that was clean. What was seen there all the same is told by contam job found or contam job clean.",
        NoPlaceOfLook one => $"look {one.Look} is not made at {one.Part}, but at {string.Join(", ", one.Places)}. Name one of these with --at, or use contam job found.",
        NeedsOutcome one => $"Step {Number(one.Step.Number)} is look {one.Look}, which decides what else is done. Say what was seen: contam job look {one.Look} --clean, or --found DEBRIS.",
        ReleasedBefore one => $"Look {one.Look} takes no outcome any more: the job is released. What was found since is told by contam job found, and takes the release back.",
        WorkedOnBefore one => $"{one.Part} was worked on in step {Number(one.Step.Number)}; that it is clean now says nothing of what came through it before. Write it down with contam job note.",
        FoundBefore one => $"{one.Debris} was found at {one.Part}; a look afterwards does not take that back. Write it down with contam job note.",
        WrittenMeanwhile => "Somebody has written to the job meanwhile, so nothing is changed. Do it again.",
        TextRefused one => $"{Field(one.Field)} {Fault(one.Fault)}",
        NotComplete => "The engine may not be run. contam job release says what is missing.",
        PlanRefused { IsAnother: true } one => $"no job is opened with this plan, for planning again gives another: {TextPage.Harmless(one.Why)}. Leave --plan out and open the job from what failed: --failed PART.",
        PlanRefused one => $"no job is opened, for the plan does not hold: {TextPage.Harmless(one.Why)}. Nothing was written.",
        NotConfirmed one => Unconfirmed(one),
        _ => throw new ArgumentOutOfRangeException(nameof(refusal), refusal, "not worded"),
    };

    private static string NoSuch(NoSuchThing one)
    {
        string what = one.Thing switch
        {
            NamedThing.Item => "item on the order list",
            NamedThing.Part => "part in this job",
            NamedThing.Debris => "debris in the standard",
            NamedThing.Look => "look in this job's plan",
            _ => "limit in the family",
        };
        string[] near = [.. NearName.AllOf(one.Name, one.Known, most: 3)];
        if (one.Thing == NamedThing.Look)
            return $"there is no {what} called {TextPage.Harmless(one.Name)}. {(one.Known.IsEmpty ? "It has no looks" : $"It has {string.Join(", ", one.Known)}")}; contam job show lists them.";
        return $"there is no {what} called {TextPage.Harmless(one.Name)}.{(near.Length == 0 ? "" : $" Did you mean {string.Join(" or ", near)}?")}";
    }

    private static string Unconfirmed(NotConfirmed one) =>
        $"it counts parts as clean, and nobody here stands for that: {string.Join("; ", one.Findings.Select(Sentence))}. Nothing was written. "
        + $"For each of them say who looked: {string.Join(' ', one.Findings.Take(3).Select(finding => $"--confirm-findings {finding.Part}={finding.Debris}:NAME"))}{(one.Findings.Length > 3 ? " …" : "")}. What nobody can stand for is planned without.";

    /// <summary>A clean finding as a clause.</summary>
    public static string Sentence(CleanFinding one) =>
        $"{one.Part} clean of {one.Debris}{(one.By is { } by ? $", by {TextPage.Harmless(by)}" : "")}{(one.When is { } when ? $", {TextPage.Harmless(when)}" : "")}";

    private static string Field(string field) => field switch
    {
        "name" => "--by",
        "customer" => "--customer",
        "engine" => "--engine",
        "technician" => "--technician",
        "file" => "the name of the file",
        "reason" => "the reason",
        _ => "the note",
    };

    private static string Fault(RecordTextFault fault) => fault switch
    {
        RecordTextFault.Empty => "is empty. Write something there.",
        RecordTextFault.TooLong => $"is longer than {Number(RecordText.Longest)} characters. Write less, or in several entries.",
        RecordTextFault.Invisible => "has a character that nobody can see, so that two names could look alike. Type it again without.",
        _ => "has half a character. Type it again.",
    };

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
