using System.Collections.Immutable;
using System.Globalization;
using Contam.Drills;
using Contam.Families;
using Contam.Plans;
using Contam.Reports.Text;

namespace Contam.Reports.Drills;

/// <summary>A choice in words.</summary>
/// <param name="Letter">The letter that it is called by.</param>
/// <param name="Text">What is offered, where it is one line; else empty.</param>
/// <param name="Steps">What is offered, where it is several lines in order.</param>
/// <param name="IsRight">Whether it is right.</param>
/// <param name="Because">Why, or why not, in whole sentences.</param>
/// <param name="Choice">What it was worded from.</param>
internal sealed record SheetChoice(string Letter, string Text, ImmutableArray<string> Steps, bool IsRight, string Because, DrillChoice Choice);

/// <summary>A question in words.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Asks">The question.</param>
/// <param name="Given">What must be known to answer it and stands in no drawing.</param>
/// <param name="Choices">The choices.</param>
/// <param name="Kind">What is asked.</param>
internal sealed record SheetQuestion(int Number, string Asks, ImmutableArray<string> Given, ImmutableArray<SheetChoice> Choices, DrillKind Kind)
{
    public SheetChoice Right => Choices.Single(choice => choice.IsRight);
}

/// <summary>The words of an exercise that every format shares. Names of parts stand in them as they were written; each format makes them harmless its own way.</summary>
internal sealed class DrillSheet
{
    private readonly Drill drill;
    private readonly Names names;
    private readonly TextLook look;

    public DrillSheet(Drill drill, TextLook look)
    {
        this.drill = drill;
        this.look = look;
        names = new Names(drill.Request.Family);
        Questions = [.. drill.Questions.Select((question, index) => Of(question, index + 1))];
    }

    public string Title => $"Drill: {FailureWords.Title(Failures, [.. drill.Request.Debris.Select(one => one.Name)], names.Of, look)}";

    public string FamilyLine => drill.Request.Family is { Title.Length: > 0 } family ? $"{family.Title} ({family.Id})" : drill.Request.Family.Id;

    public string Task => $"{Capital(FailedAndShed)}. "
        + $"Work it out on the circuits before you turn to the answers. Each question has one right answer.";

    public string SeedLine => string.Create(CultureInfo.InvariantCulture, $"Seed {drill.Request.Seed}: the same seed gives the same questions.");

    public ImmutableArray<SheetQuestion> Questions { get; }

    /// <summary>The questions that this failure cannot pose, each with the reason.</summary>
    public ImmutableArray<(DrillKind Kind, string Text)> LeftOut => [.. drill.LeftOut.Select(one => (one.Kind, $"{TopicOf(one.Kind)}: {Reason(one)}."))];

    /// <summary>How the debris goes on: each hop with what is reached in it.</summary>
    public ImmutableArray<(int Hop, string Text, ImmutableArray<DrillHop> Parts)> Hops =>
        [.. drill.Spread.GroupBy(hop => hop.Hop).Select(hop => (hop.Key, Capital(names.Folded(hop.Select(one => one.Part.Value))), hop.ToImmutableArray()))];

    public static string WordOf(DrillKind kind) => kind switch
    {
        DrillKind.NextReached => "next",
        DrillKind.TrustedFilter => "filter",
        DrillKind.OffFirst => "off first",
        DrillKind.StopLine => "stop line",
        DrillKind.LeftAlone => "left alone",
        _ => "order",
    };

    private static string TopicOf(DrillKind kind) => kind switch
    {
        DrillKind.NextReached => "What is reached next",
        DrillKind.TrustedFilter => "What can be trusted to hold it back",
        DrillKind.OffFirst => "What must come off first",
        DrillKind.StopLine => "Where to look so that the rest can be left alone",
        DrillKind.LeftAlone => "What can be left alone when a look is clean",
        _ => "Which order dirties a cleaned part",
    };

    private string Reason(LeftOutQuestion one) => one.Why switch
    {
        DrillSilence.NothingBeyond => $"{Debris(" and ")} goes no further than what has failed",
        DrillSilence.NothingHolds => $"nothing that {Debris(" or ")} comes to is said to hold any of it back",
        DrillSilence.NothingInTheWay => "nothing is in the way of any part that comes off here",
        DrillSilence.NoLookSaves => StopLineText.Because(one.Line, Debris(" and ")),
        DrillSilence.NoLookDecides => "no look decides how far to go here",
        DrillSilence.NoOrderDirties => "no few steps of this plan were found that dirty a cleaned part in one order and not in two others",
        _ => "there are too few other parts to make wrong choices from",
    };

