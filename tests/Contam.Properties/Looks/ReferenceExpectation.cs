using System.Collections.Immutable;
using Contam.Families;
using Contam.Looks;
using Contam.Properties.Spread;

namespace Contam.Properties.Looks;

/// <summary>What a history takes and how likely it is, by the words: every way relaxed until none is likelier, every minute added up part by part.</summary>
internal sealed class ReferenceExpectation
{
    private readonly ChoiceQuestion question;
    private readonly LookPlan plan;
    private readonly Dictionary<Debris, ReferenceWorld> worlds;

    internal ReferenceExpectation(ChoiceQuestion question, LookPlan plan)
    {
        this.question = question;
        this.plan = plan;
        worlds = question.Question.Debris.ToDictionary(debris => debris, debris => new ReferenceWorld(question.Question.SpreadOf(debris), countCleanFindings: false));
    }

    private Family Family => question.Question.Family;

    internal double Likelihood(LookHistory history)
    {
        // Whether anything has left a source is one chance for all ways from there.
        double stays = question.Question.Findings.Any(finding => finding.Found && worlds.ContainsKey(finding.Debris))
            ? 0
            : worlds.Aggregate(1.0, (chance, world) => world.Value.Sources.Select(source => source.Part).Distinct().Aggregate(chance, (left, source) => left * (1 - question.PassesOn(Family[source], world.Key))));
        double likelihood = 1 - stays;
        List<int> found = [];
        for (int look = 0; look < history.Outcomes.Length; look++)
        {
            DecidingLook deciding = plan.Plan.Looks[look];
            double odds = deciding.Due.OnlyIf.IsEmpty || found.Count == 0 ? worlds.Max(world => Odds(world.Key, world.Value.Sources.Select(source => source.Part), deciding.Places)) / (1 - stays) : 0;
            foreach (int before in found)
                odds = Math.Max(odds, worlds.Max(world => Odds(world.Key, plan.Plan.Looks[before].Places.Where(place => Listed(world.Value).Contains(place)), deciding.Places)));
            likelihood *= history.Outcomes[look] switch
            {
                LookOutcome.Found => odds,
                LookOutcome.Clean or LookOutcome.Void => 1 - odds,
                _ => 1,
            };
            if (history.Outcomes[look] is LookOutcome.Found)
                found.Add(look);
        }

        return likelihood + (found.Count == 0 ? stays : 0);
    }

    internal double Minutes(LookHistory history)
    {
        HashSet<PartId> off = [];
        double minutes = 0;
        foreach (PartLooks part in plan.Plan.Parts)
        {
            ImmutableArray<TreatmentKind> done = part.In(history);
            bool goesOut = part.Part.SendOut is not null && !done.Contains(TreatmentKind.Replace) && done.Any(one => one != TreatmentKind.Inspect);
            bool comesOff = ComesOff(part.Part, done);
            if (comesOff)
                off.Add(part.Part.Id);
            minutes += comesOff ? OffAndOn(part.Part) : 0;
            minutes += goesOut ? 0 : done.Sum(one => question.Minutes(part.Part, Enum.Parse<StepAction>(one.ToString())));
            // What is in the way of anything that is treated whatever is seen comes off anyway, and so does what comes off for that.
            if (part.Treatments.Any(one => one.When.OnlyIf.IsEmpty))
                off.UnionWith(Behind(part.Part.Access));
        }

        DecidingLook[] made = [.. plan.Plan.Looks.Where((_, look) => history.Outcomes[look] is LookOutcome.Clean or LookOutcome.Found or LookOutcome.Void)];
        foreach (PartId place in made.SelectMany(look => look.Places))
            minutes += question.Minutes(Family[place], StepAction.Inspect);
        HashSet<PartId> inTheWay = [.. made.SelectMany(look => look.Places).SelectMany(place => Behind(Family[place].LookTakesOff ? [place] : Family[place].Inspect?.Access ?? Family[place].Access))];
        return minutes + inTheWay.Except(off).Sum(part => OffAndOn(Family[part]));
    }

    private static bool ComesOff(Part part, ImmutableArray<TreatmentKind> done) =>
        done.Contains(TreatmentKind.Replace) || ((part.IsRemovable || part.SendOut is not null) && done.Any(one => one != TreatmentKind.Inspect));

    private double OffAndOn(Part part) => question.Minutes(part, StepAction.Remove) + question.Minutes(part, StepAction.Refit);

    private HashSet<PartId> Behind(IEnumerable<PartId> access)
    {
        HashSet<PartId> off = [.. access];
        for (int before = -1; before != off.Count;)
        {
            before = off.Count;
            off.UnionWith(off.SelectMany(id => Family[id].Access).ToArray());
        }

        return off;
    }

    private static HashSet<PartId> Listed(ReferenceWorld world) => world.Reached(world.Sources.Select(source => source.Part), ParticleSize.Zero);

    private double Odds(Debris debris, IEnumerable<PartId> from, ImmutableArray<PartId> to)
    {
        Dictionary<PartId, double> odds = from.Distinct().ToDictionary(part => part, _ => 1.0);
        for (bool isMore = true; isMore;)
        {
            isMore = false;
            foreach (Joint joint in Family.Joints.Where(joint => worlds[debris].IsOpen(joint, [])))
            {
                double on = odds.GetValueOrDefault(joint.From) * question.PassesOn(Family[joint.From], debris);
                if (on <= odds.GetValueOrDefault(joint.To))
                    continue;
                odds[joint.To] = on;
                isMore = true;
            }
        }

        return to.Max(place => odds.GetValueOrDefault(place));
    }
}
