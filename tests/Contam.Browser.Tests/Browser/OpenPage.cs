using Microsoft.Playwright;

namespace Contam.Browser.Tests.Browser;

/// <summary>A page of ours in the browser, as a file in a folder of its own that goes again, with what it asked for and what it complained of.</summary>
public sealed class OpenPage : IAsyncDisposable
{
    private readonly DirectoryInfo folder;
    private readonly IBrowserContext context;
    private readonly List<string> asked = [];
    private readonly List<string> complaints = [];
    private readonly List<string> said = [];

    private OpenPage(DirectoryInfo folder, IBrowserContext context)
    {
        this.folder = folder;
        this.context = context;
    }

    public IPage Page { get; private set; } = null!;

    /// <summary>The folder that the file stands in; whatever is laid there goes with it.</summary>
    public string Folder => folder.FullName;

    /// <summary>Everything that was asked for but the file itself. None of it was given.</summary>
    public IReadOnlyList<string> Asked => asked;

    /// <summary>Errors and warnings on the console, and faults that nobody caught.</summary>
    public IReadOnlyList<string> Complaints => complaints;

    /// <summary>What a dialog said; each is answered with yes.</summary>
    public IReadOnlyList<string> Said => said;

    internal static async Task<OpenPage> OfAsync(IBrowser browser, string html, BrowserNewContextOptions options)
    {
        var opened = new OpenPage(Directory.CreateTempSubdirectory("contam"), await browser.NewContextAsync(options));
        string file = Path.Combine(opened.folder.FullName, "page.html");
        File.WriteAllText(file, html);
        string address = new Uri(file).AbsoluteUri;
        await opened.context.RouteAsync("**/*", route =>
        {
            string url = route.Request.Url.Split('#')[0];
            if (url == address)
                return route.ContinueAsync();
            opened.asked.Add(url);
            return route.AbortAsync();
        });
        opened.Page = await opened.context.NewPageAsync();
        opened.Page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
                opened.complaints.Add(message.Text);
        };
        opened.Page.PageError += (_, fault) => opened.complaints.Add(fault);
        opened.Page.Dialog += (_, dialog) =>
        {
            opened.said.Add(dialog.Message);
            _ = dialog.AcceptAsync();
        };
        await opened.Page.GotoAsync(address);
        return opened;
    }

    /// <summary>What the browser answers to this expression.</summary>
    public Task<T> AskAsync<T>(string expression) => Page.EvaluateAsync<T>(expression);

    public async ValueTask DisposeAsync()
    {
        await context.DisposeAsync();
        folder.Delete(recursive: true);
    }
}
