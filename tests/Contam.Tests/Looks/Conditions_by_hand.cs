using System.Collections.Immutable;
using Contam.Families;
using Contam.Looks;
using Contam.Support;
using Contam.Support.Notation;

namespace Contam.Tests.Looks;

/// <summary>
/// Small systems, worked out by hand. An exposed part is looked at and cleaned, a guarded one looked at, the failed one renewed; looks in the order given.
/// </summary>
public class Conditions_by_hand
{
    [Fact]
    public void Hang_on_the_last_look_before_a_part() => Check(
        "pump > a > b[look=good] > c > d[look=good] > e; @failed pump",
        "b, d",
        """
        A b always
        B d only if A
        pump Replace always
        a Inspect always, Clean always
        b Inspect A, Clean A
        c Inspect A, Clean A
        d Inspect B, Clean B
        e Inspect B, Clean B
        3 histories
        """);

    [Fact]
    public void Hang_on_every_last_look_where_ways_meet() => Check(
        "pump > a[look=good] > c; pump > b[look=good] > c; @failed pump",
        "a, b",
        """
        A a always
        B b always
        pump Replace always
        a Inspect A, Clean A
        c Inspect A B, Clean A B
        b Inspect B, Clean B
        4 histories
        """);

    [Fact]
    public void Hang_on_nothing_where_a_way_goes_round_the_look() => Check(
        "pump > a[look=good] > c; pump > c; @failed pump",
        "a",
        """
        A a always
        pump Replace always
        a Inspect A, Clean A
        c Inspect always, Clean always
        2 histories
        """);

    // What is found beyond the strainer did not stop there, so what lies beyond is exposed: cleaned as well. It is looked at in any case.
    [Fact]
    public void Make_it_worse_where_a_find_is_beyond_a_barrier() => Check(
        "pump > strainer[holds metal 100 abs] > a[look=good] > b; pump >(20)> b; @failed pump",
        "a",
        """
        A a always
        pump Replace always
        strainer Inspect always, Clean always
        a Inspect A, Clean A
        b Inspect always, Clean A
        2 histories
        """);

    [Fact]
    public void Strike_the_milder_treatment_that_a_harder_one_takes_the_place_of() => Check(
        "pump > strainer[holds metal 100 abs] > a[look=good] > b; pump >(20)> b; @failed pump; @rule part=b exposed=replace guarded=flush",
        "a",
        """
        A a always
        pump Replace always
        strainer Inspect always, Clean always
        a Inspect A, Clean A
        b Flush always, not A, Replace A
        2 histories
        """);

    // What gets past the strainer is as large as the clearance that it harms.
    [Fact]
    public void Treat_a_guarded_part_as_exposed_where_what_comes_harms_it() => Check(
        "pump > strainer[holds metal 100 abs] > b[clearance=100] > c[clearance=101] > a[look=good]; @failed pump",
        "a",
        """
        A a always
        pump Replace always
        strainer Inspect always, Clean always
        b Inspect always, Clean always
        c Inspect always
        a Inspect A, Clean A
        2 histories
        """);

    [Fact]
    public void Leave_a_part_that_nothing_spares_out_of_all_of_it() => Check(
        "pump > a[look=good] > b[critical] > c; @failed pump",
        "a",
        """
        A a always
        pump Replace always
        a Inspect A, Clean A
        b Inspect always, Clean always
        c Inspect A, Clean A
        2 histories
        """);

    // The second look is made although the first was clean: not due is no clean look.
    [Fact]
    public void Take_two_clean_places_where_a_part_asks_for_two() => Check(
        "pump > a[look=good] > b[look=good] > c > d[look=good] > e; @failed pump",
        "a, b, d",
        """
        A a always
        B b always
        C d only if B
        pump Replace always
        a Inspect A, Clean A
        b Inspect B, Clean B
        c Inspect A B, Clean A B
        d Inspect C, Clean C
        e Inspect C, Clean C
        6 histories
        """,
        "c");

    [Fact]
    public void Treat_a_part_that_asks_for_two_always_where_a_way_passes_one() => Check(
        "pump > a[look=good] > b[look=good] > c; pump > b; @failed pump",
        "a, b",
        """
        A a always
        B b always
        pump Replace always
        a Inspect A, Clean A
        b Inspect B, Clean B
        c Inspect always, Clean always
        4 histories
        """,
        "c");

