using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Contam.Browser.Tests.Browser;

/// <summary>A page as it comes out of a printer: its sheets of paper, each with what is written on it, without the spaces.</summary>
internal sealed partial class Paper
{
    // The first and the last sign of whatever may not be cut in two, each written so small that nobody sees it and nothing moves; and one in each
    // head of a table.
    private const string Signs = """
        (() => {
          const small = (number, kind) => { const one = document.createElement('span'); one.style.cssText = 'font-size:4px;line-height:0;white-space:nowrap;flex:none'; one.textContent = '[' + kind + number + ']'; return one; };
          let number = 0;
          document.querySelectorAll('.cs-step, .cs-cautions li, tbody tr').forEach(whole => {
            if (!whole.checkVisibility()) return;
            const row = whole.localName === 'tr', ends = row ? [whole.firstElementChild, whole.lastElementChild] : [whole, whole];
            number += 1;
            ends[0].prepend(small(number, 'from'));
            ends[1].append(small(number, 'to'));
            if (row) ends[0].append(small([...document.querySelectorAll('table')].indexOf(whole.closest('table')), 'in'));
          });
          document.querySelectorAll('table').forEach((table, which) => table.querySelector('thead th').append(small(which, 'head')));
          return number;
        })()
        """;

    private Paper(string[] sheets, IEnumerable<(double Width, double Height)> sizes, int wholes)
    {
        Sheets = sheets;
        Sizes = [.. sizes];
        Wholes = wholes;
    }

    /// <summary>What is written on each sheet.</summary>
    public string[] Sheets { get; }

    /// <summary>Width and height of each sheet in points.</summary>
    public (double Width, double Height)[] Sizes { get; }

    /// <summary>How many things there are that may not be cut in two.</summary>
    public int Wholes { get; }

    /// <summary>What begins on one sheet and ends on another, or is not there at all.</summary>
    public IEnumerable<int> Cut => Enumerable.Range(1, Wholes).Where(number => !Sheets.Any(sheet => sheet.Contains($"[from{number}]", StringComparison.Ordinal) && sheet.Contains($"[to{number}]", StringComparison.Ordinal)));

    /// <summary>Sheets that hold rows of a table without its head, and which table.</summary>
    public IEnumerable<(int Sheet, string Table)> Headless => Sheets.SelectMany((sheet, index) => In().Matches(sheet).Select(row => row.Groups["table"].Value).Distinct()
        .Where(table => !sheet.Contains($"[head{table}]", StringComparison.Ordinal)).Select(table => (index + 1, table)));

    /// <summary>Prints the page.</summary>
    /// <param name="page">The page.</param>
    /// <param name="format">A4 or Letter.</param>
    /// <param name="signs">Whether the ends of what may not be cut are marked, which <see cref="Cut"/> and <see cref="Headless"/> need.</param>
    public static async Task<Paper> OfAsync(OpenPage page, string format, bool signs)
    {
        string info = Chromium.SkipWithout(["pdfinfo"], "poppler-utils");
        string text = Chromium.SkipWithout(["pdftotext"], "poppler-utils");
        int wholes = signs ? await page.AskAsync<int>(Signs) : 0;
        string file = Path.Combine(page.Folder, "page.pdf");
        await page.Page.PdfAsync(new() { Path = file, Format = format, PrintBackground = false });
        string[] sheets = Run(text, "-raw", file, "-").Split('\f')[..^1];
        MatchCollection sizes = Size().Matches(Run(info, "-f", "1", "-l", "9999", file));
        return new Paper([.. sheets.Select(Bare)], sizes.Select(size => (Number(size, "width"), Number(size, "height"))), wholes);
    }

    /// <summary>A text without its spaces, since a line may end anywhere.</summary>
    public static string Bare(string text) => Spaces().Replace(text, "");

    private static double Number(Match match, string name) => double.Parse(match.Groups[name].Value, CultureInfo.InvariantCulture);

    private static string Run(string program, params string[] words)
    {
        using Process run = Process.Start(new ProcessStartInfo(program, words) { RedirectStandardOutput = true, StandardOutputEncoding = System.Text.Encoding.UTF8 })!;
        string printed = run.StandardOutput.ReadToEnd();
        run.WaitForExit();
        Assert.Equal(0, run.ExitCode);
        return printed;
    }

    [GeneratedRegex(@"\[in(?<table>[0-9]+)\]")]
    private static partial Regex In();

    [GeneratedRegex(@"Page +[0-9]+ size: +(?<width>[0-9.]+) x (?<height>[0-9.]+) pts")]
    private static partial Regex Size();

    [GeneratedRegex(@"[\s\u00ad]+")]
    private static partial Regex Spaces();
}
