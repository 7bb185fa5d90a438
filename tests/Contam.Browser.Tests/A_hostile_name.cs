using Contam.Browser.Tests.Browser;
using Contam.Cli.Tests;

namespace Contam.Browser.Tests;

/// <summary>Names that would be orders to a browser, which shows them and obeys none.</summary>
public sealed class A_hostile_name(Chromium chromium)
{
    private static readonly string[] Commands =
    [
        "plan {0} --failed pump --debris metal --technicians 2 --format html",
        "draw {0} --format html",
        "draw {0} --failed pump --debris metal --format html",
        "drill {0} --failed pump --debris metal --answers --format html",
        "audit {0} --format html",
    ];

    public static TheoryData<string> Names =>
    [
        "<script>alert(1)</script>",
        "</script><script>alert(1)</script>",
        "</title></style><img src=x onerror=alert(1)>",
        "\"><img src=x onerror=alert(1)>",
        "' onmouseover='alert(1)' onfocus='alert(1)' autofocus='",
        "<svg><a href=\"javascript:alert(1)\"><text>pump</text></a></svg>",
        "<iframe srcdoc=\"&lt;script&gt;alert(1)&lt;/script&gt;\"></iframe>",
        "&lt;img src=x onerror=alert(1)&gt;",
        "]]><!-- <link rel=stylesheet href=//example.com/x> -->",
    ];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Is_shown_and_not_obeyed(string name)
    {
        foreach (string command in Commands)
        {
            string plain = await ElementsAsync("a pump", command);
            string html = Printed(name, command);
            await using OpenPage page = await chromium.OpenAsync(html);

            foreach (string button in (string[])["#circuits [role=button]", ".cs-show", "#unfold", ".play button:not(:disabled)", "summary"])
            {
                if (await page.Page.Locator(button).First.IsVisibleAsync())
                    await page.Page.Locator(button).First.ClickAsync();
            }

            // As many elements of each name, with the same attributes, as with names that harm nobody, but for lines of a label.
            Assert.Equal(plain, await ElementsAsync(page));
            Assert.Contains(name, await page.AskAsync<string>("document.documentElement.textContent"), StringComparison.Ordinal);
            Assert.Empty(page.Said);
            Assert.Empty(page.Asked);
            Assert.Empty(page.Complaints);
        }
    }

    private async Task<string> ElementsAsync(string name, string command)
    {
        await using OpenPage page = await chromium.OpenAsync(Printed(name, command));
        return await ElementsAsync(page);
    }

    private static Task<string> ElementsAsync(OpenPage page) => page.AskAsync<string>("""
        [...new Set([...document.querySelectorAll('*')].map(one => [one.localName, ...[...one.attributes].map(attribute => attribute.name).filter(name => !['class', 'aria-pressed', 'aria-describedby', 'open', 'disabled', 'hidden'].includes(name)).sort()].join(' ')))].sort().join('\n')
          + '\nscripts: ' + document.scripts.length + ', frames: ' + frames.length + ', images: ' + document.images.length + ', links: ' + document.links.length
        """);

    private static string Printed(string name, string command)
    {
        CommandSession session = FamilyWithName.Ask(name, command);
        Assert.True(session.Out.StartsWith("<!DOCTYPE html>", StringComparison.Ordinal), session.Error);
        return session.Out;
    }
}
