using Contam.Families;
using Contam.Support;
using Contam.Support.Notation;
using Contam.Treatment;

namespace Contam.Properties.Notation;

public class The_notation
{
    [Theory]
    [InlineData("a", "a", "")]
    [InlineData("a > b", "a b", "flow: a > b")]
    [InlineData("a>b>c", "a b c", "flow: a > b, flow: b > c")]
    [InlineData("a > b; a > c # a fork", "a b c", "flow: a > b, flow: a > c")]
    [InlineData("a > b\n\noil: b > c", "a b c", "flow: a > b, oil: b > c")]
    [InlineData("a <> b", "a b", "flow: a >-> b, flow: b >-> a")]
    [InlineData("a <(20)> b > c", "a b c", "flow: a >(20)> b, flow: b >(20)> a, flow: b > c")]
    [InlineData("a >?x-1> b; x-1", "a b x-1", "flow: a >?x-1> b")]
    [InlineData("a >(2.5)> b", "a b", "flow: a >(2.5)> b")]
    [InlineData("a >/running+stopped> b", "a b", "flow: a >/running+stopped> b")]
    [InlineData("a >?a(5)/cranking> b", "a b", "flow: a >?a(5)/cranking> b")]
    [InlineData("a ~ b", "a b", "flow: a ~ b")]
    [InlineData("a >/never> b", "a b", "flow: a ~ b")]
    [InlineData("a >-> b", "a b", "flow: a >-> b")]
    [InlineData("a > a; a > a", "a", "flow: a > a, flow: a > a")]
    public void Gives_parts_by_first_mention_and_joints_in_order(string text, string parts, string joints)
    {
        Family family = CaseReader.System(text);

        Assert.Equal(parts, string.Join(' ', family.Parts.Select(part => part.Id)));
        Assert.Equal(joints, string.Join(", ", family.Joints.Select(CaseWriter.JointText)));
    }

    [Fact]
    public void Says_all_that_a_part_can_say()
    {
        Part part = CaseReader.System("hose; a-2[filter inplace critical sheds metal 400 rare sheds water holds metal 30 holds rubber all abs bypass "
            + "passage=20 clearance=2.5 access=hose seals=ring+ring sendout=2 look=good:5 repeat remove=7 test=0]")[new PartId("a-2")];

        Assert.Equal(ShopFloor.Filter, part.Kind);
        Assert.False(part.IsRemovable);
        Assert.True(part.IsCritical);
        Assert.Equal([new Shed(Debris.Metal, Likelihood.Rare, Um(400)), new Shed(Debris.Water, Likelihood.Common, ParticleSize.Unlimited)], part.Sheds);
        Assert.Equal([new Hold(Debris.Metal, Um(30), null), new Hold(Debris.Rubber, ParticleSize.Zero, null)], part.Holds);
        Assert.True(part.HasAbsoluteRating);
        Assert.True(part.RatingIsSaid);
        Assert.True(part.HasBypass);
        Assert.Equal(Um(20), part.Passage);
        Assert.Equal(Um(2.5), part.Clearance);
        Assert.Equal([new PartId("hose")], part.Access);
        Assert.Equal(["ring", "ring"], part.Seals);
        Assert.Equal(new SendOut(2, "workshop", null), part.SendOut);
        Assert.Equal(new Inspection(5, Shows.Good, "", null), part.Inspect);
        Assert.Equal(("a", 2), (part.RepeatOf, part.RepeatIndex));
        Assert.Equal(new TaskMinutes { Remove = 7, Test = 0 }, part.Minutes);
    }

    [Theory]
    [InlineData("a", "part", true)]
    [InlineData("a[inplace]", "block", false)]
    [InlineData("a[part inplace]", "part", false)]
    [InlineData("a[filter]", "filter", true)]
    [InlineData("a[block]", "block", false)]
    [InlineData("a[block removable]", "block", true)]
    public void Knows_three_kinds(string text, string kind, bool removable)
    {
        Part part = CaseReader.System(text).Parts[0];

        Assert.Equal((kind, removable), (part.Kind.Name, part.IsRemovable));
    }

