using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Procedure;

/// <summary>A line of what must be ordered.</summary>
/// <param name="Item">What.</param>
/// <param name="Quantity">How many, or how many litres; 0 where the family does not say how much the circuit holds.</param>
/// <param name="Why">seal, filter, replaced part or fluid.</param>
/// <param name="Unit"><c>L</c> for a fluid, else <c>null</c>.</param>
/// <param name="Lead">How long it takes to come, or <c>null</c>.</param>
internal sealed record OrderLine(string Item, double Quantity, string Why, string? Unit, TimeSpan? Lead)
{
    /// <summary>When it is needed.</summary>
    public LookCondition When { get; init; } = LookCondition.Always;
}

/// <summary>
/// What a procedure uses up: renewed parts, filters (with a second set for the first running hours), single-use seals of everything opened, and the fluid of
/// every opened circuit. What takes longest to come first; then in that order; then by the first part that needs it.
/// </summary>
internal static class OrderList
{
    public static ImmutableArray<OrderLine> Of(ProcedureRequest request, ProcedureDraft draft)
    {
        var lines = new List<OrderLine>();
        lines.AddRange(Renewed(draft.Renewed.Where(one => !one.Part.Kind.IsFilter), "replaced part", each: 1));
        lines.AddRange(Renewed(draft.Renewed.Where(one => one.Part.Kind.IsFilter), "filter", each: 2));
        lines.AddRange(draft.Graph.Jobs.SelectMany(job => job.Seals.Select(seal => (Seal: seal, When: job.Condition))).GroupBy(one => one)
            .Select(group => new OrderLine(group.Key.Seal.Replace('-', ' '), group.Count(), "seal", null, null) { When = group.Key.When }));
        lines.AddRange(Fluids(request.Family, draft));
        return [.. lines.OrderByDescending(line => line.Lead ?? TimeSpan.Zero)];
    }

    private static IEnumerable<OrderLine> Renewed(IEnumerable<(Part Part, LookCondition When)> parts, string why, int each) =>
        parts.GroupBy(one => (one.Part.RepeatOf ?? one.Part.Id.Value, one.When))
            .Select(group => new OrderLine(NameOf(group.First().Part), group.Count() * each, why, null, group.Max(one => one.Part.Lead)) { When = group.Key.When });

    private static string NameOf(Part part)
    {
        string number = " " + part.RepeatIndex.ToString(System.Globalization.CultureInfo.InvariantCulture);
        string name = part.RepeatOf is not null && part.Name.EndsWith(number, StringComparison.Ordinal) ? part.Name[..^number.Length] : part.Name;
        return Sentences.InSentence(name);
    }

    private static IEnumerable<OrderLine> Fluids(Family family, ProcedureDraft draft)
    {
        var free = family.Fluids.Where(fluid => fluid.IsFree).Select(fluid => fluid.Id).ToHashSet(StringComparer.Ordinal);
        var opened = draft.Opened.Where(one => one.Circuit.Fluid is not null && !free.Contains(one.Circuit.Fluid));
        var counted = new HashSet<PartId>();
        foreach (var group in opened.OrderBy(one => one.When.IsAlways ? 0 : 1).GroupBy(one => (one.Circuit.Fluid, one.When)))
        {
            double litres = group.SelectMany(one => one.Circuit.Parts).Where(counted.Add).Sum(id => family[id].Volume?.Litres ?? 0);
            string name = group.Key.Fluid!.Replace('-', ' ');
            yield return new OrderLine(name, Math.Round(litres, 1, MidpointRounding.AwayFromZero), "fluid", "L", null) { When = group.Key.When };
        }
    }
}
