using System.Collections.Immutable;
using Contam.Families;
using Contam.Properties.Spread;
using Contam.Spread;
using Contam.Support;
using Contam.Support.Generation;

namespace Contam.Properties.Engine;

/// <summary>
/// Systems in which every place can be seen well, many were found clean, and parts ask for one look, two, or more than there can be: so that what two looks
/// clear is not the rare case that it is elsewhere.
/// </summary>
public class Parts_that_two_looks_clear
{
    [Fact]
    public void Are_those_to_which_every_way_walked_passes_two_clean_places()
    {
        int cleared = 0, kept = 0;
        ForEvery.Case(
            asked =>
            {
                TestCase looked = Looked(asked);
                foreach (Debris debris in looked.Asked)
                {
                    Dictionary<PartId, (Grade Grade, ParticleSize Reach)> walked = EveryPath.Of(looked.Question(debris));
                    DebrisSpread spread = Spreading.Of(looked.Question(debris));

                    Assert.Equal(
                        looked.Family.Parts.Where(part => walked.ContainsKey(part.Id)).Select(part => (part.Id, walked[part.Id].Grade, walked[part.Id].Reach)),
                        spread.Parts.Select(part => (part.Part, part.Grade, part.Reach)));
                    Grade[] ofTwo = [.. spread.Parts.Where(part => looked.Family[part.Part].ClearedBy == ClearedBy.TwoLooks).Select(part => part.Grade)];
                    cleared += ofTwo.Count(grade => grade == Grade.Cleared);
                    kept += ofTwo.Count(grade => grade != Grade.Cleared);
                }
            },
            mostParts: 8);
        Assert.True(cleared >= 100 && kept >= 100, $"{cleared} cleared and {kept} not");
    }

    [Fact]
    public void Are_those_of_the_slow_reference_in_larger_systems() => ForEvery.Case(
        asked =>
        {
            TestCase looked = Looked(asked);
            foreach (Debris debris in looked.Asked)
            {
                Assert.Equal(
                    ReferenceSpread.Of(looked.Question(debris)).Parts.Select(part => (part.Part, part.Grade, part.Reach)),
                    Spreading.Of(looked.Question(debris)).Parts.Select(part => (part.Part, part.Grade, part.Reach)));
            }
        },
        mostParts: 60);

    private static TestCase Looked(TestCase asked)
    {
        Random random = ForEvery.ChanceFor(asked);
        ImmutableArray<Part> parts =
        [
            .. asked.Family.Parts.Select(part => part with
            {
                ClearedBy = random.Of([ClearedBy.OneLook, ClearedBy.TwoLooks, ClearedBy.TwoLooks, ClearedBy.Nothing]),
                Inspect = new Inspection(5, Shows.Good, "", null),
            }),
        ];
        return asked with
        {
            Family = asked.Family.WithParts(parts),
            Findings = [.. parts.Where(_ => random.Next(2) == 0).SelectMany(part => asked.Asked.Select(debris => new Finding(part.Id, debris, Found: false)))],
        };
    }
}