    private SheetQuestion Of(DrillQuestion question, int number)
    {
        (string asks, ImmutableArray<string> given) = question.Kind switch
        {
            DrillKind.NextReached => ($"{Capital(Debris(" and "))} leaves {Failed}. Which of these does it reach next, over one joint alone?", ImmutableArray<string>.Empty),
            DrillKind.TrustedFilter => ($"Which of these can be trusted to hold {question.Debris!.Name} back, and why not the others?", []),
            DrillKind.OffFirst => ($"{Capital(In(question.About!.Value))} is to come off. What must come off first?", [.. question.InTheWay.Select(one => $"In the way of {In(one.Part)}: {Folded(one.Access)}.")]),
            DrillKind.StopLine => ("Where would you look so that, all of it clean, the rest can be left alone for the least work?", [.. question.Places.Select(Told)]),
            DrillKind.LeftAlone => ($"The plan makes these looks. Look {question.CleanLook} is clean, and nothing that is found later speaks against it. Which of these can be left alone then?", [.. question.Looks.Select(Told)]),
            _ => ("All other steps are done in their places. Which of these three orders dirties a part that is clean?", []),
        };
        return new SheetQuestion(number, asks, given, [.. question.Choices.Select((choice, index) => Of(question, choice, ((char)('a' + index)).ToString()))], question.Kind);
    }

    private SheetChoice Of(DrillQuestion question, DrillChoice choice, string letter)
    {
        (string text, ImmutableArray<string> steps, string because) = choice switch
        {
            NextChoice next => (names.Of(next.Part.Value), ImmutableArray<string>.Empty, Because(next)),
            FilterChoice filter => (Offered(filter, question.Debris!), [], Because(filter, question.Debris!)),
            OffChoice off => (names.Of(off.Part.Value), [], Because(off, question.About!.Value)),
            LookChoice looks => (Capital(Folded(looks.Looks)), [], Because(looks, question)),
            LeftAloneChoice part => (names.Of(part.Part.Value), [], Because(part, question.CleanLook!)),
            OrderChoice order => ("", [.. order.Steps.Select(StepText)], Because(order)),
            _ => throw new InvalidOperationException($"a choice of a sort that has no words: {choice.GetType().Name}"),
        };
        return new SheetChoice(letter, text, steps, choice.IsRight, because, choice);
    }

    private string Because(NextChoice next)
    {
        string upstream = next.IsUpstream ? $"It lies upstream: it leads into {Failed}. " : "";
        return next switch
        {
            { Hops: 1 } => Way(next.Path),
            { Hops: { } hops } => string.Create(CultureInfo.InvariantCulture, $"{upstream}It is reached, but over {hops} joints: {Way(next.Path)}"),
            { Closed: { } closed } => $"The joint there from {In(closed.From)} is shut: {(closed.OnlyIfFailed is { } waits ? $"it opens only if {In(waits)} has failed" : "this engine has no state in which it is open")}.",
            _ => upstream + $"No open way leads there from {Failed}.",
        };
    }

    private string Offered(FilterChoice filter, Debris debris)
    {
        if (filter.Part is not { } part)
            return "None of them";
        Part described = drill.Request.Family[part];
        string rating = described.HasAbsoluteRating ? "absolute" : described.RatingIsSaid ? "nominal" : "no rating said";
        string holds = filter.Holds is { } size ? $"{HoldsText(size, debris)}, {rating}{(described.HasBypass ? ", opens past itself when loaded" : "")}" : $"not said to hold {debris.Name}";
        return $"{names.Of(part.Value)} ({holds})";
    }

    private string HoldsText(ParticleSize size, Debris debris) =>
        !debris.HasSize || size == ParticleSize.Zero ? $"holds {debris.Name}" : $"holds {debris.Name} above {UnitText.Size(size.Micrometres, look)}";

    private string Because(FilterChoice filter, Debris debris) => filter.Trust switch
    {
        FilterTrust.Trusted => $"Its rating is absolute and nothing goes round it. Even so, what lies beyond is guarded at best, never clear. {ComesBy(filter, debris)}",
        FilterTrust.HasFailed => "It has failed, and a failed part holds nothing.",
        FilterTrust.IsNominalAndOpensPast => $"{Nominal(filter)}, and it opens past itself when it is loaded. {ComesBy(filter, debris)}",
        FilterTrust.IsNominal => $"{Nominal(filter)}. {ComesBy(filter, debris)}",
        FilterTrust.OpensPast => $"It opens past itself when it is loaded, and nobody can say what it let by. {ComesBy(filter, debris)}",
        FilterTrust.HoldsNothing => $"Nothing says that it holds {debris.Name}.",
        _ when filter.NoneCan => "Each of them may have let debris by.",
        _ => "One of them can be.",
    };

    private string Nominal(FilterChoice filter) => drill.Request.Family[filter.Part!.Value].RatingIsSaid
        ? "Its rating is nominal: some larger particles get through"
        : "Nobody says how surely it holds, and what is not known is not trusted";

    private string ComesBy(FilterChoice filter, Debris debris) => filter.Path.Length < 2 ? "" : $"{Capital(debris.Name)} comes to it by {Way(filter.Path)}";

    private string Because(OffChoice off, PartId about) => off switch
    {
        { IsRight: true } => $"Nothing is in its own way. Then, one after another: {Way(off.Path)}",
        { IsInTheWay: true } => $"It is in the way, but {Folded(off.Behind)} {Are(off.Behind.Length)} in its own way.",
        { ComesAfter: true } => $"It comes off after {In(about)}, which is in its way.",
        _ when off.Part == about => $"{Capital(Folded(off.Behind))} {Are(off.Behind.Length)} in its way.",
        _ => $"It is not in the way of {In(about)}, nor of anything that is.",
    };

