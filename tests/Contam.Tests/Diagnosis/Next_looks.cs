using System.Globalization;
using Contam.Diagnosis;

namespace Contam.Tests.Diagnosis;

public class Next_looks
{
    [Fact]
    public void Are_worth_what_they_tell_for_each_minute()
    {
        // Two suspects, one bit open. At x the look finds what a sheds with 0.9, a stray piece of b's with 0.01 of 1.01.
        // At y both are found alike, so that a look there tells nothing and is not proposed.
        // Found 0.45495: a 0.98912, so 0.08664 bits are left; clean 0.54505: a 0.09174, so 0.44222 bits are left; 1 − 0.03942 − 0.24103 = 0.71955.
        SuspectAnswer answer = Asked.Of("a[sheds metal] > x[look=good:10]; b[sheds metal] > y[look=good:5]; a > y");
        Assert.Equal(["x 10 0.7196 0.455 0.072"], Lines(answer));
    }

    [Fact]
    public void That_take_no_time_come_first() => Assert.Equal(
        ["y 0 0.7196 0.455 now", "x 10 0.7196 0.455 0.072"],
        Lines(Asked.Of("a[sheds metal] > x[look=good:10]; b[sheds metal] > y[look=good:0]")));

    [Fact]
    public void Leave_out_where_somebody_has_looked() =>
        Assert.Equal(["y"], Looking.Next(Asked.Of("a[sheds metal] > x[look=good]; b[sheds metal] > y[look=good]\n@clean x metal")).Select(look => look.Part.Value));

    [Fact]
    public void Take_the_time_of_the_kind_where_the_look_says_none() =>
        Assert.Equal(5, Looking.Next(Asked.Of("a[sheds metal] > x[look=good]; b[sheds metal]"))[0].Minutes);

    [Fact]
    public void Behind_a_barrier_find_less_often()
    {
        // Only 30 µm pass: found 0.9 / (0.9 + 1), half of a's suspicion of 1.
        NextLook look = Looking.Next(Asked.Of("a[sheds metal] > f[holds metal 30 abs] > x[look=good]; b[sheds metal rare]"))[0];
        Assert.Equal((0.9 * 0.9 / 1.9) + (0.1 * 0.01 / 1.01), look.ChanceFound, 12);
    }


    private static string[] Lines(SuspectAnswer answer) =>
    [
        .. Looking.Next(answer).Select(look => string.Create(
            CultureInfo.InvariantCulture,
            $"{look.Part} {look.Minutes} {look.Bits:0.####} {look.ChanceFound:0.###} {(look.BitsPerMinute is { } rate ? rate.ToString("0.###", CultureInfo.InvariantCulture) : "now")}")),
    ];
}
