using Contam.Browser.Tests.Browser;
using Contam.Browser.Tests.Pages;

namespace Contam.Browser.Tests;

/// <summary>What comes out of a printer, on A4 and on Letter.</summary>
public sealed class On_paper(Chromium chromium)
{
    public static TheoryData<string> Some => ShippedPages.Some;

    public static TheoryData<string> Families => ShippedPages.Families;

    public static TheoryData<string> WithScript => [.. ShippedPages.Some.Select(row => row.Data).Where(name => name.Split(' ')[0] is "plan" or "drill")];

    [Theory]
    [MemberData(nameof(Some))]
    public async Task Every_page_counts_its_sheets_wastes_none_cuts_nothing_in_two_and_repeats_the_heads_of_its_tables(string name)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of(name));
        foreach ((string format, double shorter, double longer) in new[] { ("A4", 595, 842), ("Letter", 612, 792.0) })
        {
            Paper paper = await Paper.OfAsync(page, format, signs: format == "A4");

            Assert.All(paper.Sheets.Select((sheet, index) => (sheet, index)), one => Assert.Contains($"page{one.index + 1}of{paper.Sheets.Length}", one.sheet, StringComparison.Ordinal));
            Assert.All(paper.Sizes, size => Assert.True(Math.Abs(Math.Min(size.Width, size.Height) - shorter) < 1.5 && Math.Abs(Math.Max(size.Width, size.Height) - longer) < 1.5, $"{size} for {format}"));
            Assert.Equal(paper.Sheets.Length, paper.Sizes.Length);
            // No sheet holds nothing but its number, and a drawing has none but those of its pieces, two of which may share one.
            Assert.All(paper.Sheets, sheet => Assert.True(sheet.Length > 40, sheet));
            if (name.StartsWith("draw", StringComparison.Ordinal) || name.StartsWith("spread", StringComparison.Ordinal))
                Assert.InRange(paper.Sheets.Length, 1, await page.AskAsync<int>("document.querySelectorAll('figure').length"));
            if (format != "A4")
                continue;
            Assert.Empty(paper.Cut);
            Assert.Empty(paper.Headless);
        }
    }

    [Theory]
    [MemberData(nameof(Families))]
    public async Task A_sheet_has_its_mark_and_all_of_its_steps(string family)
    {
        await using OpenPage page = await chromium.OpenAsync(ShippedPages.Of("plan " + family));
        string mark = (await page.AskAsync<string>("document.getElementById('sheet').dataset.plan"))[..8];
        string[] steps = await page.AskAsync<string[]>("[...document.querySelectorAll('.cs-step')].map(step => step.innerText)");

        Paper paper = await Paper.OfAsync(page, "Letter", signs: false);

        Assert.NotEmpty(steps);
        Assert.All(paper.Sheets, sheet => Assert.Contains("Plan" + mark, sheet, StringComparison.Ordinal));
        // Whole on one sheet, with what it must be careful of.
        Assert.All(steps, step => Assert.Contains(paper.Sheets, sheet => sheet.Contains(Paper.Bare(step), StringComparison.Ordinal)));
    }

    [Theory]
    [MemberData(nameof(WithScript))]
    public async Task The_same_is_printed_without_script(string name)
    {
        await using OpenPage with = await chromium.OpenAsync(ShippedPages.Of(name));
        await using OpenPage without = await chromium.OpenAsync(ShippedPages.Of(name), script: false);

        string[] there = (await Paper.OfAsync(with, "A4", signs: false)).Sheets;
        string[] here = (await Paper.OfAsync(without, "A4", signs: false)).Sheets;

        Assert.Equal(there, here);
        // On the screen too nothing is said only with script, but for the tools that need one.
        const string Lines = "document.querySelector('main').innerText.split('\\n').map(line => line.trim()).filter(Boolean)";
        string[] read = await without.AskAsync<string[]>(Lines);
        Assert.NotEmpty(read);
        Assert.All(read, line => Assert.DoesNotContain("Click", line, StringComparison.Ordinal));
        Assert.Empty(read.Except(await with.AskAsync<string[]>(Lines)));
        Assert.Empty(await without.AskAsync<string[]>("[...document.querySelectorAll('button, select')].filter(one => one.checkVisibility()).map(one => one.outerHTML)"));
    }
}
