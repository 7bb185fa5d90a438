using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Procedure;

/// <summary>A line of what is used up.</summary>
/// <param name="Item">What.</param>
/// <param name="Quantity">How much.</param>
/// <param name="Unit">The unit; <c>null</c> for pieces.</param>
internal sealed record SupplyLine(string Item, double Quantity, string? Unit);

/// <summary>What the steps of a plan take: hands, tools and supplies, gathered from the standard as the steps are written.</summary>
internal sealed class WorkNeeds(Family family, PlaceholderText fill)
{
    private readonly List<string> tools = [];
    private readonly List<(string Item, string? Unit)> items = [];
    private readonly Dictionary<(string Item, string? Unit), double> quantityOf = [];
    private readonly HashSet<Supply> once = new(ReferenceEqualityComparer.Instance);
    private readonly List<Part> heavy = [];
    private readonly Dictionary<PartId, int> openingsOf = family.Joints
        .SelectMany(joint => new[] { joint.From, joint.To })
        .GroupBy(id => id)
        .ToDictionary(group => group.Key, group => group.Count());

    /// <summary>Tools, in the order of first use.</summary>
    public ImmutableArray<string> Tools => [.. tools];

    /// <summary>Parts that more than one person handles, each once, in the order of work.</summary>
    public ImmutableArray<Part> ForTwo => [.. heavy];

    /// <summary>What is used up, in the order of first use; pieces are rounded up to whole ones, the rest to tenths.</summary>
    public ImmutableArray<SupplyLine> Supplies => [.. items.Select(item => new SupplyLine(item.Item, RoundedUp(quantityOf[item], item.Unit), item.Unit))];

    /// <summary>Counts what one step takes.</summary>
    public void Add(Needs? needs, Job job)
    {
        if (needs is null)
            return;
        foreach (string tool in needs.Tools)
        {
            if (!tools.Contains(tool))
                tools.Add(tool);
        }

        foreach (Part part in needs.Hands > 1 ? job.At : [])
        {
            if (!heavy.Contains(part))
                heavy.Add(part);
        }

        foreach (Supply supply in needs.Supplies)
            Add(supply, job);
    }

    private void Add(Supply supply, Job job)
    {
        double times = supply.Per switch
        {
            SupplyPer.Plan => once.Add(supply) ? 1 : 0,
            SupplyPer.Litre => job.At.Sum(LitresOf),
            SupplyPer.Opening => job.At.Sum(part => openingsOf.GetValueOrDefault(part.Id)),
            _ => Math.Max(1, job.At.Length),
        };
        (string, string?) item = (fill.Fill(supply.Item, job), supply.Unit);
        if (times * supply.Quantity <= 0)
            return;
        if (!quantityOf.ContainsKey(item))
            items.Add(item);
        quantityOf[item] = quantityOf.GetValueOrDefault(item) + times * supply.Quantity;
    }

    // What it holds, or what its bore holds; nothing where the family says neither.
    private static double LitresOf(Part part) => part.Volume?.Litres
        ?? (part.Bore is { } bore && part.Length is { } length ? Math.PI / 4 * bore.Metres * bore.Metres * length.Metres * 1000 : 0);

    private static double RoundedUp(double quantity, string? unit) =>
        unit is null ? Math.Ceiling(Math.Round(quantity, 6)) : Math.Ceiling(Math.Round(quantity * 10, 6)) / 10;
}
