using Contam.Families;

namespace Contam.Procedure;

/// <summary>Where a look for debris stands, and which clean parts are looked at once more for wear. Common practice, no source.</summary>
internal static class LookRules
{
    /// <summary>
    /// What is looked at before anything is stripped, the nearest and cheapest first: plugs, bowls, filters, screens, then what a fluid is kept in.
    /// </summary>
    private static readonly string[][] Leading = [["magnetic-plug", "drain-plug"], ["separator"], ["filter"], ["strainer", "screen"], ["sump", "tank"]];

    /// <summary>What is measured or looked over for wear when it is clean, where no test of it follows. What a master would measure.</summary>
    private static readonly Dictionary<string, string> ConditionTexts = new(StringComparer.Ordinal)
    {
        ["bearing"] = "turn it dry and slowly, and look along every track, roller or shell for pits, blue and scores",
        ["gear"] = "look at every tooth for pits, nicks and a wandering contact mark",
        ["cylinder"] = "measure the bore across and along in three heights, and look for scores and a ridge",
        ["crankshaft"] = "measure every journal in two directions, and look for scores, blue and cracks",
        ["camshaft"] = "measure the lift of every lobe, and look for pits and flats",
        ["shaft"] = "measure its run-out, and look at splines and seal tracks for wear",
        ["pump"] = "measure its side and tip clearance, and look at its housing for grooves",
        ["compressor"] = "measure its rotor or piston clearances, and look at its valves and faces for nicks",
        ["turbocharger"] = "measure the play of its shaft, along and across, and look at every blade for nicks",
        ["injector"] = "look at its seat and its holes under a glass for pits and washed edges",
    };

    /// <summary>
    /// Whether a part can be looked at for debris before anything is stripped: nothing need be off for the look, and it is a place that one looks at first,
    /// or one that stays and is seen through a hole.
    /// </summary>
    public static bool IsBeforeStripping(WorkItem item) =>
        item.Part.Inspect is { } inspect && item.LookAccess.IsEmpty && (Rank(item.Part) < Leading.Length || (!item.ComesOff && inspect.Access is { IsEmpty: true }));

    /// <summary>Whether the look before stripping takes the part off for it, with nothing but its own fastening.</summary>
    public static bool IsTakenOffBeforeStripping(WorkItem item) =>
        item.ComesOff && !item.Part.Kind.IsReservoir && item.Has(TreatmentKind.Inspect) && item.Part.LookTakesOff && item.Part.Access.IsEmpty && IsBeforeStripping(item);

    /// <summary>The place of a kind among what is looked at first; kinds that do not lead come after all that do.</summary>
    public static int Rank(Part part)
    {
        int rank = Array.FindIndex(Leading, kinds => kinds.Contains(part.Kind.Name, StringComparer.Ordinal));
        return rank >= 0 ? rank : part.Kind.IsReservoir ? Leading.Length - 1 : part.Kind.IsFilter ? 2 : Leading.Length;
    }

    /// <summary>Whether a part that is kept and cleaned here is looked at for wear when it is clean.</summary>
    public static bool NeedsConditionLook(WorkItem item) =>
        ConditionTexts.ContainsKey(item.Part.Kind.Name)
        && !item.GoesOut
        && !item.Has(TreatmentKind.Replace) && !item.Has(TreatmentKind.Test)
        && (item.Has(TreatmentKind.Clean) || item.Has(TreatmentKind.Flush));

    /// <summary>What is done in such a look, as a clause.</summary>
    public static string ConditionText(Part part) => ConditionTexts[part.Kind.Name];
}