    // By the narrow way 20 µm come to the plug, by the sump all sizes: what is found there speaks against a clean sump.
    [Fact]
    public void Count_a_clean_place_as_found_where_a_find_speaks_against_it() => Check(
        "gear > sump[look=good] > plug[look=good]; gear >(20)> plug; sump > cooler; @failed gear",
        "sump, plug",
        """
        A sump always
        B plug always
        gear Replace always
        sump Inspect A, Clean A
        plug Inspect B, Clean B
        cooler Inspect A, Clean A
        4 histories
        A Clean, B Clean
        A Void, B Found
        A Found, B Clean
        A Found, B Found
        """);

    // Where the plug is seen first and has metal, a look in the sump would change nothing.
    [Fact]
    public void Settle_a_look_that_a_find_made_before_it_speaks_against() => Check(
        "gear > sump[look=good] > plug[look=good]; gear >(20)> plug; sump > cooler; @failed gear",
        "plug, sump",
        """
        A plug always
        B sump always
        gear Replace always
        sump Inspect B, Clean B
        plug Inspect A, Clean A
        cooler Inspect B, Clean B
        3 histories
        A Clean, B Clean
        A Clean, B Found
        A Found, B Settled
        """);

    [Fact]
    public void Leave_alone_what_is_on_record_as_clean() => Check(
        "pump > a[look=good] > b > c[look=good] > d; @failed pump; @clean a metal",
        "",
        """
        pump Replace always
        a never
        b never
        c never
        d never
        1 histories
        """);

    [Fact]
    public void Come_back_beyond_a_clean_place_on_record_that_a_find_speaks_against() => Check(
        "gear > sump[look=good] > plug[look=good]; gear >(20)> plug; sump > cooler; @failed gear; @clean sump metal",
        "plug",
        """
        A plug always
        gear Replace always
        sump Inspect A, Clean A
        plug Inspect A, Clean A
        cooler Inspect A, Clean A
        2 histories
        """);

    [Theory]
    [InlineData("a, a", "a stands in two looks")]
    [InlineData("b", "b decides nothing: the family names no way to look there")]
    [InlineData("pump", "pump decides nothing: it is the failed part")]
    [InlineData("c", "c decides nothing: a look there shows debris only fairly well")]
    [InlineData("d", "d decides nothing: none of the debris gets there")]
    [InlineData("e", "e decides nothing: it is on record as clean")]
    [InlineData("a+f", "a and f are not due together")]
    public void Refuse_a_look_that_decides_nothing(string looks, string message)
    {
        TestCase asked = CaseReader.Read("pump > a[look=good] > b > c[look=fair]; a > f[look=good]; pump > e[look=good]; d[look=good]; @failed pump; @clean e metal");

        ArgumentException refused = Assert.Throws<ArgumentException>(() => Decided(asked, looks));
        Assert.Equal($"{message} (Parameter 'looks')", refused.Message);
    }

    private static void Check(string text, string looks, string expected, string two = "")
    {
        TestCase asked = CaseReader.Read(text);
        DecidedPlan plan = Decided(asked, looks, two);
        string[] lines =
        [
            .. plan.Looks.Select((look, index) => $"{LookCondition.LetterOf(index)} {string.Join('+', look.Places)} {(look.Due.IsAlways ? "always" : $"only if {look.Due}")}"),
            .. plan.Parts.Select(part => $"{part.Part.Id} {(part.Treatments.IsEmpty ? "never" : string.Join(", ", part.Treatments.Select(one => $"{one.Treatment} {When(one.When)}")))}"),
            $"{plan.Histories!.Value.Length} histories",
            .. expected.Contains("A Clean", StringComparison.Ordinal) ? plan.Histories.Value.Select(history => history.ToString()) : [],
        ];
        Assert.Equal(expected, string.Join('\n', lines));
    }

    private static string When(LookCondition when) => when.OnlyIf.IsEmpty && !when.IsAlways ? $"always, {when}" : when.ToString();

    private static DecidedPlan Decided(TestCase asked, string looks, string two = "")
    {
        var question = new LookQuestion(asked.Family, asked.Standard, asked.Failures, asked.Asked)
        {
            Findings = asked.Findings,
            SparedBy = part => part.IsCritical ? Sparing.Nothing : part.Id.Value == two ? Sparing.TwoLooks : Sparing.OneLook,
        };
        return Deciding.Of(question, [.. looks.Split(", ", StringSplitOptions.RemoveEmptyEntries).Select(look => look.Split('+').Select(place => new PartId(place)).ToImmutableArray())]);
    }
}
