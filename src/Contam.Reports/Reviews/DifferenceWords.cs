using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Reports.Text;
using Contam.Reviews;

namespace Contam.Reports.Reviews;

/// <summary>What changed between two families, in words.</summary>
public static class DifferenceWords
{
    private const int MostNames = 8;

    /// <summary>The change, a line each without a full stop: parts, joints, what else, and what failures now reach more or less. Empty where nothing differs.</summary>
    /// <param name="difference">The difference.</param>
    /// <param name="before">The earlier family.</param>
    /// <param name="after">The later family.</param>
    public static ImmutableArray<string> Of(FamilyDifference difference, Family before, Family after)
    {
        ArgumentNullException.ThrowIfNull(difference);
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        return [.. Described(difference, before, after), .. Reached(difference, before, after)];
    }

    /// <summary>The same without what failures reach: parts, joints, and what else.</summary>
    public static ImmutableArray<string> OfDescription(FamilyDifference difference, Family before, Family after)
    {
        ArgumentNullException.ThrowIfNull(difference);
        return [.. Described(difference, before, after)];
    }

    /// <summary>A joint: <c>return hose > tank (oil)</c>, with what it waits for and lets on.</summary>
    public static string Joint(Joint joint, Family family)
    {
        ArgumentNullException.ThrowIfNull(joint);
        ArgumentNullException.ThrowIfNull(family);
        var names = new Names(family);
        string[] notes = [joint.Circuit, .. JointWords.Waits(joint.OnlyIfFailed is { } failed ? names.InSentence(failed.Value) : null, joint.When, family.States), .. JointWords.LetsOn(joint, TextLook.Plain)];
        return $"{names.InSentence(joint.From.Value)} > {names.InSentence(joint.To.Value)} ({string.Join(", ", notes)})";
    }

    private static IEnumerable<string> Described(FamilyDifference difference, Family before, Family after)
    {
        if (!difference.PartsAdded.IsEmpty)
            yield return $"{(difference.PartsAdded.Length == 1 ? "part" : "parts")} added: {Folded(difference.PartsAdded, after, int.MaxValue)}";
        if (!difference.PartsGone.IsEmpty)
            yield return $"{(difference.PartsGone.Length == 1 ? "part" : "parts")} gone: {Folded(difference.PartsGone, before, int.MaxValue)}";
        foreach (Joint joint in difference.JointsAdded)
            yield return $"joint added: {Joint(joint, after)}";
        foreach (Joint joint in difference.JointsGone)
            yield return $"joint gone: {Joint(joint, before)}";
        foreach (IGrouping<(string Key, string Before, string After), PartChange> alike in difference.PartsChanged.GroupBy(change => (change.Key, change.Before, change.After)))
            yield return $"{Folded(alike.Select(change => change.Part), after, int.MaxValue)}: {alike.Key.Key} {Said(alike.Key.Before)}, now {Said(alike.Key.After)}";
        if (!difference.Else.IsEmpty)
            yield return $"said otherwise: {string.Join(", ", difference.Else)}";
    }

    private static IEnumerable<string> Reached(FamilyDifference difference, Family before, Family after)
    {
        if (!difference.ReachIsCompared)
            yield return "what failures reach is not compared: the family is too large for it";
        foreach (IGrouping<string, (ReachChange Change, string Words)> alike in difference.Reach.Select(change => (Change: change, Words: Words(change, before, after))).GroupBy(one => $"{one.Change.Debris.Name} {one.Words}", StringComparer.Ordinal))
            yield return $"a failure of {Folded(alike.Select(one => one.Change.Failed), after, MostNames)} ({alike.First().Change.Debris.Name}) now {alike.First().Words}";
    }

    private static string Words(ReachChange change, Family before, Family after)
    {
        var words = new List<string>();
        if (!change.More.IsEmpty)
            words.Add($"reaches {Count(change.More.Length)} more: {Folded(change.More, after, MostNames)}");
        if (!change.Less.IsEmpty)
            words.Add($"reaches {Count(change.Less.Length)} less: {Folded(change.Less, before, MostNames)}");
        if (!change.AtFullSize.IsEmpty)
            words.Add($"reaches {Count(change.AtFullSize.Length)} at full size, not past a barrier: {Folded(change.AtFullSize, after, MostNames)}");
        if (!change.HeldBack.IsEmpty)
            words.Add($"reaches {Count(change.HeldBack.Length)} only past a barrier: {Folded(change.HeldBack, after, MostNames)}");
        return string.Join("; ", words);
    }

    private static string Count(int parts) => string.Create(CultureInfo.InvariantCulture, $"{parts} {(parts == 1 ? "part" : "parts")}");

    private static string Said(string text) => text.Length == 0 ? "not said" : $"\u201c{text}\u201d";

    /// <summary>Names, neighbours of one repeat folded; beyond a number only how many more there are.</summary>
    internal static string Folded(IEnumerable<PartId> parts, Family family, int most)
    {
        var names = new Names(family);
        List<List<string>> groups = RepeatFolding.Fold(parts.Select(part => part.Value), names.NumberOf, names.RepeatOf);
        string shown = string.Join(", ", groups.Take(most).Select(group => names.Folded(group)));
        int left = groups.Skip(most).Sum(group => group.Count);
        return left == 0 ? shown : string.Create(CultureInfo.InvariantCulture, $"{shown} and {left} more");
    }
}
