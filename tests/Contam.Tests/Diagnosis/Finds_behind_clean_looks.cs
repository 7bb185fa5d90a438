using Contam.Families;
using Contam.Diagnosis;
using Contam.Plans;
using Contam.Proof;
using Contam.Spread;
using Contam.StopLines;
using Contam.Support;
using Contam.Support.Notation;

namespace Contam.Tests.Diagnosis;

/// <summary>Small systems in which a find and a clean look contradict each other, worked out by hand.</summary>
public class Finds_behind_clean_looks
{
    [Theory]
    // Every way to the find runs through the place.
    [InlineData("pump > sump[look=good] > plug > hose\n@clean sump metal\n@found plug metal", "sump void by plug")]
    // What lies between and beside is on the list again; what does not lead to the find as well.
    [InlineData("pump > a[look=good] > b[look=good] > plug; a > c[look=good]\n@clean a metal\n@clean b metal\n@clean c metal\n@found plug metal", "a void by plug, b void by plug, c counts")]
    // Another way explains it.
    [InlineData("pump > a[look=good] > plug; pump > b > plug\n@clean a metal\n@found plug metal", "a counts")]
    // Two finds behind one clean look do not explain each other, also in a loop with each other.
    [InlineData("pump > a[look=good] > b > c > d\n@clean a metal\n@found b metal\n@found d metal", "a void by b")]
    [InlineData("pump > a[look=good] > b > c > b\n@clean a metal\n@found b metal\n@found c metal", "a void by b")]
    // The barrier would not have let its size on, whichever way it came: it did not come by another.
    [InlineData("pump > a[look=good] > f[holds metal 10 abs] > plug\n@clean a metal\n@found plug metal 500", "plug from a further source, a void by plug")]
    // Past a clean place only 10 µm, through it all: 500 did not go past.
    [InlineData("pump > a[look=good] > plug; pump > f[holds metal 10 abs] > plug\n@clean a metal\n@found plug metal 500", "a void by plug")]
    [InlineData("pump > a[look=good] > plug; pump > f[holds metal 10 abs] > plug\n@clean a metal\n@found plug metal 8", "a counts")]
    [InlineData("pump > a[look=good] > plug; pump > f[holds metal 10 abs] > plug\n@clean a metal\n@found plug metal", "a void by plug")]
    // Found in the barrier itself, which does not make it hold nothing for the find beyond it.
    [InlineData("pump > a[look=good] > plug; pump > f[holds metal 10 abs] > plug\n@clean a metal\n@found plug metal 500\n@found f metal", "a void by plug")]
    // As much as any walk carries is enough: nothing more could have come.
    [InlineData("pump[sheds metal 100] > a[look=good] > plug; pump > b > plug\n@clean a metal\n@found plug metal 500", "plug from a further source, a counts")]
    // A find in a loop with the clean place, in front of it.
    [InlineData("pump > plug > a[look=good] > pump\n@clean a metal\n@found plug metal", "a counts")]
    [InlineData("pump > a[look=good] > pump; x > plug\n@clean a metal\n@found plug metal", "plug from its own source, a counts")]
    // A look that does not show debris well disproves nothing and is no clean place.
    [InlineData("pump > a[look=fair] > plug\n@clean a metal\n@found plug metal", "a clears nothing: a look there shows debris only fairly well")]
    // Clean and found at the same place: still a clean place for the find beyond it.
    [InlineData("pump > a[look=good] > plug; pump > b[look=good] > plug\n@clean a metal\n@clean b metal\n@found plug metal\n@found a metal", "a void by plug, b void by plug")]
    public void Are_void_where_the_find_cannot_have_come_round_them(string text, string expected)
    {
        TestCase asked = CaseReader.Read(text + "\n@failed pump");
        DebrisSpread spread = Spreading.Of(asked.Question(Debris.Metal));

        Assert.Equal(expected, string.Join(", ", spread.Findings.OrderBy(judged => !judged.Finding.Found).Select(Text).OfType<string>()));
        PlanDocument plan = Planner.Plan(asked.ToRequest());
        Verification verification = PlanVerifier.Verify(plan, asked.Family);
        Assert.True(verification.Holds, string.Join('\n', verification.Claims.Select(claim => claim.Where)));
    }

    [Fact]
    public void Treat_what_lies_beyond_them()
    {
        PlanDocument plan = Planner.Plan(CaseReader.Read("pump > sump[look=good] > plug; sump > strainer > cooler > pump\n@clean sump metal\n@found plug metal\n@failed pump").ToRequest());

        Assert.Equal(["pump", "sump", "plug", "strainer", "cooler"], plan.Parts.Where(part => part.Treatment.Length > 0).Select(part => part.Id));
    }

    [Fact]
    public void Void_nothing_where_no_part_is_named_as_failed()
    {
        TestCase asked = CaseReader.Read("pump[sheds metal] > a[look=good] > plug\n@clean a metal\n@found plug metal");

        Assert.True(Assert.Single(Spreading.Of(asked.Question(Debris.Metal)).Findings, judged => !judged.Finding.Found).IsAccepted);
        SuspectContradiction told = Assert.Single(Suspecting.Of(new SuspectQuestion(asked.Family, Debris.Metal, asked.Standard) { Findings = asked.Findings }).Contradictions);
        Assert.Equal(("plug", "a"), (told.Find.Part.Value, Assert.Single(told.Clean).Value));
    }

    [Theory]
    [InlineData("pump[sheds metal] > a[look=good] > b[sheds metal] > plug\n@clean a metal\n@found plug metal")]
    [InlineData("pump[sheds metal] > a[look=good] > plug; pump > plug\n@clean a metal\n@found plug metal")]
    [InlineData("pump[sheds metal] > a[look=good]; x > plug\n@clean a metal\n@found plug metal")]
    public void Are_no_contradiction_to_a_suspect_that_explains_the_find(string text)
    {
        TestCase asked = CaseReader.Read(text);

        Assert.Empty(Suspecting.Of(new SuspectQuestion(asked.Family, Debris.Metal, asked.Standard) { Findings = asked.Findings }).Contradictions);
    }

    // A look at a, which all metal passes on its way to the plug, would contradict the find. One at b would not.
    [Fact]
    public void Are_not_asked_for_by_the_stop_line()
    {
        TestCase asked = CaseReader.Read("pump > a[look=good:1] > plug; a > b[look=good:1] > c > d\n@found plug metal\n@failed pump");
        StopLine line = StopLineFinder.Of(new StopLineQuestion(asked.Family, asked.Standard, asked.Failures, asked.Asked) { Findings = asked.Findings });

        Assert.Equal("b", string.Join(' ', line.Looks.Select(look => look.Part)));
        Assert.Equal("a", string.Join(' ', line.Doubtful));
        Assert.False(line.IsLeast);
    }

    private static string? Text(JudgedFinding judged) => judged switch
    {
        { Finding.Found: true, Origin: FindOrigin.OwnSource } => $"{judged.Finding.Part} from its own source",
        { Finding.Found: true, Origin: FindOrigin.FurtherSource } => $"{judged.Finding.Part} from a further source",
        { Finding.Found: true } => null,
        { ContradictedBy: { } find } => $"{judged.Finding.Part} void by {find}",
        { IsAccepted: true } => $"{judged.Finding.Part} counts",
        _ => $"{judged.Finding.Part} clears nothing: {judged.NotAcceptedBecause}",
    };
}
