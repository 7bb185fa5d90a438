using Contam.Families;
using Contam.Families.Reading;

namespace Contam.Tests.Families.Reading;

public sealed class Links_and_runs
{
    private const string Parts = """
        format: 1
        family: f
        parts:
          tank: {kind: tank}
          pump: {kind: pump}
          a-#: {kind: hose, count: 2}
          b-#: {kind: hose, count: 2}

        """;

    [Theory]
    [InlineData("circuits: {oil: {runs: [[tank, pump]]}}", "tank>pump")]
    [InlineData("circuits: {oil: {runs: [[tank]]}}", "")]
    [InlineData("circuits: {oil: {runs: [[tank, a-#]]}}", "tank>a-1 tank>a-2")]
    [InlineData("circuits: {oil: {runs: [[a-#, tank]]}}", "a-1>tank a-2>tank")]
    [InlineData("circuits: {oil: {runs: [[a-#, b-#]]}}", "a-1>b-1 a-2>b-2")]
    [InlineData("circuits: {oil: {runs: [[a-1, b-#]]}}", "a-1>b-1 a-1>b-2")]
    [InlineData("circuits: {oil: {runs: [[a-1, a-#, b-2]]}}", "a-1>a-2 a-1>b-2 a-2>b-2")]
    [InlineData("circuits: {oil: {runs: [[tank, pump, tank], [tank, pump]]}}", "tank>pump pump>tank")]
    [InlineData("circuits: {oil: {runs: [[tank, pump]]}, fuel: {runs: [[tank, pump]]}}", "tank>pump tank>pump")]
    public void Runs_join_neighbours(string text, string joints) => AssertJoints(text, joints);

    [Theory]
    [InlineData("{from: tank, to: pump, circuit: oil}", "tank>pump")]
    [InlineData("{from: tank, to: pump, circuit: oil, both-ways: true}", "tank>pump pump>tank")]
    [InlineData("{from: tank, to: pump, circuit: oil, both-ways: false}", "tank>pump")]
    [InlineData("{from: tank, to: pump, circuit: oil, when: stopped}", "tank>pump:Stopped")]
    [InlineData("{from: tank, to: pump, circuit: oil, when: [stopped, running]}", "tank>pump:Running, Stopped")]
    [InlineData("{from: a-#, to: b-#, circuit: oil}", "a-1>b-1 a-2>b-2")]
    [InlineData("{from: a-#, to: tank, circuit: oil, both-ways: true}", "a-1>tank tank>a-1 a-2>tank tank>a-2")]
    [InlineData("{from: a-#, to: tank, circuit: oil, only-if-failed: b-#}", "a-1>tank?b-1 a-2>tank?b-2")]
    [InlineData("{from: a-#, to: tank, circuit: oil, only-if-failed: b-1}", "a-1>tank?b-1 a-2>tank?b-1")]
    [InlineData("{from: tank, to: pump, circuit: oil, only-if-failed: b-#}", "tank>pump?b-1 tank>pump?b-2")]
    [InlineData("{from: tank, to: pump, circuit: oil, passage: 1 mm}", "tank>pump!1000 µm")]
    public void Links_join_as_they_say(string link, string joints) => AssertJoints($"circuits: {{oil: {{}}}}\nlinks: [{link}]", joints);

    [Theory]
    [InlineData("{from: tank, to: pump, circuit: oil}, {from: tank, to: pump, circuit: oil}", "tank>pump")]
    [InlineData("{from: tank, to: pump, circuit: oil, both-ways: true}, {from: pump, to: tank, circuit: oil}", "tank>pump pump>tank")]
    [InlineData("{from: tank, to: pump, circuit: oil}, {from: tank, to: pump, circuit: oil, when: stopped}", "tank>pump tank>pump:Stopped")]
    [InlineData("{from: tank, to: pump, circuit: oil, only-if-failed: a-1}, {from: tank, to: pump, circuit: oil}", "tank>pump?a-1 tank>pump")]
    // The wider way must not be lost to the narrower that is written first.
    [InlineData("{from: tank, to: pump, circuit: oil, passage: 1 mm}, {from: tank, to: pump, circuit: oil}", "tank>pump!1000 µm tank>pump")]
    public void The_same_joint_written_twice_is_one(string links, string joints) => AssertJoints($"circuits: {{oil: {{}}}}\nlinks: [{links}]", joints);

    [Theory]
    [InlineData("running", "tank>pump:Running pump>tank:Running pump>tank:None")]
    [InlineData("[running, stopped]", "tank>pump:Running, Stopped pump>tank:Running pump>tank:Stopped")]
    [InlineData("[running, cranking, stopped]", "tank>pump pump>tank:Running, Cranking pump>tank:Stopped")]
    public void Joints_are_open_only_in_states_that_the_engine_has(string states, string joints) => AssertJoints(
        $$$"""
        engine-running: {{{states}}}
        circuits: {oil: {runs: [[tank, pump]]}}
        links:
          - {from: pump, to: tank, circuit: oil, when: [running, cranking]}
          - {from: pump, to: tank, circuit: oil, when: stopped}
        """,
        joints);

    [Fact]
    public void Circuits_list_parts_of_runs_before_those_of_links_each_once()
    {
        Family family = Read("circuits: {oil: {runs: [[b-#, tank], [tank, a-1], [tank, a-1]]}}\nlinks: [{from: pump, to: tank, circuit: oil}]");
        Circuit oil = Assert.Single(family.Circuits);
        Assert.Equal("b-1 b-2 tank a-1 pump", string.Join(' ', oil.Parts));
        Assert.Equal("tank a-1", string.Join(' ', oil.RunEnds));
    }

    private static void AssertJoints(string text, string joints)
    {
        Family family = Read(text);
        Assert.Equal(joints, string.Join(' ', family.Joints.Select(Word)));
        Assert.Equal(Enumerable.Range(0, family.Joints.Length), family.Joints.Select(joint => joint.Id));
    }

    private static string Word(Joint joint) => $"{joint.From}>{joint.To}"
        + (joint.When == EngineStates.All ? "" : $":{joint.When}")
        + (joint.OnlyIfFailed is PartId failed ? $"?{failed}" : "")
        + (joint.Passage is ParticleSize passage ? $"!{passage}" : "");

    private static Family Read(string text)
    {
        Outcome<Family> outcome = TestCatalogue.Read(Parts + text + "\n");
        Assert.True(outcome.IsSound, TestCatalogue.Told(outcome.Problems));
        return outcome.Value!;
    }
}
