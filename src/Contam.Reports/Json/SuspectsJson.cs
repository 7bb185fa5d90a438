using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Contam.Diagnosis;
using Contam.Reports.Text;

namespace Contam.Reports.Json;

/// <summary>Where debris could be coming from and where to look, as JSON: the contract <c>contam-suspects/1</c>.</summary>
public static class SuspectsJson
{
    /// <summary>The answer as JSON, closed by a newline. Shares have nine digits behind the point, bits six, so that every machine writes the same.</summary>
    public static string Write(SuspectAnswer answer, LookingPlan plan)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(plan);
        var names = new Names(answer.Question.Family);
        return ReportJson.Write(
            new SuspectsAnswer(
                "contam-suspects/1",
                answer.Question.Debris.Name,
                [.. answer.Suspects.Select(suspect => new SuspectEntry(suspect.Part.Value, Share(suspect.Share), [.. SuspectWords.Reasons(suspect, answer.Question, names, TextLook.Plain)]))],
                [.. answer.Together.Select(set => set.Select(part => part.Value).ToImmutableArray())],
                answer.TogetherIsComplete,
                answer.TogetherIsSmallest,
                [.. answer.Unexplained.Select(finding => finding.Part.Value)],
                [.. answer.Contradictions.Select(one => new SuspectContradictionEntry(one.Find.Part.Value, [.. one.Clean.Select(part => part.Value)]))],
                [.. Looking.Next(answer).Select(look => new NextLookEntry(look.Part.Value, look.Minutes, Bits(look.Bits), look.BitsPerMinute is { } rate ? Bits(rate) : null, Share(look.ChanceFound)))],
                new LookingPlanEntry(plan.IsExact ? "exact" : "greedy", plan.Sure, plan.ExpectedMinutes is { } minutes ? Bits(minutes) : null, plan.Places, Node(plan.Root)),
                LookHistoryEntry.Of(answer.Question.History, answer.Question.Family)),
            ReportJson.Context.SuspectsAnswer);
    }

    // As deep as the tree, which has 40 looks at most.
    private static LookingNodeEntry Node(LookingNode node) => new(
        Share(node.Chance),
        [.. node.Leaders.Select(part => part.Value)],
        Share(node.LeaderShare),
        node.Look is { } look ? new LookEntry(look.Part.Value, look.Minutes) : null,
        node.Found is { } found ? Node(found) : null,
        node.Clean is { } clean ? Node(clean) : null,
        node.End switch
        {
            null => null,
            LookingEnd.Sure => "sure",
            LookingEnd.GoesOn => "goes-on",
            _ => "nothing-tells",
        });

    private static double Share(double share) => Math.Round(share, 9);

    private static double Bits(double bits) => Math.Round(bits, 6);
}

internal sealed record SuspectsAnswer(
    string Format,
    string Debris,
    ImmutableArray<SuspectEntry> Suspects,
    ImmutableArray<ImmutableArray<string>> Together,
    bool TogetherComplete,
    bool TogetherSmallest,
    ImmutableArray<string> Unexplained,
    ImmutableArray<SuspectContradictionEntry> Contradictions,
    ImmutableArray<NextLookEntry> NextLooks,
    LookingPlanEntry LookingPlan,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] LookHistoryEntry? History);

internal sealed record SuspectContradictionEntry(string Found, ImmutableArray<string> Clean);

internal sealed record SuspectEntry(string Part, double Share, ImmutableArray<string> Because);

internal sealed record NextLookEntry(string Part, double Minutes, double Bits, double? BitsPerMinute, double ChanceFound);

internal sealed record LookingPlanEntry(string Method, double Sure, double? ExpectedMinutes, int Places, LookingNodeEntry Tree);

internal sealed record LookingNodeEntry(double Chance, ImmutableArray<string> Leaders, double Share, LookEntry? Look, LookingNodeEntry? Found, LookingNodeEntry? Clean, string? End);

internal sealed record LookEntry(string Part, double Minutes);