    private string Because(LookChoice looks, DrillQuestion question)
    {
        string spares = string.Create(CultureInfo.InvariantCulture, $"All clean, {looks.Spares} {(looks.Spares == 1 ? "part is" : "parts are")} left alone; looking and treating take {looks.Takes:0.#} min.");
        if (looks.IsRight)
            return spares + " No other choice takes less.";
        string more = string.Create(CultureInfo.InvariantCulture, $" That is {looks.Takes - question.Choices.OfType<LookChoice>().First(one => one.IsRight).Takes:0.#} min more.");
        string doubt = looks.NotCounting.IsEmpty ? "" : $"A clean look at {Folded(looks.NotCounting)} does not count. ";
        string past = looks.Path.Length < 2 ? "" : $" {Capital(Debris(" and "))} still gets past: {Way(looks.Path)}";
        return doubt + spares + more + past;
    }

    private string Because(LeftAloneChoice part, string clean)
    {
        if (part.OnlyIf.IsEmpty)
            return "It is treated whatever the looks show." + (part.Path.Length < 2 ? "" : $" {Capital(Debris(" or "))} can come there past no look: {Way(part.Path)}");
        if (!part.IsRight)
            return $"It is left alone only if {Looks(part.StillOpen)} {Are(part.StillOpen.Length)} clean{(part.OnlyIf.Contains(clean) ? " as well" : "")}.";
        ImmutableArray<string> notMade = part.OnlyIf.Remove(clean);
        return $"It is treated only if {Debris(" or ")} is found at {Looks(part.OnlyIf, "or")}{(notMade.IsEmpty ? "" : $", and {Looks(notMade)} {Are(notMade.Length)} not made then")}.";
    }

    private string Told(Plans.PlanLook look) =>
        $"Look {look.Id}: {names.Folded(look.Places)}{(look.OnlyIf.IsEmpty ? "" : $"; made only if {Debris(" or ")} was found at {Looks(look.OnlyIf, "or")}")}.";

    // "look A", "looks A and B".
    private static string Looks(ImmutableArray<string> letters, string joined = "and") =>
        letters.Length == 1 ? $"look {letters[0]}" : $"looks {string.Join(", ", letters[..^1])} {joined} {letters[^1]}";

    private string Told(LookPlace place) => place.Shows is { } shows
        ? string.Create(CultureInfo.InvariantCulture, $"{names.Of(place.Part.Value)}: a look takes {place.Minutes:0.#} min and shows debris {(shows == Shows.Good ? "well" : shows == Shows.Fair ? "only fairly well" : "poorly")}{(drill.Request.Failed.Contains(place.Part) ? "; it is what has failed" : "")}.")
        : $"{names.Of(place.Part.Value)}: no way to look there is described.";

    private string Because(OrderChoice order)
    {
        if (order.Fault is not { } fault)
            return "Played step by step, nothing goes wrong.";
        int at = order.Steps.IndexOf(order.Steps.First(step => step.Number == fault.Step));
        string goesWrong = OrderChoice.PartsOf(order.Steps[at]).Contains(order.Path[^1])
            ? $"{In(order.Path[0])}, which leads into {In(order.Path[^1])}, is still dirty and dirties it again"
            : $"what is flushed out of {In(order.Path[0])} dirties {In(order.Path[^1])} again";
        return string.Create(CultureInfo.InvariantCulture, $"Its step {at + 1}, {StepText(order.Steps[at])}: {goesWrong}.");
    }

    private string StepText(Plans.PlanStep step)
    {
        string what = names.Folded(OrderChoice.PartsOf(step).Select(part => part.Value));
        return step.Action switch
        {
            StepAction.Replace => $"put a new part in place of {what}",
            _ => $"{step.Action.ToString().ToLowerInvariant()} {what}",
        };
    }

    private string Failed => names.Folded(drill.Request.SourcesOf().Select(part => part.Value));

    private ImmutableArray<PlanFailure> Failures => PlanFailures.Of(drill.Request.Failures, drill.Request.Debris);

    private string FailedAndShed => PlanFailures.AllShedTheSame(Failures, [.. drill.Request.Debris.Select(one => one.Name)])
        ? $"{names.Folded(drill.Request.Failed.Select(part => part.Value))} {(drill.Request.Failed.Length == 1 ? "has" : "have")} failed and shed {Debris(" and ")}"
        : "these have failed: " + string.Join(", ", Failures.GroupBy(failure => failure.Part, StringComparer.Ordinal).Select(part => $"{names.InSentence(part.Key)} ({FailureWords.Shed(part, look)})"));

    private string Debris(string joined) => string.Join(joined, drill.Request.Debris.Select(one => one.Name));

    private string In(PartId part) => names.InSentence(part.Value);

    private string Folded(ImmutableArray<PartId> parts) => names.Folded(parts.Select(part => part.Value));

    private string Way(ImmutableArray<PartId> path) => string.Join(" > ", path.Select(In)) + ".";

    private static string Are(int count) => count == 1 ? "is" : "are";

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
