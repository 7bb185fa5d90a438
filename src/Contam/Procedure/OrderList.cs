using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Procedure;

/// <summary>A line of what must be ordered.</summary>
/// <param name="Item">What.</param>
/// <param name="Quantity">How many, or how many litres; 0 where the family does not say how much the circuit holds.</param>
/// <param name="Why">seal, filter, replaced part or fluid.</param>
/// <param name="Unit"><c>L</c> for a fluid, else <c>null</c>.</param>
/// <param name="Lead">How long it takes to come, or <c>null</c>.</param>
internal sealed record OrderLine(string Item, double Quantity, string Why, string? Unit, TimeSpan? Lead);

/// <summary>
/// What a procedure uses up: renewed parts, filters (with a second set for the first running hours), single-use seals of everything opened, and the fluid of
/// every opened circuit. What takes longest to come first; then in that order; then by the first part that needs it.
/// </summary>
internal static class OrderList
{
    public static ImmutableArray<OrderLine> Of(ProcedureRequest request, ProcedureDraft draft)
    {
        var lines = new List<OrderLine>();
        ImmutableArray<Part> renewed = draft.Renewed;
        lines.AddRange(Renewed(renewed.Where(part => !part.Kind.IsFilter), "replaced part", each: 1));
        lines.AddRange(Renewed(renewed.Where(part => part.Kind.IsFilter), "filter", each: 2));
        lines.AddRange(draft.Graph.Jobs.SelectMany(job => job.Seals).GroupBy(seal => seal, StringComparer.Ordinal)
            .Select(group => new OrderLine(group.Key.Replace('-', ' '), group.Count(), "seal", null, null)));
        lines.AddRange(Fluids(request.Family, draft));
        return [.. lines.OrderByDescending(line => line.Lead ?? TimeSpan.Zero)];
    }

    private static IEnumerable<OrderLine> Renewed(IEnumerable<Part> parts, string why, int each) =>
        parts.GroupBy(part => part.RepeatOf ?? part.Id.Value, StringComparer.Ordinal)
            .Select(group => new OrderLine(NameOf(group.First()), group.Count() * each, why, null, group.Max(part => part.Lead)));

    private static string NameOf(Part part)
    {
        string number = " " + part.RepeatIndex.ToString(System.Globalization.CultureInfo.InvariantCulture);
        string name = part.RepeatOf is not null && part.Name.EndsWith(number, StringComparison.Ordinal) ? part.Name[..^number.Length] : part.Name;
        return Sentences.InSentence(name);
    }

    private static IEnumerable<OrderLine> Fluids(Family family, ProcedureDraft draft)
    {
        var free = family.Fluids.Where(fluid => fluid.IsFree).Select(fluid => fluid.Id).ToHashSet(StringComparer.Ordinal);
        IEnumerable<Circuit> opened = draft.Opened.Where(circuit => circuit.Fluid is not null && !free.Contains(circuit.Fluid));
        foreach (IGrouping<string, Circuit> group in opened.GroupBy(circuit => circuit.Fluid!, StringComparer.Ordinal))
        {
            double litres = group.SelectMany(circuit => circuit.Parts).Distinct().Sum(id => family[id].Volume?.Litres ?? 0);
            string name = group.Key.Replace('-', ' ');
            yield return new OrderLine(name, Math.Round(litres, 1, MidpointRounding.AwayFromZero), "fluid", "L", null);
        }
    }
}
