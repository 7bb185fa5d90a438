using Contam.Diagnosis;
using Contam.Families;

namespace Contam.Tests.Diagnosis;

public class Smallest_sets_of_suspects
{
    [Theory]
    // One part accounts for all: no set is needed.
    [InlineData("a[sheds metal] > x; a > y\n@found x metal\n@found y metal", "")]
    [InlineData("a[sheds metal] > x; b[sheds metal] > y\n@found x metal\n@found y metal", "a+b")]
    // The likelier set first: 9 × 9, 9 × 3, 9 × 1.
    [InlineData("c[sheds metal rare] > y; d[sheds metal occasional] > y; a[sheds metal] > x; b[sheds metal] > y\n@found x metal\n@found y metal", "a+b d+a c+a")]
    // Two of three finds share a part.
    [InlineData("a[sheds metal] > x; b[sheds metal] > y; c[sheds metal] > z; m[sheds metal] > x; m > y\n@found x metal\n@found y metal\n@found z metal", "c+m")]
    // Each find has two accounts, so that every pair will do, and each comes once.
    [InlineData("a[sheds metal] > x; a > e; b[sheds metal] > e; b > y; c[sheds metal] > x; c > y\n@found x metal\n@found e metal\n@found y metal", "a+b a+c b+c")]
    // A find that nothing leads to needs nobody.
    [InlineData("a[sheds metal] > x; i\n@found x metal\n@found i metal", "")]
    // Clean findings do not count here.
    [InlineData("a[sheds metal] > x[look=good]; b[sheds metal] > y\n@clean x metal\n@found y metal", "")]
    public void Account_for_every_find(string text, string expected)
    {
        SuspectAnswer answer = Asked.Of(text);
        Assert.Equal(expected, string.Join(' ', answer.Together.Select(set => string.Join('+', set))));
        Assert.True(answer.TogetherIsComplete && answer.TogetherIsSmallest);
    }

    [Fact]
    public void Go_by_looks_where_looks_part_them()
    {
        // Each fits one find, and each could have come to both places.
        SuspectAnswer answer = Asked.Of(
            "a[sheds metal] > x; b[sheds metal] > x\n@found x metal 10\n@found x metal 20",
            finding => finding with { Magnetic = finding.Size!.Value.Micrometres == 10 },
            part => part with { Sheds = [.. part.Sheds.Select(shed => shed with { Magnetic = part.Id.Value == "a" })] });
        Assert.Equal([["a", "b"]], answer.Together.Select(set => set.Select(part => part.Value)));
    }

    [Fact]
    public void Count_as_failed_however_small_their_shares()
    {
        // a: 9 × 0.3³ × 0.01, b: 1 × 0.01³ × 0.3. The second is nearly nothing, and must have shed all the same.
        SuspectAnswer answer = Asked.Of("a[sheds metal] > x; b[sheds metal rare] > y\n@found x metal\n@found x metal\n@found x metal\n@found y metal");
        Assert.True(answer.Suspects[1].Share < 0.001);
        Assert.Equal(["a", "b"], answer.CountedAsFailed(0.05).Select(part => part.Value));
    }

    [Fact]
    public void Are_cut_after_twenty_and_say_so()
    {
        string finds = string.Join('\n', Enumerable.Range(1, 3).Select(i => $"@found x{i} metal"));
        string parts = string.Join("; ", Enumerable.Range(1, 9).Select(i => $"p{i}[sheds metal] > x{((i - 1) % 3) + 1}"));
        SuspectAnswer answer = Asked.Of(parts + "\n" + finds);
        Assert.Equal((20, false, true), (answer.Together.Length, answer.TogetherIsComplete, answer.TogetherIsSmallest));
        // Nobody that might be in a set that is not shown is left out.
        Assert.Equal(9, answer.CountedAsFailed(0.9).Length);
    }

    [Fact]
    public void Beyond_the_bound_one_set_is_given_and_not_called_smallest()
    {
        bool[][] explains = [.. Enumerable.Range(0, 65).Select(find => Enumerable.Range(0, 65).Select(source => source == find).ToArray())];
        SmallestSets sets = SmallestSets.Covering(explains, [.. Enumerable.Repeat(1.0, 65)], [.. Enumerable.Range(0, 65).Select(i => new PartId($"p{i}"))]);
        Assert.Equal((1, 65, false, false), (sets.Sets.Length, sets.Sets[0].Length, sets.IsComplete, sets.IsSmallest));
    }
}
