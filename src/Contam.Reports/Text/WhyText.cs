using System.Globalization;
using Contam.Families;
using Contam.Plans;
using Contam.Why;

namespace Contam.Reports.Text;

/// <summary>Why a part is on the list, or why not, for a person.</summary>
public static class WhyText
{
    /// <summary>Writes the explanation hop by hop.</summary>
    /// <param name="why">The explanation.</param>
    /// <param name="family">For names.</param>
    /// <param name="writer">Where it goes.</param>
    /// <param name="look">How wide, and whether in colour.</param>
    /// <param name="howFar">Which looks decide how far to go after this failure; <c>null</c> to say nothing of them.</param>
    public static void Write(Explanation why, Family family, TextWriter writer, TextLook look, LooksAnswer? howFar = null)
    {
        ArgumentNullException.ThrowIfNull(why);
        ArgumentNullException.ThrowIfNull(family);
        var page = new TextPage(writer, look);
        var names = new Names(family);
        if (why.NotReached is { } notReached)
        {
            page.Subheading($"{names.Of(why.Part.Value)}: clear of {why.Debris.Name}");
            foreach (string reason in Reasons(why.Part, notReached, names))
                page.Paragraph(reason, indent: 2);
            Contradictions(page, why, names);
            return;
        }

        page.Subheading($"{names.Of(why.Part.Value)}: {why.Grade!.Value.ToString().ToLowerInvariant()} to {why.Debris.Name}{Size(why, look)}");
        page.Heading("How it gets here");
        Hops(page, why, names, look);
        Barriers(page, why, names, look);
        page.Heading("What would have to hold");
        foreach (string line in Ways(why, names))
            page.Paragraph(line, indent: 2);
        Contradictions(page, why, names);
        page.Heading("What is done with it");
        page.Paragraph(Treatment(why, names), indent: 2);
        if (howFar is not null && !why.Treatments.IsEmpty)
        {
            page.Heading("Which look would spare it");
            page.Paragraph(Sparing(why, SparedBy(why, howFar), names), indent: 2);
        }
    }

    /// <summary>The looks on which the part hangs: it is left alone where none of them finds anything; none where no look spares it.</summary>
    internal static IEnumerable<LookToMake> SparedBy(Explanation why, LooksAnswer howFar) =>
        howFar.Parts.FirstOrDefault(part => part.Id == why.Part.Value)?.When is { } when ? howFar.Looks.Where(look => when.OnlyIf.Contains(look.Letter - LookCondition.LetterOf(0))) : [];

    private static string Sparing(Explanation why, IEnumerable<LookToMake> looks, Names names)
    {
        string[] places = [.. looks.Select(look => $"{names.Folded(look.Places)} (look {look.Letter})")];
        return places.Length switch
        {
            0 => why.Hops.IsEmpty ? "None: it is where the debris comes from, or was found." : "None that the plan makes: it is treated whatever the looks show.",
            1 => $"A clean look at {places[0]}.",
            _ => $"Clean looks at {Join(places)}, those of them that are due: it is treated when {why.Debris.Name} is found at any of these.",
        };
    }

    private static void Contradictions(TextPage page, Explanation why, Names names)
    {
        foreach (string sentence in ContradictionWords.Sentences(why.Contradictions, names))
            page.Paragraph(sentence, indent: 2);
    }

    /// <summary>One paragraph that a customer understands.</summary>
    public static string Plain(Explanation why, Family family)
    {
        ArgumentNullException.ThrowIfNull(why);
        var names = new Names(family);
        string part = names.InSentence(why.Part.Value);
        if (why.NotReached is { } notReached)
            return $"The {part} can be left alone: {why.Debris.Name} has no way to it. {string.Join(" ", Reasons(why.Part, notReached, names))}";
        string how = why.Hops.IsEmpty
            ? $"The {part} is where the {why.Debris.Name} comes from or was found."
            : $"The {why.Debris.Name} can be carried from the {names.InSentence(why.Hops[0].From.Value)} to the {part}"
              + (why.Hops.Length == 1 ? ", which is joined straight to it." : $" by way of {string.Join(", ", why.Hops.Skip(1).Select(hop => names.InSentence(hop.From.Value)))}.");
        string doing = why.Treatments.IsEmpty
            ? " What was found clean on the way lets it be left alone."
            : $" So it must be {Join(why.Treatments.Select(PastOf))} before the engine may run.";
        return how + doing + (why.Rule is { Because.Length: > 0 } rule ? $" The reason: {rule.Because.TrimEnd('.')}." : "");
    }

    private static string Size(Explanation why, TextLook look) => why.Reach switch
    {
        null => "",
        { IsUnlimited: true } => why.Debris.HasSize ? " of any size" : "",
        { Micrometres: 0 } => "; nothing arrives if everything on the way holds",
        { } reach => $" up to {UnitText.Size(reach.Micrometres, look)}",
    };

    private static void Hops(TextPage page, Explanation why, Names names, TextLook look)
    {
        if (why.Hops.IsEmpty)
        {
            page.Paragraph("It is the failed part, or the debris was found here.", indent: 2);
            return;
        }

        if (why.Shed is { IsUnlimited: false } shed)
            page.Paragraph($"{names.Of(why.Hops[0].From.Value)} sheds pieces of up to {UnitText.Size(shed.Micrometres, look)}.", indent: 2);
        ParticleSize narrowest = why.Hops.Min(hop => hop.LetsOn);
        foreach (Hop hop in why.Hops)
        {
            string lets = hop.LetsOn.IsUnlimited ? "lets any size on" : hop.LetsOn.Micrometres == 0 ? "lets nothing on" : $"lets up to {UnitText.Size(hop.LetsOn.Micrometres, look)} on";
            string narrow = hop.LetsOn == narrowest && !narrowest.IsUnlimited ? "  <- the narrowest place" : "";
            string when = hop.When == EngineStates.All ? "" : $" when {string.Join(" or ", States(hop.When))}";
            page.Row(2, ($"{names.InSentence(hop.From.Value)} > {names.InSentence(hop.To.Value)}", 44), ($"{hop.Circuit}{when}; {lets}{narrow}", 0));
        }
    }

