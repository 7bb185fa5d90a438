using System.Text.RegularExpressions;
using Contam.Browser.Tests.Browser;
using Contam.Browser.Tests.Pages;
using Microsoft.Playwright;

namespace Contam.Browser.Tests;

/// <summary>What an apprentice sees of an exercise, and when.</summary>
public sealed class The_drill(Chromium chromium)
{
    // Why each choice is right or wrong, which no question says.
    private const string Reasons = "[...document.querySelectorAll('details .choices span')].map(line => line.textContent).filter(text => /\\w+ \\w+ .*[.]$/.test(text))";
    private const string Lit = "[...document.querySelectorAll('.cd-lit[data-part]')].flatMap(box => box.dataset.part.split(' '))";

    public static TheoryData<string> Families => ShippedPages.Families;

    [Theory]
    [MemberData(nameof(Families))]
    public async Task Shows_nothing_of_its_answers_before_they_are_asked_for(string family)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("drill " + family));
        string[] answers = await page.AskAsync<string[]>(Reasons);
        string read = await page.AskAsync<string>("document.body.innerText");
        string printed = string.Concat((await Paper.OfAsync(page, "A4", signs: false)).Sheets);

        Assert.NotEmpty(answers);
        Assert.All(answers, answer => Assert.DoesNotContain(answer, read, StringComparison.Ordinal));
        Assert.All(answers, answer => Assert.DoesNotContain(Paper.Bare(answer), printed, StringComparison.Ordinal));
        Assert.DoesNotMatch(@"\bRight\. ", read);
        Assert.Empty(await page.AskAsync<string[]>("[...document.querySelectorAll('details li, [data-reached]')].filter(one => one.checkVisibility()).map(one => one.outerHTML)"));
        Assert.Equal(0, await page.AskAsync<int>("document.querySelectorAll('.cd-lit, .newest, details[open]').length"));
        // The picture marks what failed, and nothing that it reached.
        Assert.Equal(["failed"], await page.AskAsync<string[]>("[...new Set([...document.querySelectorAll('[data-grade]')].map(box => box.dataset.grade))]"));
        Assert.Equal("", await page.Page.Locator("output").InnerTextAsync());
    }

    [Theory]
    [MemberData(nameof(Families))]
    public async Task Plays_the_spread_hop_by_hop_there_and_back(string family)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("drill " + family));
        ILocator back = Button(page, "Back"), next = Button(page, "Next hop"), says = page.Page.Locator("output");
        string[] texts = await page.AskAsync<string[]>("[...document.querySelectorAll('[data-reached]')].map(hop => hop.textContent)");
        string[] reached = await page.AskAsync<string[]>("[...document.querySelectorAll('[data-reached]')].map(hop => hop.dataset.reached)");
        Assert.NotEmpty(texts);
        Assert.False(await back.IsEnabledAsync());

        var lit = new List<int> { 0 };
        for (int hop = 1; hop <= texts.Length; hop++)
        {
            await next.ClickAsync();
            Assert.Equal($"Hop {hop} of {texts.Length}: {texts[hop - 1]}", await says.InnerTextAsync());
            string[] now = await page.AskAsync<string[]>(Lit);
            Assert.Empty(reached[..hop].SelectMany(one => one.Split(' ')).Except(now));
            // Boxes hold repeated parts; a box that holds none that is reached is not lit.
            Assert.Empty(await page.AskAsync<string[]>($"[...document.querySelectorAll('.cd-lit[data-part]')].map(box => box.dataset.part).filter(ids => !ids.split(' ').some(id => '{string.Join(' ', reached[..hop])}'.split(' ').includes(id)))"));
            lit.Add(now.Length);
        }

        Assert.False(await next.IsEnabledAsync());
        Assert.Equal(lit.Order(), lit);
        for (int hop = texts.Length - 1; hop >= 0; hop--)
        {
            await back.ClickAsync();
            Assert.Equal(lit[hop], (await page.AskAsync<string[]>(Lit)).Length);
        }

        Assert.Equal("", await says.InnerTextAsync());
        await Button(page, "All of it").ClickAsync();
        Assert.Equal(lit[^1], (await page.AskAsync<string[]>(Lit)).Length);
    }

    [Theory]
    [MemberData(nameof(Families))]
    public async Task Tells_each_answer_where_it_is_unfolded(string family)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("drill " + family));
        int questions = await page.Page.Locator("h3").CountAsync();

        foreach (ILocator summary in await page.Page.Locator("summary").AllAsync())
            await summary.ClickAsync();

        Assert.Equal(questions, Regex.Count(await page.AskAsync<string>("document.body.innerText"), @"\bRight\. "));
    }

    [Theory]
    [MemberData(nameof(Families))]
    public async Task Prints_its_answers_where_it_was_written_with_them(string family)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("answers " + family));
        string[] answers = await page.AskAsync<string[]>("[...document.querySelectorAll('details li')].map(line => line.textContent)");

        string printed = Regex.Replace(string.Concat((await Paper.OfAsync(page, "A4", signs: false)).Sheets), "page[0-9]+of[0-9]+", "");

        Assert.NotEmpty(answers);
        Assert.All(answers, answer => Assert.Contains(Paper.Bare(answer), printed, StringComparison.Ordinal));
    }

    private static ILocator Button(OpenPage page, string name) => page.Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });
}
