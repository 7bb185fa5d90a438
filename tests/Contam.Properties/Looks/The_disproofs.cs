using System.Collections.Immutable;
using Contam.Looks;

namespace Contam.Properties.Looks;

/// <summary>What a plan says of finds that clean looks cannot explain, against the definition, for all outcomes of all looks.</summary>
public class The_disproofs
{
    [Fact]
    public void Make_void_just_what_the_definition_does() => ForEvery.Case(
        asked =>
        {
            var looks = LooksCase.For(asked, ForEvery.ChanceFor(asked), withTwoLooks: true);
            var held = FixedLooks.Of(looks.Question, looks.Looks);
            ImmutableArray<VoidRule> rules = new KnownVoids(held).Rules();
            int all = (1 << held.Count) - 1;
            for (int clean = 0; clean <= all; clean++)
            {
                for (int found = all & ~clean; ; found = (found - 1) & all & ~clean)
                {
                    Assert.Equal((clean, found, Defined(held, clean, found)), (clean, found, By(rules, clean, found)));
                    if (found == 0)
                        break;
                }
            }
        },
        mostParts: 40);

    private static int By(ImmutableArray<VoidRule> rules, int clean, int found) =>
        rules.Where(rule => (rule.Found & ~found) == 0 && (rule.Clean & ~clean) == 0).Aggregate(0, (bits, rule) => bits | (rule.Void & clean));

    private static int Defined(FixedLooks looks, int clean, int found)
    {
        int isVoid = 0;
        foreach (DebrisWays ways in looks.Ways)
        {
            HashSet<int> cleanPlaces = [.. Places(looks, clean), .. ways.SaidClean];
            HashSet<int> finds = [.. Places(looks, found).Where(place => ways.IsReached[place]), .. ways.Found];
            foreach (int place in Voiding.Of(ways, cleanPlaces, finds).Where(looks.IsPlace))
                isVoid |= LookMask.Of(looks.LookAt(place));
        }

        return isVoid & clean;
    }

    private static IEnumerable<int> Places(FixedLooks looks, int those) => LookMask.Looks(those).SelectMany(look => looks.Places[look]);
}
