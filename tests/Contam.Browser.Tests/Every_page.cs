using Contam.Browser.Tests.Browser;
using Contam.Browser.Tests.Pages;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;

namespace Contam.Browser.Tests;

/// <summary>What holds of every page that the command writes, for every shipped family, as a person's browser shows it.</summary>
public sealed class Every_page(Chromium chromium)
{
    // Said outright, so that a newer scan does not move the goal.
    private static readonly string[] Rules = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "best-practice"];

    public static TheoryData<string> All => ShippedPages.All;

    public static TheoryData<string> Some => ShippedPages.Some;

    [Theory]
    [MemberData(nameof(All))]
    public async Task Opens_without_complaint_and_asks_for_nothing(string name)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of(name));

        Assert.Empty(page.Complaints);
        Assert.Empty(page.Asked);
        Assert.Empty(page.Said);
        // Sheets and exercises alone have a script.
        Assert.Equal(name.Split(' ')[0] is "plan" or "drill" or "answers" ? 1 : 0, await page.AskAsync<int>("document.scripts.length"));
    }

    [Theory]
    [MemberData(nameof(Some))]
    public async Task Has_no_fault_that_an_accessibility_scan_would_find(string name)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of(name));

        AxeResult scan = await page.Page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = [.. Rules] } });

        Assert.NotEmpty(scan.Passes);
        Assert.Empty(scan.Violations.Select(fault => $"{fault.Impact} {fault.Id}: {fault.Help}: {string.Join(" | ", fault.Nodes.Take(3).Select(node => node.Html))} ({fault.Nodes.Length})"));
    }

    [Theory]
    [MemberData(nameof(Some))]
    public async Task Is_reached_everywhere_by_the_keyboard_alone_and_shows_where_one_is(string name)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of(name));

        Assert.Empty(await Keyboard.NotReachedAsync(page));
        Assert.Empty(page.Complaints);
    }

    [Theory]
    [MemberData(nameof(Some))]
    public async Task Fits_a_phone_without_being_pulled_sideways(string name)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of(name), width: 360);
        await page.AskAsync<bool>("document.querySelectorAll('details').forEach(one => one.open = true) || true");

        Assert.Equal(360, await page.AskAsync<int>("document.documentElement.scrollWidth"));
        // Where something is wider than its frame, the frame can be moved by the keyboard too.
        Assert.Empty(await page.AskAsync<string[]>("""
            [...document.querySelectorAll('main *')].filter(one => one.scrollWidth > one.clientWidth && one.clientWidth > 0 && getComputedStyle(one).overflowX !== 'visible')
              .filter(one => one.tabIndex !== 0 || one.scrollWidth <= one.clientWidth || getComputedStyle(one).overflowX === 'hidden').map(one => one.outerHTML.slice(0, 120))
            """));
    }
}
