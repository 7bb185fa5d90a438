using System.Collections.Immutable;
using Contam.Families;
using Contam.Looks;
using Contam.Properties.Spread;
using Contam.Spread;
using Contam.Support;
using Contam.Treatment;

namespace Contam.Properties.Looks;

/// <summary>
/// What the engine, told the outcomes of a history as findings, does with every part. What is void is found by the definition, with the searches of the graph
/// library; two clean places on every way are counted by relaxing until nothing changes.
/// </summary>
internal sealed class ReferenceHistory
{
    private readonly LooksCase looks;
    private readonly RuleBook rules;
    private readonly ImmutableArray<SpreadQuestion> asked;
    private readonly ImmutableArray<DebrisSpread> spreads;

    /// <param name="looks">The looks.</param>
    /// <param name="history">Their outcomes.</param>
    /// <param name="partly">Where given, a look that finds something finds it at some of its places, of some of the debris, and tells nothing of the others.</param>
    internal ReferenceHistory(LooksCase looks, LookHistory history, Random? partly = null)
    {
        this.looks = looks;
        rules = new RuleBook(looks.Asked.Standard);
        HashSet<(PartId, Debris)> found = Finds(looks, history, partly);
        asked = [.. looks.Question.Debris.Select(debris => WithoutVoid(Told(looks, history, debris, found)))];
        spreads = [.. asked.Select(Spreading.Of)];
    }

    /// <summary>The treatments of a part, joined.</summary>
    internal ImmutableArray<TreatmentKind> Treatments(Part part)
    {
        if (!looks.NeedTwo.Contains(part.Id) || looks.Asked.Failed.Contains(part.Id))
            return Treating.DecideFor(part, spreads, looks.Asked.Failed.ToHashSet(), rules)?.Treatments ?? [];
        return RuleBook.Join(asked.Where(one => CleanPlacesBefore(one, part.Id) < 2).SelectMany(one => rules.Choose(part, one.Debris, Situation.Exposed).Treatments));
    }

    /// <summary>What the looks of a history find: wherever the debris could have come at all, or some of it, at least one find a look.</summary>
    private static HashSet<(PartId, Debris)> Finds(LooksCase looks, LookHistory history, Random? partly)
    {
        HashSet<(PartId, Debris)> finds = [];
        for (int look = 0; look < history.Outcomes.Length; look++)
        {
            if (history.Outcomes[look] != LookOutcome.Found)
                continue;
            (PartId, Debris)[] all =
            [
                .. looks.Question.Debris.SelectMany(debris => Spreading.Of(looks.Asked.Question(debris)).Parts.Select(part => part.Part)
                    .Where(looks.Looks[look].Contains).Select(place => (place, debris))),
            ];
            finds.UnionWith(partly is null ? all : [all[partly.Next(all.Length)], .. all.Where(_ => partly.Next(2) == 0)]);
        }

        return finds;
    }

    /// <summary>The findings of a history: clean places, void or not, and finds.</summary>
    private static SpreadQuestion Told(LooksCase looks, LookHistory history, Debris debris, HashSet<(PartId, Debris)> found)
    {
        SpreadQuestion before = looks.Asked.Question(debris);
        IEnumerable<Finding> clean = history.Outcomes.SelectMany((outcome, look) =>
            outcome is LookOutcome.Clean or LookOutcome.Void ? looks.Looks[look].Select(place => new Finding(place, debris, Found: false)) : []);
        IEnumerable<Finding> finds = looks.Looks.SelectMany(look => look).Where(place => found.Contains((place, debris))).Select(place => new Finding(place, debris, Found: true));
        return before with { Findings = [.. before.Findings, .. clean, .. finds] };
    }

    /// <summary>The question without the clean findings that its finds speak against.</summary>
    internal static SpreadQuestion WithoutVoid(SpreadQuestion question)
    {
        PartId[] found = [.. question.Findings.Where(finding => finding.Found && finding.Debris == question.Debris).Select(finding => finding.Part).Distinct()];
        if (found.Length == 0 || question.Failed.IsEmpty)
            return question;
        // A walk from a failed part, with and without the joints out of clean places; what was found there changes neither.
        SpreadQuestion unseen = question with { Findings = [] };
        HashSet<PartId> clean =
        [
            .. question.Findings.Where(finding => !finding.Found && finding.Debris == question.Debris).Select(finding => finding.Part)
                .Where(part => question.Family[part].Inspect?.Shows == Shows.Good && !question.Failed.Contains(part)),
        ];
        var free = new ReferenceWorld(unseen, countCleanFindings: false);
        var past = new ReferenceWorld(unseen with { Findings = [.. clean.Select(place => new Finding(place, question.Debris, Found: false))], AcceptsCleanFindings = true }, countCleanFindings: true);
        HashSet<PartId> isVoid = [];
        foreach (PartId find in found)
        {
            ParticleSize[] widths = [.. free.Levels.Order().Where(size => FromFailed(free, size, pastAccepted: true).Contains(find))];
            if (widths.Length == 0 || FromFailed(past, widths[^1], pastAccepted: false).Contains(find))
                continue;
            HashSet<PartId> fromFailed = FromFailed(free, ParticleSize.Zero, pastAccepted: true);
            isVoid.UnionWith(clean.Where(place => fromFailed.Contains(place) && free.Reached([place], ParticleSize.Zero).Contains(find)));
        }

        return question with { Findings = [.. question.Findings.Where(finding => finding.Found || finding.Debris != question.Debris || !isVoid.Contains(finding.Part))] };

        static HashSet<PartId> FromFailed(ReferenceWorld world, ParticleSize size, bool pastAccepted) =>
            world.Reached(world.Sources.Where(source => source.Size >= size).Select(source => source.Part), size, pastAccepted: pastAccepted);
    }

    // The fewest clean places on any way from a source, the part itself among them; many where there is no way.
    private static int CleanPlacesBefore(SpreadQuestion question, PartId part)
    {
        var world = new ReferenceWorld(question, countCleanFindings: true);
        var fewest = question.Family.Parts.ToDictionary(one => one.Id, _ => int.MaxValue / 2);
        foreach ((PartId source, _) in world.Sources)
            fewest[source] = 0;
        for (bool isMore = true; isMore;)
        {
            isMore = false;
            foreach (Joint joint in question.Family.Joints.Where(joint => world.IsOpen(joint, [])))
            {
                int then = fewest[joint.From] + (world.IsAccepted(joint.To) ? 1 : 0);
                if (then >= fewest[joint.To])
                    continue;
                fewest[joint.To] = then;
                isMore = true;
            }
        }

        return fewest[part];
    }
}
