using Contam.Families;

namespace Contam.Procedure;

/// <summary>Where a look for debris stands, and which clean parts may be looked at once more for wear. Common practice, no source.</summary>
internal static class LookRules
{
    /// <summary>
    /// What is looked at before anything is stripped, the nearest and cheapest first: plugs, bowls, filters, screens, then what a fluid is kept in.
    /// </summary>
    private static readonly string[][] Leading = [["magnetic-plug", "drain-plug"], ["separator"], ["filter"], ["strainer", "screen"], ["sump", "tank"]];

    /// <summary>
    /// Whether a part can be looked at for debris before anything is stripped: nothing need be off for the look, and it is a place that one looks at first,
    /// or one that stays and is seen through a hole.
    /// </summary>
    public static bool IsBeforeStripping(WorkItem item) =>
        item.Part.Inspect is { } inspect && item.LookAccess.IsEmpty && (Leads(item.Part) || (item.IsLookedAtInPlace && inspect.Access is { IsEmpty: true }));

    /// <summary>Whether the look before stripping takes the part off for it, with nothing but its own fastening.</summary>
    public static bool IsTakenOffBeforeStripping(WorkItem item) =>
        item.ComesOff && !item.Part.Kind.IsReservoir && item.Has(TreatmentKind.Inspect) && item.Part.LookTakesOff && item.Part.Access.IsEmpty && IsBeforeStripping(item);

    /// <summary>Whether a part is a place that one looks at first: debris settles or is caught there.</summary>
    public static bool Leads(Part part) => Rank(part) < Leading.Length;

    /// <summary>Whether debris of a circuit comes to rest in a part: a place that one looks at first, or a housing with a bath in it.</summary>
    public static bool Gathers(Part part) => Leads(part) || (part.Kind.Name == "housing" && part.Volume is not null);

    /// <summary>The place of a kind among what is looked at first; kinds that do not lead come after all that do.</summary>
    public static int Rank(Part part)
    {
        int rank = Array.FindIndex(Leading, kinds => kinds.Contains(part.Kind.Name, StringComparer.Ordinal));
        return rank >= 0 ? rank : part.Kind.IsReservoir ? Leading.Length - 1 : part.Kind.IsFilter ? 2 : Leading.Length;
    }

    /// <summary>Whether a part is kept and cleaned here and not tested, so that it is worth a look for wear when it is clean.</summary>
    public static bool MayNeedConditionLook(WorkItem item) =>
        !item.GoesOut
        && !item.Has(TreatmentKind.Replace) && !item.Has(TreatmentKind.Test)
        && (item.Has(TreatmentKind.Clean) || item.Has(TreatmentKind.Flush));
}
