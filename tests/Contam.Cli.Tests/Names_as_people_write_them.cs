using System.Text.Json;
using Contam.Reports.Text;

namespace Contam.Cli.Tests;

/// <summary>Names in other scripts, long names, and names that would be orders to a page, a table or a terminal, through the whole command.</summary>
public sealed class Names_as_people_write_them
{
    public static TheoryData<string> Names =>
    [
        "Ölrücklaufüberdruckventilanschlussstutzendichtungshaltering",
        "O\u0308lpumpe mit Ru\u0308cklauf",
        "燃料噴射ポンプと高圧配管の継ぎ手およびその保持具一式",
        "مضخة حقن الوقود ذات الضغط العالي",
        "משאבת הזרקה",
        "ปั๊มน้ำมันเชื้อเพลิงแรงดันสูง",
        "\U0001F469\U0001F3FD\u200D\U0001F527 pump \U0001F1E9\U0001F1EA",
        "<script>alert(1)</script>",
        "=1+1 | **pump** [x](javascript:alert(1)) `y`",
        "@SUM(A1)",
        "-2+3 \\\" ' pump",
    ];

    [Theory]
    [MemberData(nameof(Names))]
    public void Fit_the_page_of_text(string name)
    {
        foreach (string command in new[] { "plan {0} --failed pump --debris metal", "parts {0}", "parts {0} --tree", "why {0} --failed pump --debris metal --part rail", "stop-line {0} --failed pump --debris metal", "suspects {0} --found rail=metal", "check {0} --strict", "drill {0} --failed pump --debris metal --answers" })
        {
            string text = Ask(name, command).Out;
            Assert.All(text.Split('\n'), line => Assert.InRange(DisplayWidth.Of(line), 0, 80));
            Assert.DoesNotContain('\u001b', text);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Come_back_whole_from_json(string name)
    {
        using JsonDocument plan = JsonDocument.Parse(Ask(name, "plan {0} --failed pump --debris metal --format json").Out);

        JsonElement pump = plan.RootElement.GetProperty("parts").EnumerateArray().First(part => part.GetProperty("id").GetString() == "pump");
        Assert.Equal(name, pump.GetProperty("name").GetString());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Begin_no_sum_in_a_table(string name)
    {
        string table = Ask(name, "plan {0} --failed pump --debris metal --format csv").Out;

        Assert.Contains(name.Replace("\"", "\"\"", StringComparison.Ordinal), table, StringComparison.Ordinal);
        // A sheet takes a cell that begins so for a sum.
        Assert.DoesNotMatch("(?m)(^|,|\")[=@+-]", table);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Give_no_orders_in_markdown(string name)
    {
        string page = Ask(name, "plan {0} --failed pump --debris metal --format markdown").Out;

        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        // A bracket with a backslash before it closes no link.
        Assert.DoesNotMatch(@"(?<!\\)\]\(", page);
        Assert.DoesNotContain("**pump**", page, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Give_no_orders_in_a_page(string name)
    {
        foreach (string command in new[] { "plan {0} --failed pump --debris metal --format html", "draw {0} --failed pump --debris metal --format html", "draw {0} --format svg", "drill {0} --failed pump --debris metal --answers --format html" })
        {
            string page = Ask(name, command).Out;

            Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
            // A name that holds quotes or brackets stands there in full, each as the page's own word for it.
            string plain = System.Net.WebUtility.HtmlDecode(page);
            Assert.Contains(name.Split(' ')[0], plain, StringComparison.Ordinal);
            Assert.DoesNotContain(name.Any(letter => letter is '<' or '"') ? $">{name}" : "\u001b", page, StringComparison.Ordinal);
        }
    }

    private static CommandSession Ask(string name, string command)
    {
        CommandSession session = FamilyWithName.Ask(name, command);
        Assert.True(session.Exit is 0 or 1, session.Error);
        return session;
    }
}