    [Fact]
    public void Says_all_that_can_be_asked()
    {
        TestCase asked = CaseReader.Read("""
            @debris carbon hard unsized
            @states running cranking
            a[sheds carbon] > b > c
            @failed c a
            @asked carbon metal
            @found b metal 25
            @clean c carbon
            @clean-findings never
            @technicians 3
            @rule part=b exposed=replace
            @rule kind=filter debris=metal guarded=inspect+test failed=clean
            @times filter remove=0 refit=2.5
            """);

        Assert.Equal(EngineStates.Running | EngineStates.Cranking, asked.Family.States);
        Assert.Equal("c a", string.Join(' ', asked.Failed));
        Assert.Equal([new Debris("carbon", false, true), Debris.Metal], asked.Asked);
        Assert.Equal(
            [new Finding(new PartId("b"), Debris.Metal, true) { Size = Um(25) }, new Finding(new PartId("c"), asked.Asked[0], false)],
            asked.Findings);
        Assert.False(asked.AcceptsCleanFindings);
        Assert.Equal(3, asked.Technicians);
        Assert.Equal([new RuleFor("b", null, null), new RuleFor(null, "filter", "metal")], asked.Standard.Rules.Select(rule => rule.For));
        Assert.Equal([TreatmentKind.Inspect, TreatmentKind.Test], asked.Standard.Rules[1].Guarded!.Value);
        Assert.Null(asked.Standard.Rules[1].Exposed);
        Assert.Equal([("filter", new TaskMinutes { Remove = 0, Refit = 2.5 })], asked.Standard.Times);
    }

    [Fact]
    public void Asks_for_metal_where_nothing_is_asked() => Assert.Equal([Debris.Metal], CaseReader.Read("a\n@failed a").Asked);

    [Theory]
    [InlineData("a > ", "line 1: a part is due after '>'")]
    [InlineData("> a", "line 1: a part is due before '>'")]
    [InlineData("a b", "line 1: an arrow is due before 'b'")]
    [InlineData("a\na > B", "line 2: 'B' is neither a part nor an arrow")]
    [InlineData("a >(x)> b", "line 1: 'x' is not a number from 0")]
    [InlineData("a >/asleep> b", "line 1: 'asleep' is not a EngineStates")]
    [InlineData("a >(5> b", "line 1: '(5' is not what a link can say")]
    [InlineData("a[x]; a[y]", "line 1: the attributes of 'a' are given twice")]
    [InlineData("a[blue]", "'blue' of 'a' is not what a part can say")]
    [InlineData("a[holds gravel 3]", "no debris is called 'gravel'")]
    [InlineData("a[access=b]", "no part is called 'b'")]
    [InlineData("a >?b> c", "no part is called 'b'")]
    [InlineData("a[repeat]", "'a' has no number to be a repeat by")]
    [InlineData("@failed b", "no part is called 'b'")]
    [InlineData("@colour red", "line 1: '@colour' is not a directive")]
    [InlineData("@rule for=a", "line 1: 'for' is not what a rule can say")]
    public void Refuses_what_it_does_not_know(string text, string message) =>
        Assert.Equal(message, Assert.Throws<FormatException>(() => CaseReader.Read(text)).Message);

    [Fact]
    public void Writes_what_it_reads()
    {
        string text = """
            @debris carbon soft sized
            @states running stopped
            pump[sheds metal 400 sheds carbon] > filter[filter holds metal 30 abs] > gallery[inplace]
            fuel: gallery >?pump(20)/running> tank <> breather > pump
            loose[critical clearance=20 access=tank+breather look=fair]
            @failed pump
            @asked metal carbon
            @found gallery metal 5
            @clean filter carbon
            @clean-findings accept
            @rule kind=filter debris=metal exposed=clean+test
            @times part remove=5
            @technicians 2

            """;

        Assert.Equal(text.ReplaceLineEndings("\n"), CaseReader.Read(text).ToString());
    }

    [Fact]
    public void Writes_every_case_so_that_it_can_be_read_back() =>
        ForEvery.Case(asked => Assert.Equal(Written.Fully(asked), Written.Fully(CaseReader.Read(asked.ToString()))));

    private static ParticleSize Um(double micrometres) => ParticleSize.FromMicrometres(micrometres);
}
