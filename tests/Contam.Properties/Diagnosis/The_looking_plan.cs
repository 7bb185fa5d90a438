using Contam.Diagnosis;
using Contam.Families;

namespace Contam.Properties.Diagnosis;

/// <summary>Looking plans and next looks against every plan there is.</summary>
public class The_looking_plan
{
    [Fact]
    public void Takes_the_least_expected_minutes_of_all_trees()
    {
        int looked = 0;
        Questions.ForEach(
            question =>
            {
                question = WithPlaces(question, 5);
                double sure = question.Family.Parts.Length % 2 == 0 ? 0.9 : 0.6;
                SuspectAnswer answer = Suspecting.Of(question);
                if (answer.Suspects.IsEmpty)
                    return;
                LookingPlan plan = Looking.Plan(answer, sure);
                Assert.True(plan.IsExact);
                var reference = new ReferenceSuspects(question);
                Assert.Equal(Least(question, reference, [], sure), plan.ExpectedMinutes!.Value, 6);
                looked += plan.Root.Look is null ? 0 : 1;
            },
            mostParts: 12);
        Assert.True(looked > ForEvery.Runs(ForEvery.Usual) / 20, $"{looked} plans had a look");
    }

    [Fact]
    public void Has_branches_that_add_up_and_shares_that_come_true() => Questions.ForEach(question =>
    {
        question = WithPlaces(question, 7);
        SuspectAnswer answer = Suspecting.Of(question);
        LookingPlan plan = Looking.Plan(answer, 0.8);
        var reference = new ReferenceSuspects(question);
        var due = new Stack<(LookingNode Node, Finding[] Seen)>([(plan.Root, [])]);
        double minutes = 0;
        bool isWhole = true;
        while (due.TryPop(out (LookingNode Node, Finding[] Seen) here))
        {
            (LookingNode node, Finding[] seen) = here;
            if (!node.Leaders.IsEmpty)
            {
                double[] shares = reference.Shares(question.Findings.Concat(seen));
                Assert.Equal(shares.Max(), node.LeaderShare, 1e-9);
                Assert.Equal(reference.Sources.Where((_, i) => shares[i] > shares.Max() - 1e-9).Select(part => part.Id), node.Leaders);
                Assert.True(node.End != LookingEnd.Sure || node.LeaderShare >= 0.8 - 1e-9);
                Assert.True(node.Look is null || node.LeaderShare < 0.8);
            }

            isWhole &= node.End != LookingEnd.GoesOn;
            if (node.Look is not { } look)
                continue;
            minutes += node.Chance * look.Minutes;
            Assert.Equal(node.Chance, node.Found!.Chance + node.Clean!.Chance, 12);
            Assert.DoesNotContain(look.Part, seen.Concat(question.Findings).Where(finding => finding.Debris == question.Debris).Select(finding => finding.Part));
            due.Push((node.Found, [.. seen, new Finding(look.Part, question.Debris, Found: true)]));
            due.Push((node.Clean, [.. seen, new Finding(look.Part, question.Debris, Found: false)]));
        }

        if (isWhole)
            Assert.Equal(minutes, plan.ExpectedMinutes!.Value, 1e-9);
    });

    [Fact]
    public void Proposes_the_looks_worth_what_the_definition_says() => Questions.ForEach(question =>
    {
        SuspectAnswer answer = Suspecting.Of(question);
        var looks = Looking.Next(answer).ToDictionary(look => look.Part);
        var reference = new ReferenceSuspects(question);
        var seen = question.Findings.Where(finding => finding.Debris == question.Debris).Select(finding => finding.Part).ToHashSet();
        foreach (Part place in question.Family.Parts)
        {
            double bits = place.Inspect is null || seen.Contains(place.Id) || answer.Suspects.IsEmpty ? 0 : Bits(question, reference, [], place.Id);
            Assert.Equal(bits, looks.TryGetValue(place.Id, out NextLook? look) ? look.Bits : 0, 9);
            Assert.True(look is null || look.Bits <= Math.Log2(answer.Suspects.Length) + 1e-9);
        }
    });

    // The least expected minutes, every look tried at every turn and nothing remembered.
    private static double Least(SuspectQuestion question, ReferenceSuspects reference, Finding[] seen, double sure)
    {
        double[] shares = reference.Shares(question.Findings.Concat(seen));
        if (shares.Max() > sure - 1e-9)
            return 0;
        double? least = null;
        var looked = question.Findings.Where(finding => finding.Debris == question.Debris).Concat(seen).Select(finding => finding.Part).ToHashSet();
        foreach (Part place in question.Family.Parts.Where(part => part.Inspect is not null && !looked.Contains(part.Id)))
        {
            if (Bits(question, reference, seen, place.Id) < 0.01)
                continue;
            double found = reference.Sources.Select((source, i) => shares[i] * ChanceFound(question, reference, source, place.Id)).Sum();
            double minutes = place.Inspect!.Minutes!.Value
                + (found * Least(question, reference, [.. seen, new Finding(place.Id, question.Debris, Found: true)], sure))
                + ((1 - found) * Least(question, reference, [.. seen, new Finding(place.Id, question.Debris, Found: false)], sure));
            least = least is { } known ? Math.Min(known, minutes) : minutes;
        }

        return least ?? 0;
    }

    // The entropy before less the entropy expected after, outcome by outcome.
    private static double Bits(SuspectQuestion question, ReferenceSuspects reference, Finding[] seen, PartId place)
    {
        double[] shares = reference.Shares(question.Findings.Concat(seen));
        double[] chances = [.. reference.Sources.Select(source => ChanceFound(question, reference, source, place))];
        double bits = Entropy(shares);
        foreach (bool found in new[] { true, false })
        {
            double[] joint = [.. shares.Zip(chances, (share, chance) => share * (found ? chance : 1 - chance))];
            double sum = joint.Sum();
            if (sum > 0)
                bits -= sum * Entropy([.. joint.Select(one => one / sum)]);
        }

        return bits;
    }

    private static double ChanceFound(SuspectQuestion question, ReferenceSuspects reference, Part source, PartId place)
    {
        double found = reference.Chance(source, new Finding(place, question.Debris, Found: true));
        double clean = reference.Chance(source, new Finding(place, question.Debris, Found: false));
        return found / (found + clean);
    }

    private static double Entropy(double[] shares) => shares.Where(share => share > 0).Sum(share => -share * Math.Log(share) / Math.Log(2));

    // At most so many looks, each with minutes of its own, so that all trees can be tried.
    private static SuspectQuestion WithPlaces(SuspectQuestion question, int most)
    {
        int left = most;
        Part[] parts = [.. question.Family.Parts.Select((part, i) => part with { Minutes = TaskMinutes.None, Inspect = left-- > 0 ? new Inspection(1 + (i * 7 % 5), (Shows)(1 + (i % 2)), "", null) : null })];
        return question with
        {
            Family = new Family(question.Family.Id, [.. parts], question.Family.Circuits, question.Family.Joints) { States = question.Family.States },
            Findings = [.. question.Findings.Take(1)],
        };
    }
}
