using System.Globalization;
using Contam.Families;
using Contam.StopLines;
using Contam.Support;
using Contam.Support.Notation;
using Contam.Tests.Diagnosis;

namespace Contam.Tests.StopLines;

/// <summary>
/// Small lines, minutes worked out by hand. A part that comes off and is exposed takes 25 min off and on, 20 cleaned and 5 looked at: 50; where its look takes other minutes, those. The failed part
/// takes 30: off, on, and the new one made ready.
/// </summary>
public class A_stop_line
{
    [Fact]
    public void Lies_as_near_to_the_failure_as_a_look_can() => Check(
        "pump > a > b[look=good:6] > c[look=good:6] > d; @failed pump",
        """
        look b 6: b, c, d
        treat pump (Failed) 30, a (BeforeTheLine) 50
        6 + 80 of 232, saved 146
        """);

    // The look at a takes 81, with the lid off and on; those at b and d take 12 and leave a to be treated, which takes 51.
    [Fact]
    public void Lies_beyond_the_fork_where_that_takes_less() => Check(
        "pump > a[look=good:6 access=lid] > b[look=good:6] > c; a > d[look=good:6] > e; lid[remove=60]; @failed pump",
        """
        look b 6: b, c
        look d 6: d, e
        treat pump (Failed) 30, a (BeforeTheLine) 51
        12 + 81 of 283, saved 190
        """);

    [Fact]
    public void Takes_every_way_to_what_it_spares() => Check(
        "pump > a[look=good:6] > c > d; pump > b[look=good:6] > c; @failed pump",
        """
        look a 6: a
        look b 6: b
        together c, d
        treat pump (Failed) 30
        12 + 30 of 232, saved 190
        """);

    [Fact]
    public void Spares_nothing_that_has_a_way_round_the_look() => Check(
        "pump > a[look=good:6] > c; pump > b > c; @failed pump",
        """
        look a 6: a
        treat pump (Failed) 30, c (BeforeTheLine) 50, b (BeforeTheLine) 50
        6 + 130 of 181, saved 45
        """);

    [Fact]
    public void Goes_round_a_loop_back_to_the_failed_part() => Check(
        "pump > a[look=good:6] > b > pump; b > a; @failed pump",
        """
        look a 6: a, b
        treat pump (Failed) 30
        6 + 30 of 131, saved 95
        """);

    [Fact]
    public void Never_spares_a_critical_part_and_goes_past_it() => Check(
        "pump > a > b[critical look=good:6] > c; b > d[critical]; @failed pump",
        """
        look b 6: c
        treat pump (Failed) 30, a (BeforeTheLine) 50, b (Critical) 51, d (Critical) 50
        6 + 181 of 231, saved 44
        """);

    [Fact]
    public void Passes_what_comes_through_a_critical_part() => Check(
        "pump > a[critical] > b[look=good:6] > c; @failed pump",
        """
        look b 6: b, c
        treat pump (Failed) 30, a (Critical) 50
        6 + 80 of 181, saved 95
        """);

    [Theory]
    [InlineData("poor")]
    [InlineData("fair")]
    public void Has_no_look_that_shows_less_than_well(string shows) => Check(
        $"pump > a[look={shows}:1] > b; @failed pump",
        """
        no look: NowhereToLook
        treat pump (Failed) 30, a (BeforeTheLine) 46, b (BeforeTheLine) 50
        0 + 126 of 126, saved 0
        """);

    [Fact]
    public void Has_no_look_at_the_failed_part() => Check(
        "pump[look=good:1] > a > b; @failed pump",
        """
        no look: NowhereToLook
        treat pump (Failed) 30, a (BeforeTheLine) 50, b (BeforeTheLine) 50
        0 + 130 of 130, saved 0
        """);

    [Fact]
    public void Has_no_look_where_the_debris_was_found() => Check(
        "pump > a[look=good:1] > b[look=good:6] > c; @failed pump; @found a metal",
        """
        look b 6: b, c
        treat pump (Failed) 30, a (Found) 46
        6 + 76 of 177, saved 95
        """);

    [Fact]
    public void Has_no_look_where_other_debris_was_found_that_is_asked_about_too() => Check(
        "pump > a[look=good:1] > b[look=good:6] > c; @failed pump; @asked metal rubber; @found a rubber",
        """
        look b 6: b, c
        treat pump (Failed) 30, a (Found) 46
        6 + 76 of 177, saved 95
        """);

    [Fact]
    public void Has_no_look_by_a_standard_that_never_lets_one_clear() => Check(
        "pump > a[look=good:1] > b; @failed pump; @clean-findings never",
        """
        no look: StandardForbids
        treat pump (Failed) 30, a (BeforeTheLine) 46, b (BeforeTheLine) 50
        0 + 126 of 126, saved 0
        """);

    [Fact]
    public void Has_no_look_where_nothing_could_be_spared() => Check(
        "pump > a[critical look=good:1]; @failed pump",
        """
        no look: NothingToSpare
        treat pump (Failed) 30, a (Critical) 46
        0 + 76 of 76, saved 0
        """);

