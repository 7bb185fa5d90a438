using System.Collections.Immutable;
using Contam.Families;

namespace Contam.StopLines;

/// <summary>What any choice of looks would come to, by the same sums as the stop line.</summary>
internal sealed class ChosenLooks
{
    private readonly StopLineToday today;
    private readonly StopLineCosts costs;

    private ChosenLooks(StopLineToday today, StopLineCosts costs)
    {
        this.today = today;
        this.costs = costs;
    }

    /// <summary>For the choices of this question.</summary>
    public static ChosenLooks Of(StopLineQuestion question)
    {
        var today = StopLineToday.Of(question);
        return new ChosenLooks(today, StopLineCosts.Of(question, today));
    }

    /// <summary>Whether a clean finding at this part would count.</summary>
    public bool Counts(PartId part) => today.CanLook[today.Family.IndexOf(part)];

    /// <summary>The minutes of a look at this part.</summary>
    public double MinutesOf(PartId part) => StopLineCosts.Minutes(costs.Look(today.Family.IndexOf(part)));

    /// <summary>The minutes of these looks and of treating what they leave open, and which parts they spare, in file order. A look that does not count takes its minutes and spares nothing.</summary>
    public (double Minutes, ImmutableArray<PartId> Spared) Of(IEnumerable<PartId> looks)
    {
        int[] chosen = [.. looks.Select(today.Family.IndexOf).Distinct()];
        bool[] open = today.OpenPast(chosen.Where(look => today.CanLook[look]).ToHashSet());
        int[] treated = [.. today.Treatments.Where(one => !one.Treatments.IsEmpty).Select(one => today.Family.IndexOf(one.Part.Id))];
        int[] spared = [.. treated.Where(vertex => !today.IsTreatedAnyway(vertex) && !open[vertex])];
        long minutes = chosen.Sum(costs.Look) + treated.Except(spared).Sum(vertex => costs.Treatment[vertex]);
        return (StopLineCosts.Minutes(minutes), [.. spared.Select(vertex => today.Family.Parts[vertex].Id)]);
    }
}
