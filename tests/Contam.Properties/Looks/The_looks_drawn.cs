using System.Collections.Immutable;
using Contam.Families;
using Contam.Looks;
using Contam.Support;
using Contam.Support.Generation;
using Contam.Treatment;

namespace Contam.Properties.Looks;

/// <summary>That the random looks bring what the rules are about; a rule that never met it would prove nothing.</summary>
public class The_looks_drawn
{
    [Fact]
    public void Bring_everything_that_the_conditions_tell_apart()
    {
        var met = new SortedDictionary<string, int>(StringComparer.Ordinal);
        for (int seed = 0; seed < ForEvery.Usual; seed++)
        {
            TestCase asked = Cases.Make(seed, 40);
            foreach (string feature in Of(LooksCase.For(asked, ForEvery.ChanceFor(asked), withTwoLooks: true)).Distinct())
                met[feature] = met.GetValueOrDefault(feature) + 1;
        }

        string[] all =
        [
            "a look of several places", "several looks", "hangs on several looks", "hangs on one look", "not due", "settled", "void", "several debris",
            "struck where something is found", "guarded by a look", "two looks", "exposed by a find beyond a barrier", "on record as clean",
        ];
        Assert.All(all, feature => Assert.True(met.GetValueOrDefault(feature) >= 5, $"{feature}: {met.GetValueOrDefault(feature)} of {ForEvery.Usual}"));
    }

    private static IEnumerable<string> Of(LooksCase looks)
    {
        DecidedPlan plan = looks.Plan;
        if (looks.Looks.Any(look => look.Length > 1))
            yield return "a look of several places";
        if (looks.Looks.Length > 1)
            yield return "several looks";
        if (looks.Looks.Length > 0 && looks.Question.Debris.Length > 1)
            yield return "several debris";
        foreach (LookOutcome outcome in (plan.Histories ?? []).SelectMany(history => history.Outcomes))
        {
            if (outcome is LookOutcome.NotDue or LookOutcome.Settled or LookOutcome.Void)
                yield return outcome switch { LookOutcome.NotDue => "not due", LookOutcome.Settled => "settled", _ => "void" };
        }

        if (looks.Looks.Length > 0 && plan.Parts.Any(part => part.Asks.IsEmpty))
            yield return "on record as clean";
        foreach (PartLooks part in plan.Parts)
        {
            if (part.When?.OnlyIf.Length > 1)
                yield return "hangs on several looks";
            if (part.When?.OnlyIf.Length == 1)
                yield return "hangs on one look";
            if (part.Treatments.Any(one => !one.When.Unless.IsEmpty))
                yield return "struck where something is found";
            if (part.Asks.Any(ask => ask.Situation == Situation.Guarded && !ask.When.OnlyIf.IsEmpty))
                yield return "guarded by a look";
            if (part.Asks.Any(ask => ask.Situation == Situation.Guarded && ask.When.OnlyIf.IsEmpty) && part.Asks.Any(ask => ask.Situation == Situation.Exposed))
                yield return "exposed by a find beyond a barrier";
            if (looks.NeedTwo.Contains(part.Part.Id) && part.When?.OnlyIf.Length > 0)
                yield return "two looks";
        }
    }
}