    // Flushed: 25 off and on, 15 flushed.
    [Fact]
    public void Has_no_look_that_takes_as_long_as_it_saves() => Check(
        "pump > a[look=good:80] > b; @failed pump; @rule kind=part exposed=flush",
        """
        no look: NothingSaved
        treat pump (Failed) 30, a (BeforeTheLine) 40, b (BeforeTheLine) 40
        0 + 110 of 110, saved 0
        """);

    [Fact]
    public void Counts_what_is_in_the_way_of_a_look() => Check(
        "pump > a[look=good:6 access=lid] > b; lid[access=cover]; cover; @failed pump",
        """
        look a 56 (lid, cover off): a, b
        treat pump (Failed) 30
        56 + 30 of 131, saved 45
        """);

    [Fact]
    public void Does_not_count_what_is_off_anyway() => Check(
        "pump[access=cover] > a[look=good:6 access=lid] > b; lid[access=cover]; cover; @failed pump",
        """
        look a 31 (lid off): a, b
        treat pump (Failed) 30
        31 + 30 of 131, saved 70
        """);

    [Fact]
    public void Begins_where_the_findings_leave_off() => Check(
        "pump > a[look=good:6] > b; pump > c > d[look=good:6] > e; @failed pump; @clean a metal",
        """
        look d 6: d, e
        treat pump (Failed) 30, c (BeforeTheLine) 50
        cleared already a, b
        6 + 80 of 181, saved 95
        """);

    [Fact]
    public void Leaves_a_part_alone_only_when_no_debris_gets_there() => Check(
        "pump > a[look=good:6] > b; tank > b > c; @failed pump; @asked metal rubber; @found tank rubber",
        """
        look a 6: a
        treat pump (Failed) 30, b (BeforeTheLine) 50, tank (Found) 50, c (BeforeTheLine) 50
        6 + 180 of 231, saved 45
        """);

    [Fact]
    public void Says_when_the_record_differs_from_debris_to_debris() => Check(
        "pump > a[look=good:6] > b[look=good:6] > c; @failed pump; @asked metal rubber; @clean b metal",
        """
        look a 6: a
        together b, c
        treat pump (Failed) 30
        6 + 30 of 182, saved 146
        perhaps not the least
        """);

    [Fact]
    public void Of_two_that_cost_the_same_is_the_one_nearer_to_the_failure() => Check(
        "pump > a[critical look=good:6] > b[critical look=good:6] > c; @failed pump",
        """
        look a 6: c
        treat pump (Failed) 30, a (Critical) 51, b (Critical) 51
        6 + 132 of 182, saved 44
        """);

    [Fact]
    public void Of_two_that_cost_the_same_is_the_one_of_fewer_looks() => Check(
        "pump > a[critical look=good:5] > c[critical look=good:10] > d; pump > b[critical look=good:5] > c; @failed pump",
        """
        look c 10: d
        treat pump (Failed) 30, a (Critical) 50, c (Critical) 55, b (Critical) 50
        10 + 185 of 235, saved 40
        """);

    [Fact]
    public void Needs_debris_and_a_place_it_comes_from()
    {
        TestCase asked = CaseReader.Read("pump > a; @failed pump");
        Assert.StartsWith("a stop line needs at least one debris", Refusal(asked with { Asked = [] }), StringComparison.Ordinal);
        Assert.StartsWith("a stop line needs a failed part, or a place where the debris was found", Refusal(asked with { Failed = [] }), StringComparison.Ordinal);
    }

    private static string Refusal(TestCase asked) => Assert.Throws<ArgumentException>(() => LineOf(asked)).Message;

    private static void Check(string text, string expected) => Assert.Equal(expected, Text(LineOf(CaseReader.Read(text))));

    private static StopLine LineOf(TestCase asked) =>
        StopLineFinder.Of(new StopLineQuestion(asked.Family, asked.Standard, asked.Failures, asked.Asked) { Findings = asked.Findings });

    private static string Text(StopLine line)
    {
        var lines = new List<string>();
        if (line.Silence != StopLineSilence.None)
            lines.Add($"no look: {line.Silence}");
        lines.AddRange(line.Looks.Select(look => $"look {look.Part} {Minutes(look.Minutes)}{(look.InTheWay.IsEmpty ? "" : $" ({Ids(look.InTheWay)} off)")}: {Ids(look.Clears)}"));
        if (!line.ClearsTogether.IsEmpty)
            lines.Add($"together {Ids(line.ClearsTogether)}");
        lines.Add($"treat {string.Join(", ", line.Treat.Select(part => $"{part.Part} ({part.Reason}) {Minutes(part.Minutes)}"))}");
        if (!line.ClearedAlready.IsEmpty)
            lines.Add($"cleared already {Ids(line.ClearedAlready)}");
        lines.Add($"{Minutes(line.Minutes.Looks)} + {Minutes(line.Minutes.Treatment)} of {Minutes(line.Minutes.WithoutLooking)}, saved {Minutes(line.Minutes.Saved)}");
        if (!line.IsLeast)
            lines.Add("perhaps not the least");
        return string.Join('\n', lines);
    }

    private static string Ids(IEnumerable<PartId> parts) => string.Join(", ", parts);

    private static string Minutes(double minutes) => minutes.ToString("0.#", CultureInfo.InvariantCulture);
}
