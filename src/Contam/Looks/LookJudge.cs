using System.Collections.Immutable;
using Contam.Families;
using Contam.Spread;

namespace Contam.Looks;

/// <summary>
/// Where a look may decide: where a clean finding of every debris asked about would count, by the judge that the spread goes by, nothing was found
/// beforehand that would speak against it, not everything is on record as clean already, and some of the debris gets to.
/// </summary>
internal sealed class LookJudge
{
    private readonly LookQuestion question;
    private readonly ImmutableArray<DebrisWays> ways;
    private readonly Dictionary<PartId, string> whyNot = [];

    public LookJudge(LookQuestion question, ImmutableArray<DebrisWays> ways)
    {
        this.question = question;
        this.ways = ways;
        foreach (Debris debris in question.Debris)
        {
            SpreadQuestion asked = question.SpreadOf(debris);
            // What is on record as clean stands here as well, so that a record that does not count does not speak for a look that would not either.
            SpreadQuestion tried = asked with
            {
                Findings = [.. asked.Findings.Where(finding => finding.Found), .. asked.Family.Parts.Select(part => new Finding(part.Id, debris, Found: false))],
            };
            foreach (JudgedFinding judged in CleanFindingJudge.Judge(tried, contradictions: null))
            {
                if (judged.NotAcceptedBecause is { } because)
                    whyNot.TryAdd(judged.Finding.Part, because);
            }
        }
    }

    /// <summary>Why a look at this part would decide nothing, in words that follow a "because"; <c>null</c> where it may decide.</summary>
    /// <exception cref="KeyNotFoundException">The family has no such part.</exception>
    public string? WhyNot(PartId part)
    {
        _ = question.Family[part];
        int vertex = question.Family.IndexOf(part);
        if (question.Family[part].Assembly is { } whole)
            return $"it is inside of {whole}, which is renewed whole";
        if (whyNot.TryGetValue(part, out string? because))
            return because;
        if (!ways.Any(one => one.IsReached[vertex]))
            return "none of the debris gets there";
        if (ways.Where(one => one.IsReached[vertex]).All(one => one.SaidClean.Contains(vertex)))
            return "it is on record as clean";
        return ways.Any(one => Voiding.Of(one, new HashSet<int>([.. one.SaidClean, vertex]), one.Found.ToHashSet()).Contains(vertex)) ? "what was found elsewhere would speak against a clean look there" : null;
    }
}
