using System.Collections.Immutable;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>
/// Finds circles in what parts say of each other that leave no order to take them off and put them on.
/// <para>
/// A part waits to come off for what is in its way (<c>access</c>), for what stands on it (<c>stands-on</c>), and for what it rides on (<c>rides-on</c>):
/// going on is the same the other way round. In a circle of these none could come off first. <c>assembly</c> gives no order by itself, as what is inside a part
/// may be taken out before or after; but a part cannot be carried (<c>stands-on</c>, <c>rides-on</c>, <c>assembly</c>) by what it carries.
/// </para>
/// </summary>
internal static class OrderCircles
{
    /// <summary>
    /// Raises a problem for circles, each named whole. Every part is looked into once for each of the two orders; a circle that the same line makes for every
    /// number of a repeated part is told once. Cost: parts and what they name.
    /// </summary>
    public static void Raise(ImmutableArray<Part> parts, ProblemList problems)
    {
        bool hasAccess = parts.Any(part => !part.Access.IsEmpty);
        bool isCarried = parts.Any(part => part.RidesOn is not null || part.Assembly is not null || !part.StandsOn.IsEmpty);
        if (!hasAccess && !isCarried)
            return;
        var told = new HashSet<SourceSpan>();
        CircleSearch.Raise(parts, WaitsFor(parts), told, (place, circle, others) => problems.Add(CircleProblems.Order(place, circle, others)));
        if (isCarried)
            CircleSearch.Raise(parts, CarriedBy(parts), told, (place, circle, others) => problems.Add(CircleProblems.Carriers(place, circle, others)));
    }

    private static TieTable WaitsFor(ImmutableArray<Part> parts)
    {
        var table = new TieTable(parts);
        for (int part = 0; part < parts.Length; part++)
        {
            foreach (PartId inTheWay in parts[part].Access)
                table.Add(part, inTheWay, Tie.Access);
            foreach (PartId below in parts[part].StandsOn)
                table.AddBack(below, part, Tie.Carries);
            if (parts[part].RidesOn is PartId carrier)
                table.Add(part, carrier, Tie.RidesOn);
        }

        return table;
    }

    private static TieTable CarriedBy(ImmutableArray<Part> parts)
    {
        var table = new TieTable(parts);
        for (int part = 0; part < parts.Length; part++)
        {
            foreach (PartId below in parts[part].StandsOn)
                table.Add(part, below, Tie.StandsOn);
            if (parts[part].RidesOn is PartId carrier)
                table.Add(part, carrier, Tie.RidesOn);
            if (parts[part].Assembly is PartId whole)
                table.Add(part, whole, Tie.Assembly);
        }

        return table;
    }
}
