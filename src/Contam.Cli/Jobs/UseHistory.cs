using System.Collections.Immutable;
using System.CommandLine;
using Contam.Diagnosis;
using Contam.Families;
using Contam.Jobs;
using Contam.Jobs.History;
using Contam.Jobs.Stores;

namespace Contam.Cli.Jobs;

/// <summary><c>--use-history</c>: looks are weighed by the shop's own counts. Without it no shop is opened, and answers are what they were.</summary>
internal sealed class UseHistory(Shell shell, OpenShops shops)
{
    private readonly Option<bool> use = new("--use-history") { Description = "weigh looks by the shop's own counts, not by the words good, fair and poor alone" };
    private readonly Option<string?> shop = JobShop.ShopOption();

    public void AddTo(Command command)
    {
        command.Options.Add(use);
        command.Options.Add(shop);
    }

    /// <summary>The counts for a family and some debris; <c>null</c> where they are not asked for.</summary>
    public LookHistory? Of(ParseResult call, Family family, ImmutableArray<Debris> debris)
    {
        if (!call.GetValue(use))
            return call.GetValue(shop) is null ? null : throw new WrongUseException("--shop says where the counts are that --use-history weighs with. Add --use-history, or leave --shop out.");
        using JobBook book = shops.Open(JobShop.PlaceOf(shell, call.GetValue(shop)), ShopUse.Read);
        return ShopHistory.CountsFor(book, family, debris);
    }

    /// <summary>The options as they were typed, to be typed again; without a password.</summary>
    public string Again(ParseResult call) =>
        call.GetValue(use) ? $" --use-history{(call.GetValue(shop) is { } typed ? $" --shop {Reports.Text.TextPage.Harmless(ShopWords.WithoutPassword(typed))}" : "")}" : "";
}
