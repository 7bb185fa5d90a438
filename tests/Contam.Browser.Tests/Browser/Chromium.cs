using System.Diagnostics;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Contam.Browser.Tests.Browser.Chromium))]

namespace Contam.Browser.Tests.Browser;

/// <summary>
/// The machine's own Chromium, without a window, begun once for all tests. Where there is none a test is skipped and says why; where <c>CI=true</c> it
/// fails instead. No browser is ever fetched.
/// </summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

    private readonly Lazy<Task<IBrowser>> browser;
    private IPlaywright? playwright;

    public Chromium() => browser = new(StartAsync);

    /// <summary>Opens a page of ours as a person would who double-clicks on its file.</summary>
    public Task<OpenPage> OpenAsync(string html, int width = 1280, bool script = true) => OpenAsync(html, new BrowserNewContextOptions { ViewportSize = new() { Width = width, Height = 800 }, JavaScriptEnabled = script });

    public async Task<OpenPage> OpenAsync(string html, BrowserNewContextOptions options)
    {
        SkipWithout(Names, "chromium");
        return await OpenPage.OfAsync(await browser.Value, html, options);
    }

    /// <summary>Where one of these programs is; the test ends here where there is none.</summary>
    public static string SkipWithout(IEnumerable<string> names, string package)
    {
        string[] folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries);
        string[] files = [.. names.SelectMany(name => folders.Select(folder => Path.Combine(folder, OperatingSystem.IsWindows() ? name + ".exe" : name)))];
        if (files.FirstOrDefault(File.Exists) is { } found)
            return found;
        string why = $"{package} is not installed";
        if (Environment.GetEnvironmentVariable("CI") == "true")
            Assert.Fail($"CI must not skip this test: {why}");
        Assert.Skip(why);
        throw new UnreachableException();
    }

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public async ValueTask DisposeAsync()
    {
        if (browser.IsValueCreated && browser.Value.IsCompletedSuccessfully)
            await browser.Value.Result.DisposeAsync();
        playwright?.Dispose();
    }

    private async Task<IBrowser> StartAsync()
    {
        Environment.SetEnvironmentVariable("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1");
        playwright = await Playwright.CreateAsync();
        return await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = SkipWithout(Names, "chromium"),
            Headless = true,
            // Root may not have the sandbox; nothing but our own files is opened.
            Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }
}
