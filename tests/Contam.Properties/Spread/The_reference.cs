using Contam.Families;
using Contam.Support;
using Contam.Support.Notation;

namespace Contam.Properties.Spread;

public class The_reference
{
    [Fact]
    public void Agrees_with_every_path_walked() => ForEvery.Case(
        asked =>
        {
            foreach (Debris debris in asked.Asked)
            {
                ReferenceSpread reference = ReferenceSpread.Of(asked.Question(debris));
                Dictionary<PartId, (Grade Grade, ParticleSize Reach)> walked = EveryPath.Of(asked.Question(debris));

                Assert.Equal(
                    asked.Family.Parts.Where(part => walked.ContainsKey(part.Id)).Select(part => (part.Id, walked[part.Id].Grade, walked[part.Id].Reach)),
                    reference.Parts.Select(part => (part.Part, part.Grade, part.Reach)));
            }
        },
        mostParts: 8);

    // Worked by hand.
    [Theory]
    [InlineData("p > f[holds metal 30 abs] > t", "p exposed unlimited, f exposed unlimited, t guarded 30")]
    [InlineData("p[sheds metal 30] > f[holds metal 30 abs] > t", "p exposed 30, f exposed 30, t exposed 30")]
    [InlineData("p > f[holds metal 30] > t", "p exposed unlimited, f exposed unlimited, t exposed unlimited")]
    [InlineData("p > f[holds metal 30 abs bypass] > t", "p exposed unlimited, f exposed unlimited, t exposed unlimited")]
    [InlineData("p[holds metal all abs passage=1] > t", "p exposed unlimited, t exposed unlimited")]
    [InlineData("p >(20)> a[passage=10] > t", "p exposed unlimited, a guarded 20, t guarded 10")]
    [InlineData("p > f[holds metal all abs] > t; p > a[passage=5] > t", "p exposed unlimited, f exposed unlimited, t guarded 5, a exposed unlimited")]
    [InlineData("p > a[look=good] > t\n@clean a metal", "p exposed unlimited, a cleared unlimited, t cleared 0")]
    [InlineData("p > a[look=good] > t[critical]\n@clean a metal", "p exposed unlimited, a cleared unlimited, t exposed unlimited")]
    [InlineData("p > a[look=good critical] > t\n@clean a metal", "p exposed unlimited, a exposed unlimited, t cleared 0")]
    [InlineData("p > a[look=good] > t[two-looks]\n@clean a metal", "p exposed unlimited, a cleared unlimited, t exposed unlimited")]
    [InlineData("p > a[look=good] > b[look=good] > t[two-looks]\n@clean a metal\n@clean b metal", "p exposed unlimited, a cleared unlimited, b cleared 0, t cleared 0")]
    [InlineData("p > a[look=good] > t[two-looks look=good]\n@clean a metal\n@clean t metal", "p exposed unlimited, a cleared unlimited, t cleared 0")]
    [InlineData("p > t[two-looks look=good]\n@clean t metal", "p exposed unlimited, t exposed unlimited")]
    [InlineData("p > a[look=good] > b[look=good] > t[two-looks]; a >(7)> t\n@clean a metal\n@clean b metal", "p exposed unlimited, a cleared unlimited, b cleared 0, t exposed unlimited")]
    [InlineData("p > a[look=good] > b > a > t[two-looks]\n@clean a metal", "p exposed unlimited, a cleared unlimited, b cleared 0, t exposed unlimited")]
    [InlineData("p > a[look=fair] > t\n@clean a metal", "p exposed unlimited, a exposed unlimited, t exposed unlimited")]
    [InlineData("p > a[look=good] > t\n@clean a metal\n@found a metal", "p exposed unlimited, a exposed unlimited, t exposed unlimited")]
    [InlineData("p > a[look=good] > t\n@clean a metal\n@clean-findings never", "p exposed unlimited, a exposed unlimited, t exposed unlimited")]
    [InlineData("p > a[look=good] > t; p >(7)> t\n@clean a metal", "p exposed unlimited, a cleared unlimited, t guarded 7")]
    [InlineData("a >/stopped> p >?t> u; t; p ~ w\n@states running", "p exposed unlimited")]
    [InlineData("p[sheds metal 50] > f[holds metal 60 abs] > t\n@found p metal", "p exposed unlimited, f exposed unlimited, t exposed 60")]
    public void Gives_what_a_person_works_out(string text, string expected)
    {
        TestCase asked = CaseReader.Read(text + "\n@failed p");

        Assert.Equal(expected, string.Join(", ", ReferenceSpread.Of(asked.Question(Debris.Metal)).Parts.Select(Text)));
    }

    [Fact]
    public void Lists_what_other_failures_would_reach()
    {
        TestCase asked = CaseReader.Read("p > a >?x> b > c >?y> d; x; y\n@failed p");
        ReferenceSpread reference = ReferenceSpread.Of(asked.Question(Debris.Metal));

        Assert.Equal("b c", string.Join(' ', reference.ReachedIfOneFails[new PartId("x")]));
        Assert.Empty(reference.ReachedIfOneFails[new PartId("y")]);
        Assert.Equal("b c d", string.Join(' ', reference.ReachedIfAllFailed));
    }

#pragma warning disable CA1308 // The grades' words are lower case.
    private static string Text(ReferencePart part) =>
        $"{part.Part} {part.Grade.ToString().ToLowerInvariant()} {(part.Reach.IsUnlimited ? "unlimited" : part.Reach.Micrometres)}";
#pragma warning restore CA1308
}
