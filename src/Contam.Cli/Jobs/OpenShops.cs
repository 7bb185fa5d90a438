using Contam.Hosting;
using Contam.Jobs;
using Contam.Jobs.Stores;

namespace Contam.Cli.Jobs;

/// <summary>Opens the shop that a call names. A server that is slow to answer is said so, so that nobody sits before a dark screen.</summary>
internal sealed class OpenShops(Shell shell, IJobBooks books)
{
    /// <summary>The book at a place.</summary>
    /// <exception cref="ShopException">It cannot be used.</exception>
    public JobBook Open(string place, ShopUse use)
    {
        if (!place.Contains("://", StringComparison.Ordinal))
            return books.Open(place, use);
        string words = Reports.Text.TextPage.Harmless(ShopWords.WithoutPassword(place));
        using ITimer slow = shell.Clock.CreateTimer(_ => shell.Error.Write($"contam: waiting for {words} …\n"), null, TimeSpan.FromSeconds(1.5), Timeout.InfiniteTimeSpan);
        return books.Open(place, use);
    }
}
