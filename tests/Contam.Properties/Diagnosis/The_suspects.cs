using Contam.Diagnosis;
using Contam.Families;

namespace Contam.Properties.Diagnosis;

/// <summary>Laws of the suspicion, each held against random systems.</summary>
public class The_suspects
{
    [Fact]
    public void Are_shared_out_as_the_reference_does()
    {
        var met = new HashSet<EvidenceSort>();
        Questions.ForEach(question =>
        {
            SuspectAnswer answer = Suspecting.Of(question);
            var reference = new ReferenceSuspects(question);
            Assert.Equal(reference.Sources.Length, answer.Suspects.Length);
            if (reference.Sources.Length == 0)
                return;
            double[] expected = reference.Shares(question.Findings);
            foreach (Suspect suspect in answer.Suspects)
            {
                int source = reference.Sources.IndexOf(question.Family[suspect.Part]);
                Assert.Equal(expected[source], suspect.Share, 9);
                Assert.All(suspect.Evidence, one => Assert.Equal(reference.Chance(question.Family[suspect.Part], one.Finding), one.Chance, 12));
                Assert.All(suspect.Evidence, one => Assert.Equal(reference.Reach(question.Family[suspect.Part], one.Finding.Part), one.Arrives?.Micrometres ?? -1));
                met.UnionWith(suspect.Evidence.Select(one => one.Sort));
            }
        });

        // Every way in which a finding can bear was met, else the law above says less than it seems to.
        Assert.Equal(Enum.GetValues<EvidenceSort>(), met.Order());
    }

    [Fact]
    public void Add_to_one_and_fall() => Questions.ForEach(question =>
    {
        SuspectAnswer answer = Suspecting.Of(question);
        Assert.Equal(answer.Suspects.IsEmpty ? 0 : 1, answer.Suspects.Sum(suspect => suspect.Share), 12);
        Assert.All(answer.Suspects.Zip(answer.Suspects.Skip(1)), pair => Assert.True(
            pair.First.Share > pair.Second.Share
            || pair.First.Share == pair.Second.Share && question.Family.IndexOf(pair.First.Part) < question.Family.IndexOf(pair.Second.Part)));
    });

    [Fact]
    public void Do_not_depend_on_the_order_of_findings() => Questions.ForEach(question =>
    {
        SuspectAnswer answer = Suspecting.Of(question);
        SuspectAnswer turned = Suspecting.Of(question with { Findings = [.. question.Findings.Reverse()] });
        Assert.All(answer.Suspects, suspect => Assert.Equal(suspect.Share, turned.Suspects.Single(other => other.Part == suspect.Part).Share, 9));
        Assert.Equal(answer.Together.Select(set => string.Join('+', set)), turned.Together.Select(set => string.Join('+', set)));
    });

    [Fact]
    public void Are_never_ruled_out_by_one_more_finding() => Questions.ForEach(question =>
    {
        Random random = new(question.Family.Parts.Length);
        var finding = new Finding(question.Family.Parts[random.Next(question.Family.Parts.Length)].Id, question.Debris, random.Next(2) == 0);
        SuspectAnswer before = Suspecting.Of(question);
        SuspectAnswer after = Suspecting.Of(question with { Findings = question.Findings.Add(finding) });
        Assert.Equal(before.Suspects.Select(suspect => suspect.Part).Order(), after.Suspects.Select(suspect => suspect.Part).Order());
        // By the rule the odds of two suspects move by the ratio of their chances, which lie between 0.01 and 1.
        Assert.All(after.Suspects, suspect => Assert.True(suspect.Share >= 0.0099 * before.Suspects.Single(other => other.Part == suspect.Part).Share));
    });

