using Contam.Browser.Tests.Browser;
using Contam.Browser.Tests.Pages;
using Microsoft.Playwright;

namespace Contam.Browser.Tests;

/// <summary>What a person does with the sheet of a plan in a browser.</summary>
public sealed class The_sheet(Chromium chromium)
{
    private const string Ticked = "[...document.querySelectorAll('.cs-tick:checked')].map(box => box.id).join(' ')";
    private const string Shown = "[...document.querySelectorAll('.cs-step')].filter(step => step.checkVisibility()).map(step => step.id)";

    // The boxes and joints on the way to a part, by the list of its way in its row, against what is lit in the picture.
    private const string Lit = "[...document.querySelectorAll('#circuits .cd-lit[data-part]')].flatMap(box => box.dataset.part.split(' '))";

    public static TheoryData<string> Families => ShippedPages.Families;

    [Fact]
    public async Task Keeps_its_ticks_when_it_is_opened_again()
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("plan harbour-diesel-i4"));
        await page.Page.Locator("#tick-1").CheckAsync();
        await page.Page.Locator("label[for=tick-2]").ClickAsync();
        await page.Page.Locator("#tick-order-1").CheckAsync();
        Assert.StartsWith("2 of ", await page.Page.Locator("#progress").InnerTextAsync(), StringComparison.Ordinal);

        await page.Page.ReloadAsync();

        Assert.Equal("tick-order-1 tick-1 tick-2", string.Join(' ', (await page.AskAsync<string>(Ticked)).Split(' ').OrderBy(id => id != "tick-order-1").ThenBy(id => id, StringComparer.Ordinal)));
        Assert.StartsWith("2 of ", await page.Page.Locator("#progress").InnerTextAsync(), StringComparison.Ordinal);

        await page.Page.Locator("#tick-2").UncheckAsync();
        await page.Page.ReloadAsync();
        Assert.DoesNotContain("tick-2", await page.AskAsync<string>(Ticked), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Keeps_no_ticks_for_another_plan()
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("plan harbour-diesel-i4"));
        await page.Page.Locator("#tick-1").CheckAsync();

        File.WriteAllText(Path.Combine(page.Folder, "page.html"), ShippedPages.Of("plan stern-trim-unit"));
        await page.Page.ReloadAsync();

        Assert.Equal("", await page.AskAsync<string>(Ticked));
    }

    [Fact]
    public async Task Says_so_where_a_step_is_ticked_before_what_must_come_before_it()
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("plan harbour-diesel-i4"));
        (string box, string after) = ((await page.AskAsync<string>("(box => box.id + '/' + box.dataset.after)([...document.querySelectorAll('.cs-done')].find(box => box.dataset.after))")).Split('/') is [var id, var before]) ? (id, before) : default;

        await page.Page.Locator("#" + box).CheckAsync();
        Assert.Contains($"Step {box["tick-".Length..]} comes after {after.Replace(" ", ", ", StringComparison.Ordinal)}, not ticked yet.", await page.Page.Locator("#progress").InnerTextAsync(), StringComparison.Ordinal);

        await page.Page.Locator("#" + box).UncheckAsync();
        foreach (string number in after.Split(' '))
            await page.Page.Locator("#tick-" + number).CheckAsync();
        await page.Page.Locator("#" + box).CheckAsync();
        Assert.DoesNotContain("comes after", await page.Page.Locator("#progress").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Unticks_everything_only_after_asking()
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("plan harbour-diesel-i4"));
        await page.Page.Locator("#tick-1").CheckAsync();
        await page.Page.Locator("#tick-order-1").CheckAsync();

        await page.Page.Locator("#untick").ClickAsync();
        await page.Page.ReloadAsync();

        Assert.Equal(["Untick every step and every order line of this sheet?"], page.Said);
        Assert.Equal("", await page.AskAsync<string>(Ticked));
    }

    [Theory]
    [MemberData(nameof(Families))]
    public async Task Shows_of_its_steps_and_parts_those_of_the_circuit_and_person_that_are_chosen(string family)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("plan " + family));
        string[] all = await page.AskAsync<string[]>(Shown);
        var hidden = new HashSet<string>(StringComparer.Ordinal);
        foreach ((string list, string data) in new[] { ("by-circuit", "circuits"), ("by-person", "person") })
        {
            foreach (string value in await page.AskAsync<string[]>($"[...document.getElementById('{list}').options].map(one => one.value).filter(Boolean)"))
            {
                await page.Page.Locator("#" + list).SelectOptionAsync(value);

                string[] expected = await page.AskAsync<string[]>($"[...document.querySelectorAll('.cs-step')].filter(step => !step.dataset.{data} || step.dataset.{data}.split(' ').includes('{value}')).map(step => step.id)");
                string[] shown = await page.AskAsync<string[]>(Shown);
                Assert.Equal(expected, shown);
                hidden.UnionWith(all.Except(shown));
                if (data == "circuits")
                    Assert.True(await page.AskAsync<bool>($"[...document.querySelectorAll('.cs-part')].every(part => part.checkVisibility() === part.dataset.circuits.split(' ').includes('{value}'))"));
                Assert.True(await page.AskAsync<bool>("[...document.querySelectorAll('.cs-phase')].every(phase => phase.checkVisibility() === [...phase.querySelectorAll('.cs-step')].some(step => step.checkVisibility()))"));
                Assert.Contains(" the others must be done too.", await page.Page.Locator("#filtered").InnerTextAsync(), StringComparison.Ordinal);
                Assert.Contains($" {await page.AskAsync<int>("[...document.querySelectorAll('.cs-done')].filter(box => box.checkVisibility()).length")} of ", await page.Page.Locator("#filtered").InnerTextAsync(), StringComparison.Ordinal);
            }

            await page.Page.Locator("#" + list).SelectOptionAsync("");
            Assert.Equal(all, await page.AskAsync<string[]>(Shown));
            Assert.Equal("", await page.Page.Locator("#filtered").InnerTextAsync());
        }

        Assert.NotEmpty(hidden);
    }

    [Fact]
    public async Task Prints_that_it_is_filtered()
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("plan harbour-diesel-i4"));
        await page.Page.Locator("#by-person").SelectOptionAsync("1");

        Paper paper = await Paper.OfAsync(page, "A4", signs: false);

        Assert.Contains("theothersmustbedonetoo.", paper.Sheets[0], StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Families))]
    public async Task Lights_the_way_to_a_part_that_is_clicked_and_puts_it_out_again(string family)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("plan " + family));
        string part = await page.AskAsync<string>("(ways => ways.reduce((longest, way) => way.length > longest.length ? way : longest))([...document.querySelectorAll('.cs-way')].map(list => list.dataset.way.split(' '))).at(-1)");
        string[] way = await page.AskAsync<string[]>($"[...document.querySelectorAll('#part-{part} .cs-way')].flatMap(list => list.dataset.way.split(' '))");
        ILocator box = page.Page.Locator($"#circuits [data-part~='{part}']");
        Assert.True(way.Length > 2);

        await box.ClickAsync();
        Assert.Equal("true", await box.GetAttributeAsync("aria-pressed"));
        Assert.Empty(way.Except(await page.AskAsync<string[]>(Lit)));
        Assert.Empty(await page.AskAsync<string[]>($"[...document.querySelectorAll('#circuits .cd-lit[data-part]')].filter(box => !box.dataset.part.split(' ').some(id => {Text(way)}.includes(id))).map(box => box.dataset.part)"));
        Assert.NotEqual(0, await page.AskAsync<int>("document.querySelectorAll('#circuits .cd-lit[data-from]').length"));
        Assert.Contains(await page.AskAsync<string>($"document.querySelector('#part-{part} th').textContent"), await page.Page.Locator("#lit").InnerTextAsync(), StringComparison.Ordinal);

        await page.Page.Locator("#unlight").ClickAsync();
        Assert.Equal(0, await page.AskAsync<int>("document.querySelectorAll('.cd-lit, .cs-lit').length"));

        await box.FocusAsync();
        await page.Page.Keyboard.PressAsync("Enter");
        Assert.Empty(way.Except(await page.AskAsync<string[]>(Lit)));
        await page.Page.Keyboard.PressAsync(" ");
        Assert.Equal(0, await page.AskAsync<int>("document.querySelectorAll('.cd-lit, .cs-lit').length"));
    }

    [Theory]
    [MemberData(nameof(Families))]
    public async Task Opens_with_what_failed_in_sight_within_the_frame_of_the_picture(string family)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("plan " + family));

        Assert.True(await page.AskAsync<bool>("""
            (() => {
              const here = document.querySelector('#circuits .cd-failed').getBoundingClientRect(), frame = document.getElementById('view').getBoundingClientRect();
              return here.left >= frame.left && here.right <= frame.right && here.top >= frame.top && here.bottom <= frame.bottom && frame.height <= innerHeight;
            })()
            """));

        await page.Page.Locator("#whole").ClickAsync();
        Assert.True(await page.AskAsync<bool>("(view => view.scrollWidth <= view.clientWidth)(document.getElementById('view'))"));
    }

    private static string Text(string[] ids) => $"['{string.Join("','", ids)}']";
}
