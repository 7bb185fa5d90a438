using Contam.Reports.Markup;

namespace Contam.Reports.Tests.Markup;

public sealed class Written_markup
{
    [Theory]
    [InlineData("<script>alert(1)</script>", "&lt;script&gt;alert(1)&lt;/script&gt;")]
    [InlineData("\" onload='x' &amp;", "&quot; onload=&#39;x&#39; &amp;amp;")]
    [InlineData("red \u001b[31m and \u202eback", "red ?[31m and ?back")]
    [InlineData("Ölkühler 冷却器", "Ölkühler 冷却器")]
    public void Shows_what_a_person_wrote_as_it_was_written(string text, string escaped)
    {
        Assert.Equal($"<p>{escaped}</p>", Of(page => page.Leaf("p", text)));
        Assert.Equal($"<p title=\"{escaped}\"/>", Of(page => page.Empty("p", ("title", text))));
    }

    [Fact]
    public void Leaves_out_an_attribute_without_value() =>
        Assert.Equal("<a id=\"x\"><b/></a>", Of(page => page.Open("a", ("href", null), ("id", "x")).Empty("b").Close()));

    [Theory]
    [InlineData("")]
    [InlineData("a b")]
    [InlineData("a>b")]
    [InlineData("1a")]
    public void Refuses_a_name_that_could_be_more_than_a_name(string name)
    {
        Assert.Throws<ArgumentException>(() => Of(page => page.Open(name)));
        Assert.Throws<ArgumentException>(() => Of(page => page.Open("p", (name, "x"))));
    }

    [Fact]
    public void Refuses_a_style_or_script_that_could_end_itself()
    {
        Assert.Throws<ArgumentException>(() => Of(page => page.Style("a{}</style><b>")));
        Assert.Throws<ArgumentException>(() => Of(page => page.Script("let a = '</script>'")));
        Assert.Throws<ArgumentException>(() => Of(page => page.Script("let a = '<!--'")));
        Assert.Equal("<script>if (1 < 2) {}</script>", Of(page => page.Script("if (1 < 2) {}")));
    }

    [Theory]
    [InlineData(1.005, "1")]
    [InlineData(-0.001, "0")]
    [InlineData(1234.567, "1234.57")]
    public void Writes_numbers_alike_everywhere(double value, string written) => Assert.Equal(written, MarkupWriter.Number(value));

    private static string Of(Action<MarkupWriter> write)
    {
        using var text = new StringWriter();
        write(new MarkupWriter(text));
        return text.ToString();
    }
}
