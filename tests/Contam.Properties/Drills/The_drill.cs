using Contam.Drills;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Support;
using Contam.Treatment.Reading;

namespace Contam.Properties.Drills;

/// <summary>What every exercise promises, for random systems and for failures of every shipped family.</summary>
public class The_drill
{
    private const int Few = 40;

    /// <summary>Every failure of every shipped family takes minutes: <c>CONTAM_DRILLS=all</c> goes through them, every fourteenth otherwise.</summary>
    private static readonly bool WantsAll = Environment.GetEnvironmentVariable("CONTAM_DRILLS") == "all";

    public static TheoryData<string> Families => [.. Directory.GetFiles(RepositoryFiles.At("systems/families"), "*.yaml").Order(StringComparer.Ordinal).Select(file => Path.GetFileNameWithoutExtension(file)!)];

    [Fact]
    public void Has_one_right_answer_to_every_question_whatever_the_system()
    {
        var posed = new int[6];
        ForEvery.Case(
            asked =>
            {
                if (Request(asked) is not { } request)
                    return;
                Drill drill = Drilling.Of(request);
                HoldsItsAnswers(drill);
                foreach (DrillQuestion question in drill.Questions)
                    posed[(int)question.Kind]++;
            },
            runs: 400,
            mostParts: Few);
        // A rule that is never put to the test proves nothing.
        Assert.All(posed, count => Assert.True(count > 10, $"posed {string.Join(", ", posed)} times"));
    }

    [Fact]
    public void Is_the_same_again_and_in_another_country() => ForEvery.Case(
        asked =>
        {
            if (Request(asked) is not { } request)
                return;
            string first = Told(Drilling.Of(request));
            Assert.Equal(first, Told(Drilling.Of(request)));
            Assert.Equal(first, Engine.Abroad.Do(() => Told(Drilling.Of(request))));
        },
        runs: 100,
        mostParts: Few);

    [Theory]
    [MemberData(nameof(Families))]
    public void Has_one_right_answer_to_every_question_of_a_shipped_family(string name)
    {
        Family family = Read(name);
        (Part Part, Debris Debris)[] failures = [.. family.Parts.SelectMany(part => part.Sheds.Select(shed => (part, shed.Debris)))];
        int asked = 0;
        // Those that are picked are from all over the engine, each with a seed of its own.
        for (int i = 0; i < failures.Length; i += WantsAll ? 1 : 14)
        {
            Drill drill = Drilling.Of(new DrillRequest(family, BuiltInStandards.HouseOverKinds, [failures[i].Part.Id], [failures[i].Debris]) { Seed = (ulong)i });
            HoldsItsAnswers(drill);
            asked += drill.Questions.Length;
        }

        Assert.True(asked > 0);
    }

    // Wrong choices teach something only where they are the mistakes that people make.
    [Fact]
    public void Offers_near_mistakes_of_every_sort()
    {
        DrillChoice[] wrong = [.. new[] { "harbour-diesel-i4", "outboard-gearcase", "estuary-v6-outboard" }.Select(Read).SelectMany(family => family.Parts.Where(part => !part.Sheds.IsEmpty).Where((_, index) => index % 5 == 0)
            .SelectMany(part => Drilling.Of(new DrillRequest(family, BuiltInStandards.HouseOverKinds, [part.Id], [part.Sheds[0].Debris])).Questions)).SelectMany(question => question.Choices).Where(choice => !choice.IsRight)];

        Assert.Contains(wrong, choice => choice is NextChoice { IsUpstream: true });
        Assert.Contains(wrong, choice => choice is NextChoice { Closed: not null });
        Assert.Contains(wrong, choice => choice is NextChoice { Hops: 2 });
        Assert.Contains(wrong, choice => choice is NextChoice { Hops: null });
        Assert.Contains(wrong, choice => choice is FilterChoice { Trust: FilterTrust.IsNominal });
        Assert.Contains(wrong, choice => choice is FilterChoice { Trust: FilterTrust.OpensPast or FilterTrust.IsNominalAndOpensPast });
        Assert.Contains(wrong, choice => choice is OffChoice { IsInTheWay: true });
        Assert.Contains(wrong, choice => choice is OffChoice { ComesAfter: true });
        Assert.Contains(wrong, choice => choice is LeftAloneChoice { OnlyIf.IsEmpty: true, Path.Length: > 0 });
        Assert.Contains(wrong, choice => choice is LeftAloneChoice { StillOpen.Length: > 0 });
        Assert.Contains(wrong, choice => choice is LookChoice { NotCounting.Length: > 0 });
        Assert.Contains(wrong, choice => choice is LookChoice { NotCounting.Length: 0, Path.Length: > 0 });
        Assert.Contains(wrong, choice => choice is LookChoice { NotCounting.Length: 0, Path.Length: 0 });
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void Differs_with_another_seed(string name)
    {
        Family family = Read(name);
        // The failure that reaches most has most to ask.
        Drill[] drills = [.. family.Parts.Where(part => !part.Sheds.IsEmpty).Take(WantsAll ? 12 : 4).Select(part => Drilling.Of(new DrillRequest(family, BuiltInStandards.HouseOverKinds, [part.Id], [part.Sheds[0].Debris])))];
        Drill most = drills.MaxBy(drill => drill.Spread.Length)!;

        int seeds = WantsAll ? 20 : 6;
        Assert.Equal(seeds, Enumerable.Range(0, seeds).Select(seed => Told(Drilling.Of(most.Request with { Seed = (ulong)seed }))).Distinct().Count());
    }

    private static void HoldsItsAnswers(Drill drill)
    {
        var judge = new DrillJudge(drill.Request);
        Assert.Equal(Enum.GetValues<DrillKind>(), drill.Questions.Select(question => question.Kind).Concat(drill.LeftOut.Select(one => one.Kind)).Order());
        Assert.Equal(drill.Questions.Select(question => question.Kind).Order(), drill.Questions.Select(question => question.Kind));
        Assert.All(drill.Questions, question =>
        {
            Assert.InRange(question.Choices.Length, 3, 5);
            Assert.Equal(question.Choices.Length, question.Choices.Select(Offered).Distinct().Count());
            Assert.Equal([question.Right], judge.RightOnes(question));
            Assert.All(question.Choices, choice => Assert.All(choice.Path.Zip(choice.Path.Skip(1)), hop => Assert.True(
                question.Kind == DrillKind.OffFirst ? drill.Request.Family[hop.Second].Access.Contains(hop.First) || drill.Request.Family[hop.Second].RidesOn == hop.First || drill.Request.Family[hop.First].StandsOn.Contains(hop.Second)
                    : question.Kind == DrillKind.DirtyingOrder || drill.Request.Family.Joints.Any(joint => joint.From == hop.First && joint.To == hop.Second),
                $"{question.Kind}: {hop.First} to {hop.Second}")));
        });
    }

    private static string Offered(DrillChoice choice) =>
        choice is OrderChoice order ? string.Join('\n', order.Steps.Select(step => $"{step.Action} {string.Join(' ', OrderChoice.PartsOf(step))}")) : string.Join(' ', choice.Parts);

    private static string Told(Drill drill) => string.Join('\n', drill.Questions.Select(question => $"{question.Kind} {question.About} {question.Debris?.Name} {question.Right}\n{string.Join('\n', question.Choices.Select(Offered))}"));

    private static DrillRequest? Request(TestCase asked) =>
        asked.Failed.IsEmpty ? null : new DrillRequest(asked.Family, asked.Standard, asked.Failures, asked.Asked) { Seed = (ulong)asked.Family.Parts.Length };

    private static Family Read(string name) => FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;
}
