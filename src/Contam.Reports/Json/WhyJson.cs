using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;
using Contam.Reports.Text;
using Contam.Why;

namespace Contam.Reports.Json;

/// <summary>Why a part is on the list, or why not, as JSON: the contract <c>contam-why/1</c>.</summary>
public static class WhyJson
{
    /// <summary>The explanation as JSON, closed by a newline; with the looks that would spare the part where it is given which looks decide.</summary>
    public static string Write(Explanation why, Family family, LooksAnswer? howFar = null)
    {
        ArgumentNullException.ThrowIfNull(why);
        var names = new Names(family);
        return ReportJson.Write(
            new WhyAnswer(
                "contam-why/1",
                why.Part.Value,
                why.Debris.Name,
                why.NotReached is null,
                why.Grade,
                SizeUm(why.Reach),
                [.. why.Hops.Select(hop => new WhyHop(hop.From.Value, hop.To.Value, hop.Circuit, FamilyJson.StatesOf(hop.When), SizeUm(hop.LetsOn)))],
                [.. why.Barriers.Select(barrier => new WhyBarrier(barrier.Part.Value, SizeUm(barrier.Holds), barrier.IsReliedOn, barrier.Because))],
                why.LastSinglePart?.Value,
                why.Ways,
                why.IsJoinedToSource,
                [.. why.Cut.Select(part => part.Value)],
                [.. why.Contradictions.SelectMany(one => one.Voids.Select(place => new VoidEntry(place.Value, one.Find.Debris.Name, one.Find.Part.Value)))],
                [.. why.Treatments],
                why.Rule is { } rule ? new PlanRule(rule.Place.File, rule.Place.Line, rule.Because) : null,
                howFar is null || why.Treatments.IsEmpty ? [] : [.. WhyText.SparedBy(why, howFar).Select(look => new WhyLook(look.Letter.ToString(), look.Places))],
                why.NotReached is { } notReached ? string.Join(" ", WhyText.Reasons(why.Part, notReached, names)) : null),
            ReportJson.Context.WhyAnswer);
    }

    private static double? SizeUm(ParticleSize? size) => size is { IsUnlimited: false } known ? known.Micrometres : null;
}

internal sealed record WhyAnswer(
    string Format,
    string Part,
    string Debris,
    bool Reached,
    Grade? Grade,
    double? ReachUm,
    ImmutableArray<WhyHop> Hops,
    ImmutableArray<WhyBarrier> Barriers,
    string? LastSinglePart,
    int Ways,
    bool JoinedToSource,
    ImmutableArray<string> Cut,
    ImmutableArray<VoidEntry> Void,
    ImmutableArray<TreatmentKind> Treatment,
    PlanRule? Rule,
    ImmutableArray<WhyLook> SparedBy,
    string? NotReachedBecause);

internal sealed record WhyHop(string From, string To, string Circuit, ImmutableArray<string> When, double? LetsOnUm);

internal sealed record WhyBarrier(string Part, double? HoldsUm, bool ReliedOn, string Because);

internal sealed record WhyLook(string Look, ImmutableArray<string> Places);
