using Contam.Reports.Text;

namespace Contam.Reports.Tests.Text;

/// <summary>Names that are not ASCII take the columns that a terminal gives them, and are never broken within what is seen as one character.</summary>
public sealed class A_name_in_another_script
{
    // Columns by Unicode Standard Annex 11 (wide and full-width: 2; combining: 0), counted by hand.
    [Theory]
    [InlineData("oil cooler", 10)]
    [InlineData("Ölkühler", 8)]
    [InlineData("O\u0308lku\u0308hler", 8)]
    [InlineData("冷却器", 6)]
    [InlineData("ｵｲﾙ", 3)]
    [InlineData("ＯＩＬ", 6)]
    [InlineData("펌프", 4)]
    [InlineData("насос", 5)]
    [InlineData("مضخة", 4)]
    [InlineData("משאבה", 5)]
    [InlineData("ปั๊ม", 2)]
    [InlineData("\U0001F527", 2)]
    [InlineData("\U0001F468\u200D\U0001F527", 2)]
    [InlineData("\U0001F469\U0001F3FD\u200D\U0001F527", 2)]
    [InlineData("\U0001F1E9\U0001F1EA", 2)]
    [InlineData("\u26A0\uFE0F", 2)]
    [InlineData("a\u200Bb", 2)]
    [InlineData("", 0)]
    public void Takes_the_columns_of_a_terminal(string name, int columns) => Assert.Equal(columns, DisplayWidth.Of(name));

    [Theory]
    [InlineData("O\u0308lku\u0308hlerru\u0308cklaufleitungsu\u0308berdruckventil")]
    [InlineData("冷却器冷却器冷却器冷却器冷却器冷却器")]
    [InlineData("\U0001F468\u200D\U0001F527\U0001F468\u200D\U0001F527\U0001F468\u200D\U0001F527\U0001F468\u200D\U0001F527\U0001F468\u200D\U0001F527\U0001F468\u200D\U0001F527\U0001F468\u200D\U0001F527")]
    public void Is_broken_between_characters_only(string name)
    {
        using var text = new StringWriter();
        new TextPage(text, TextLook.Plain).Row(0, (name, 5), ("", 0));
        string[] lines = text.ToString().TrimEnd('\n').Split('\n');

        Assert.True(lines.Length > 1);
        Assert.All(lines, line => Assert.InRange(DisplayWidth.Of(line), 1, 5));
        Assert.Equal(name, string.Concat(lines));
        // No line begins with what belongs to the character before it.
        Assert.All(lines, line => Assert.False(line[0] is '\u0308' or '\u200D' || char.IsLowSurrogate(line[0])));
    }

    [Theory]
    [InlineData("冷却器", "oil")]
    [InlineData("O\u0308lku\u0308hler", "oil")]
    [InlineData("\U0001F468\u200D\U0001F527 pump", "oil")]
    [InlineData("مضخة الزيت", "oil")]
    [InlineData("冷却器冷却器冷却器冷却器冷却器冷却器", "oil")]
    [InlineData("Wassergekühlter Abgassammelrohrrücklaufüberdruckventilanschluss", "oil")]
    public void Leaves_the_next_column_where_it_is(string name, string beside)
    {
        using var text = new StringWriter();
        var page = new TextPage(text, TextLook.Plain);
        page.Row(2, (name, 20), (beside, 10), ("end", 0));

        string first = text.ToString().Split('\n')[0];
        Assert.Equal(2 + 20 + 2, DisplayWidth.Of(first[..first.IndexOf(beside, StringComparison.Ordinal)]));
        Assert.Equal(2 + 20 + 2 + 10 + 2, DisplayWidth.Of(first[..first.IndexOf("end", StringComparison.Ordinal)]));
    }
}
