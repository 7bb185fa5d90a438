using System.Text.Json;
using Contam.Browser.Tests.Browser;
using Contam.Browser.Tests.Pages;
using Contam.Cli.Tests;
using Microsoft.Playwright;

namespace Contam.Browser.Tests;

/// <summary>What a person does with the deciding looks of a sheet in a browser, held against the conditions in the plan's document.</summary>
public sealed class The_looks_of_a_sheet(Chromium chromium)
{
    private const string Gear = "plan systems/families/harbour-reverse-gear.yaml --failed output-gear --debris metal";
    private const string FlatSix = "plan systems/families/flat-six-dry-sump.yaml --failed fuel-pump --debris metal";

    private const string Struck = "[...document.querySelectorAll('.cs-step.cs-struck .cs-done')].map(box => Number(box.id.slice(5))).sort((one, other) => one - other)";
    private const string Hanging = "document.querySelectorAll('.cs-step.cs-hangs').length";

    [Theory]
    [InlineData(Gear)]
    [InlineData(FlatSix)]
    public async Task Strike_and_open_at_once_what_the_document_says(string words)
    {
        using JsonDocument plan = JsonDocument.Parse(CommandSession.Of(words + " --format json").Out);
        JsonElement[] looks = [.. plan.RootElement.GetProperty("looks").EnumerateArray()];
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Printed(words + " --format html"));
        Assert.Empty(await page.AskAsync<int[]>(Struck));
        Assert.NotEqual(0, await page.AskAsync<int>(Hanging));
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (int turn = 0; turn < 12; turn++)
        {
            var chance = new Random(turn);
            var cameOut = new Dictionary<string, bool>(StringComparer.Ordinal);
            foreach (JsonElement look in looks)
            {
                string letter = look.GetProperty("id").GetString()!;
                await page.Page.Locator($"#look-{letter}-open").CheckAsync();
            }

            foreach (JsonElement look in looks)
            {
                string letter = look.GetProperty("id").GetString()!;
                string[] onlyIf = Letters(look, "onlyIf");
                if (onlyIf.Length > 0 && !onlyIf.Any(Counts(plan, cameOut).Contains))
                    continue;
                cameOut.Add(letter, turn switch { 0 => false, 1 => true, _ => chance.Next(2) == 0 });
                await page.Page.Locator($"#look-{letter}-{(cameOut[letter] ? "found" : "clean")}").CheckAsync();
            }

            HashSet<string> counts = Counts(plan, cameOut);
            if (looks.Any(look => !cameOut.ContainsKey(look.GetProperty("id").GetString()!) && Letters(look, "onlyIf").Any(counts.Contains)))
                continue;
            int[] struck = await page.AskAsync<int[]>(Struck);
            Assert.Equal(plan.RootElement.GetProperty("steps").EnumerateArray().Where(step => !IsDone(step, counts)).Select(step => step.GetProperty("number").GetInt32()), struck);
            Assert.Equal(0, await page.AskAsync<int>(Hanging));
            double hours = plan.RootElement.GetProperty("steps").EnumerateArray().Where(step => IsDone(step, counts) && step.GetProperty("technician").ValueKind == JsonValueKind.Number).Sum(step => step.GetProperty("minutes").GetDouble()) / 60;
            Assert.StartsWith(FormattableString.Invariant($"Left: {Math.Round(hours, 1, MidpointRounding.AwayFromZero):0.#} h."), await page.Page.Locator("#left").InnerTextAsync(), StringComparison.Ordinal);
            seen.Add(string.Join(' ', struck));
        }

        Assert.True(seen.Count > 2);
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task Are_kept_like_ticks_and_taken_back_with_them()
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Printed(Gear + " --format html"));
        await page.Page.Locator("label[for=look-A-clean]").ClickAsync();
        int[] struck = await page.AskAsync<int[]>(Struck);
        string left = await page.Page.Locator("#left").InnerTextAsync();
        Assert.NotEmpty(struck);

        await page.Page.ReloadAsync();
        Assert.True(await page.Page.Locator("#look-A-clean").IsCheckedAsync());
        Assert.Equal(struck, await page.AskAsync<int[]>(Struck));
        Assert.Equal(left, await page.Page.Locator("#left").InnerTextAsync());

        await page.Page.Locator("#untick").ClickAsync();
        await page.Page.ReloadAsync();
        Assert.Equal(["Untick every step and every order line, and take back every look of this sheet?"], page.Said);
        Assert.True(await page.Page.Locator("#look-A-open").IsCheckedAsync());
        Assert.Empty(await page.AskAsync<int[]>(Struck));
    }

    [Fact]
    public async Task Are_chosen_with_the_keyboard_alone()
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Printed(Gear + " --format html"));
        await page.Page.Locator("#tick-" + await page.AskAsync<string>("document.querySelector('#look-A-clean').closest('.cs-step').querySelector('.cs-done').id.slice(5)")).FocusAsync();
        for (int tabs = 0; tabs < 8 && !await page.AskAsync<bool>("document.activeElement.name === 'look-A'"); tabs++)
            await page.Page.Keyboard.PressAsync("Tab");
        await page.Page.Keyboard.PressAsync("ArrowDown");
        Assert.True(await page.Page.Locator("#look-A-clean").IsCheckedAsync());
        Assert.NotEmpty(await page.AskAsync<int[]>(Struck));

        await page.Page.Keyboard.PressAsync("ArrowDown");
        Assert.True(await page.Page.Locator("#look-A-found").IsCheckedAsync());
        Assert.Empty(await page.AskAsync<int[]>(Struck));
    }

    [Fact]
    public async Task Say_so_where_a_step_is_ticked_that_hangs_on_an_open_look()
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Printed(Gear + " --format html"));
        string box = await page.AskAsync<string>("document.querySelector('.cs-step.cs-hangs .cs-done').id");

        await page.Page.Locator("#" + box).CheckAsync();

        Assert.Contains($"Step {box["tick-".Length..]} hangs on look ", await page.Page.Locator("#progress").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Print_their_letters_and_outcomes_for_a_pencil()
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Printed(Gear + " --format html"));

        string paper = string.Concat((await Paper.OfAsync(page, "A4", signs: false)).Sheets);

        Assert.Contains("clean:strikeA,B,CandD.", paper, StringComparison.Ordinal);
        Assert.Contains("CTakeoffcoolerfeedhose", paper, StringComparison.Ordinal);
        Assert.DoesNotContain("notmadeyet", paper, StringComparison.Ordinal);
    }

    private static HashSet<string> Counts(JsonDocument plan, Dictionary<string, bool> cameOut)
    {
        HashSet<string> found = [.. cameOut.Where(one => one.Value).Select(one => one.Key)], clean = [.. cameOut.Where(one => !one.Value).Select(one => one.Key)];
        IEnumerable<JsonElement> against = plan.RootElement.GetProperty("disproofs").EnumerateArray().Where(rule => Letters(rule, "found").All(found.Contains) && Letters(rule, "clean").All(clean.Contains));
        return [.. found, .. against.SelectMany(rule => Letters(rule, "void")).Where(clean.Contains)];
    }

    private static bool IsDone(JsonElement step, HashSet<string> counts) =>
        (Letters(step, "onlyIf").Length == 0 || Letters(step, "onlyIf").Any(counts.Contains)) && !Letters(step, "unless").Any(counts.Contains);

    private static string[] Letters(JsonElement of, string name) => [.. of.GetProperty(name).EnumerateArray().Select(letter => letter.GetString()!)];
}