    [Fact]
    public void Gain_by_a_clean_place_that_they_do_not_reach() => Questions.ForEach(question =>
    {
        var reference = new ReferenceSuspects(question);
        SuspectAnswer before = Suspecting.Of(question);
        foreach (Part place in question.Family.Parts.Where(part => part.Inspect is not null).Take(3))
        {
            SuspectAnswer after = Suspecting.Of(question with { Findings = question.Findings.Add(new Finding(place.Id, question.Debris, Found: false)) });
            Assert.All(after.Suspects.Where(suspect => reference.Reach(question.Family[suspect.Part], place.Id) < 0), suspect =>
                Assert.True(suspect.Share >= before.Suspects.Single(other => other.Part == suspect.Part).Share - 1e-12));
        }
    });

    [Fact]
    public void Together_are_the_smallest_sets_of_all_subsets()
    {
        int several = 0;
        Questions.ForEach(
            question =>
            {
                SuspectAnswer answer = Suspecting.Of(question);
                // Who accounts for a find, from the evidence.
                bool[][] explains =
                [
                    .. Enumerable.Range(0, answer.Suspects.IsEmpty ? 0 : answer.Suspects[0].Evidence.Length)
                        .Where(find => answer.Suspects[0].Evidence[find].Finding.Found)
                        .Select(find => answer.Suspects.Select(suspect => Best(answer, find) == suspect.Evidence[find].Sort && suspect.Evidence[find].Sort != EvidenceSort.NoWay).ToArray())
                        .Where(row => row.Contains(true)),
                ];
                string[] expected = SmallestOf(explains, answer);
                several += expected.Length > 0 ? 1 : 0;
                if (answer.TogetherIsComplete)
                    Assert.Equal(expected, answer.Together.Select(set => string.Join('+', set)).Order(StringComparer.Ordinal));
                else
                    Assert.All(answer.Together, set => Assert.Contains(string.Join('+', set), expected));
                Assert.True(answer.TogetherIsComplete || expected.Length > SmallestSets.MostSets);
            },
            mostParts: 12);
        Assert.True(several > ForEvery.Runs(ForEvery.Usual) / 50, $"{several} cases needed several parts");
    }

    [Fact]
    public void Give_a_reach_that_does_not_depend_on_which_way_it_is_searched() => Questions.ForEach(question =>
    {
        // With one place the search goes back from it, with all of them on from the suspects.
        SuspectAnswer all = Suspecting.Of(question with { Findings = [.. question.Family.Parts.Select(part => new Finding(part.Id, question.Debris, Found: true))] });
        Family bare = new(question.Family.Id, [.. question.Family.Parts.Select(part => part with { Inspect = null })], question.Family.Circuits, question.Family.Joints) { States = question.Family.States };
        foreach (Part place in question.Family.Parts.Take(4))
        {
            SuspectAnswer one = Suspecting.Of(question with { Family = bare, Findings = [new Finding(place.Id, question.Debris, Found: true)] });
            Assert.Equal(
                all.Suspects.OrderBy(suspect => question.Family.IndexOf(suspect.Part)).Select(suspect => suspect.Evidence[question.Family.IndexOf(place.Id)].Arrives),
                one.Suspects.OrderBy(suspect => question.Family.IndexOf(suspect.Part)).Select(suspect => suspect.Evidence[0].Arrives));
        }
    });

    private static EvidenceSort Best(SuspectAnswer answer, int find) => answer.Suspects.Max(suspect => suspect.Evidence[find].Sort);

    private static string[] SmallestOf(bool[][] explains, SuspectAnswer answer)
    {
        int count = answer.Suspects.Length;
        var covering = Enumerable.Range(0, 1 << count).Where(set => explains.All(row => Enumerable.Range(0, count).Any(source => (set >> source & 1) != 0 && row[source]))).ToArray();
        int size = covering.Min(set => int.PopCount(set));
        return size < 2 ? [] :
        [
            .. covering.Where(set => int.PopCount(set) == size)
                .Select(set => string.Join('+', Enumerable.Range(0, count).Where(source => (set >> source & 1) != 0).Select(source => answer.Suspects[source].Part).OrderBy(answer.Question.Family.IndexOf)))
                .Order(StringComparer.Ordinal),
        ];
    }
}