    private static void Barriers(TextPage page, Explanation why, Names names, TextLook look)
    {
        if (why.Barriers.IsEmpty)
            return;
        page.Subheading("Barriers on this way");
        foreach (BarrierPassed barrier in why.Barriers)
        {
            string holds = barrier.Holds.Micrometres == 0 ? "holds it all" : $"holds what is above {UnitText.Size(barrier.Holds.Micrometres, look)}";
            page.Row(2, (names.Of(barrier.Part.Value), 26), ($"{holds}; {(barrier.IsReliedOn ? "relied on" : "not relied on")}: {barrier.Because}", 0));
        }
    }

    private static IEnumerable<string> Ways(Explanation why, Names names)
    {
        if (why.Hops.IsEmpty && why.Cut.IsEmpty && !why.IsJoinedToSource)
        {
            yield return "Nothing can: it is a source of the debris itself.";
            yield break;
        }

        if (why.LastSinglePart is { } last)
            yield return $"All debris must pass {names.InSentence(last.Value)} last, whichever way it takes.";
        if (why.IsJoinedToSource)
            yield return "A joint leads here straight from where the debris comes from; nothing stands between.";
        if (!why.Cut.IsEmpty)
        {
            string count = why.Cut.Length == 1 ? "One part" : string.Create(CultureInfo.InvariantCulture, $"{why.Cut.Length} parts together");
            yield return $"{count} would have to hold to keep {(why.IsJoinedToSource ? "the other ways shut" : "it clean")}: {string.Join(", ", why.Cut.Select(one => names.InSentence(one.Value)))}.";
        }

        foreach (Finding finding in why.ClearedBy)
            yield return $"Cleared by: {names.InSentence(finding.Part.Value)} was clean{(finding.By is null ? "" : $" ({finding.By}{(finding.When is null ? "" : ", " + finding.When)})")}.";
    }

    private static string Treatment(Explanation why, Names names)
    {
        if (why.Treatments.IsEmpty)
            return $"Nothing, on the strength of what was found clean. {names.Of(why.Part.Value)} stays on the list.";
        string treatments = Join(why.Treatments.Select(one => one.ToString().ToLowerInvariant()));
        return why.Rule is { } rule
            ? $"{treatments}, by the rule at {rule.Place.File}:{rule.Place.Line.ToString(CultureInfo.InvariantCulture)}{(rule.Because.Length > 0 ? ": " + rule.Because : "")}"
            : $"{treatments}, because no rule of the standard fits";
    }

    /// <summary>What keeps a part clear, a sentence each.</summary>
    internal static IEnumerable<string> Reasons(PartId part, NotReached notReached, Names names)
    {
        if (notReached.Upstream.IsEmpty)
            yield return $"No open joint leads to {names.InSentence(part.Value)} at all.";
        else
            yield return $"Only {UpTo(6, [.. notReached.Upstream.Select(one => names.InSentence(one.Value))])} lead{(notReached.Upstream.Length == 1 ? "s" : "")} here, and none of these is reached.";
        foreach (IGrouping<PartId, Joint> group in notReached.Closed.Where(joint => joint.OnlyIfFailed is not null).GroupBy(joint => joint.OnlyIfFailed!.Value))
        {
            Joint joint = group.First();
            yield return $"The joint from {names.InSentence(joint.From.Value)} to {names.InSentence(joint.To.Value)} is closed, because {names.InSentence(group.Key.Value)} has not failed; look at it to be sure.";
        }

        foreach (Joint joint in notReached.Closed.Where(joint => joint.OnlyIfFailed is null))
            yield return $"The joint from {names.InSentence(joint.From.Value)} to {names.InSentence(joint.To.Value)} is never open in a state that this engine has.";
        if (notReached.Closed.IsEmpty)
            yield return $"For debris to get here, a joint would have to lead from a reached part to {names.InSentence(part.Value)}{(notReached.Upstream.IsEmpty ? "" : " or to one of these")}. If the engine has one, the family file lacks it.";
    }

    private static IEnumerable<string> States(EngineStates states) =>
        new[] { (EngineStates.Running, "running"), (EngineStates.Cranking, "cranking"), (EngineStates.Stopped, "stopped") }.Where(pair => states.HasFlag(pair.Item1)).Select(pair => pair.Item2);

    private static string PastOf(TreatmentKind treatment) => treatment switch
    {
        TreatmentKind.Inspect => "inspected",
        TreatmentKind.Flush => "flushed",
        TreatmentKind.Clean => "cleaned",
        TreatmentKind.Test => "tested",
        _ => "replaced",
    };

    private static string Join(IEnumerable<string> words)
    {
        string[] all = [.. words];
        return all.Length < 2 ? string.Concat(all) : string.Join(", ", all[..^1]) + " and " + all[^1];
    }

    private static string UpTo(int most, string[] words) =>
        words.Length <= most ? Join(words) : string.Join(", ", words.Take(most)) + string.Create(CultureInfo.InvariantCulture, $" and {words.Length - most} more");
}
