using System.Collections.Immutable;
using Contam.Families;
using Contam.Looks;
using Contam.Support;

namespace Contam.Properties.Looks;

/// <summary>A random system with looks held fixed in it, by chance: up to five, some of several places, in any order.</summary>
/// <param name="Asked">The system, with good looks at those places.</param>
/// <param name="Question">What is asked.</param>
/// <param name="Looks">The looks.</param>
internal sealed record LooksCase(TestCase Asked, LookQuestion Question, ImmutableArray<ImmutableArray<PartId>> Looks)
{
    /// <summary>What the library answers.</summary>
    internal DecidedPlan Plan { get; } = Deciding.Of(Question, Looks);

    /// <summary>Looks for a case, the same for the same case.</summary>
    internal static LooksCase For(TestCase asked, Random chance, bool withTwoLooks = false)
    {
        TestCase accepted = asked with { Standard = WithClean(asked) };
        PartId[] chosen = [.. chance.GetItems(accepted.Family.Parts.ToArray(), chance.Next(1, 6)).Select(part => part.Id).Distinct().Where(part => !IsSource(accepted, part))];
        TestCase shown = accepted with { Family = accepted.Family.WithParts([.. accepted.Family.Parts.Select(part => chosen.Contains(part.Id) ? part with { Inspect = new Inspection(10, Shows.Good, "", null) } : part).Select(WithoutTwo)]) };
        int two = withTwoLooks ? chance.Next(0, 4) : 0;
        HashSet<PartId> needTwo = [.. chance.GetItems(shown.Family.Parts.ToArray(), two).Where(part => !part.IsCritical).Select(part => part.Id)];
        LookQuestion question = QuestionOf(shown) with
        {
            SparedBy = part => part.IsCritical ? Sparing.Nothing : needTwo.Contains(part.Id) ? Sparing.TwoLooks : Sparing.OneLook,
        };
        ImmutableArray<DebrisWays> ways = [.. question.Debris.Select(debris => DebrisWays.Of(question, debris))];
        var judge = new LookJudge(question, ways);
        ImmutableArray<ImmutableArray<PartId>> looks = [.. chosen.Where(part => judge.WhyNot(part) is null).Select(part => ImmutableArray.Create(part))];
        return new LooksCase(shown, question, SomeJoined(question, looks, chance)) { NeedTwo = needTwo };
    }

    // Which parts take two clean places is drawn here, so that the reference can decide it by its own code.
    private static Part WithoutTwo(Part part) => part.ClearedBy == ClearedBy.TwoLooks ? part with { ClearedBy = ClearedBy.OneLook } : part;

    /// <summary>Parts that take two clean places.</summary>
    internal HashSet<PartId> NeedTwo { get; private init; } = [];

    internal static LookQuestion QuestionOf(TestCase asked) => new(asked.Family, asked.Standard, asked.Failures, [.. asked.Asked.Distinct()]) { Findings = asked.Findings };

    private static Treatment.ShopStandard WithClean(TestCase asked)
    {
        Treatment.ShopStandard standard = asked.Standard;
        return new Treatment.ShopStandard
        {
            Id = standard.Id,
            Sha256 = standard.Sha256,
            Kinds = standard.Kinds,
            Debris = standard.Debris,
            Rules = standard.Rules,
            Times = standard.Times,
            CleanFindings = Treatment.CleanFindings.Accept,
        };
    }

    private static bool IsSource(TestCase asked, PartId part) => asked.Failed.Contains(part) || asked.Findings.Any(finding => finding.Found && finding.Part == part);

    // Two looks become one where they are due together.
    private static ImmutableArray<ImmutableArray<PartId>> SomeJoined(LookQuestion question, ImmutableArray<ImmutableArray<PartId>> looks, Random chance)
    {
        if (looks.Length < 2 || chance.Next(2) == 0)
            return looks;
        ImmutableArray<ImmutableArray<PartId>> joined = [[.. looks[0], .. looks[1]], .. looks[2..]];
        try
        {
            _ = Deciding.Of(question, joined);
            return joined;
        }
        catch (ArgumentException)
        {
            return looks;
        }
    }
}
