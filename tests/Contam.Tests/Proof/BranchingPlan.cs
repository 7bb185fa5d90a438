using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Tests.Proof;

/// <summary>
/// Plans with looks written by hand: <see cref="BenchPlan"/>, with <c>onlyif</c> and <c>unless</c> behind a step (<c>A+B</c>), looks and the conditions of parts.
/// Each part asks, for every debris and grade, for the treatment that it lists. Each step waits for all before it.
/// </summary>
internal static class BranchingPlan
{
    /// <summary>A plan.</summary>
    /// <param name="family">The family.</param>
    /// <param name="failed">The failed parts.</param>
    /// <param name="looks">A look to a line: <c>A screen+port step [onlyif]</c>.</param>
    /// <param name="hanging">Which part hangs on which looks: <c>tank A+B</c>; what is not said hangs on none.</param>
    /// <param name="parts">See <see cref="BenchPlan"/>.</param>
    /// <param name="steps">See <see cref="BenchPlan"/>.</param>
    internal static PlanDocument Of(Family family, string failed, string looks, string hanging, string parts, string steps)
    {
        string[][] lines = [.. Lines(steps)];
        PlanDocument plan = BenchPlan.Of(family, failed, parts, string.Join('\n', lines.Select(words => string.Join(' ', words.Where(word => !IsCondition(word))))));
        var on = Lines(hanging).ToDictionary(words => words[0], words => Letters(words[1]));
        return plan with
        {
            Looks =
            [
                .. Lines(looks).Select(words => new PlanLook
                {
                    Id = words[0],
                    Places = [.. words[1].Split('+')],
                    Debris = plan.Debris,
                    Step = int.Parse(words[2], System.Globalization.CultureInfo.InvariantCulture),
                    OnlyIf = words.Length > 3 ? Letters(words[3]) : [],
                }),
            ],
            Parts = [.. plan.Parts.Select(part => part with { OnlyIf = on.GetValueOrDefault(part.Id, []), Asks = [.. AsksOf(plan, part)], ClearedBy = WordOf(family.Find(new PartId(part.Id))) })],
            Steps =
            [
                .. plan.Steps.Zip(lines, (step, words) => step with
                {
                    OnlyIf = Said(words, "onlyif="),
                    Unless = Said(words, "unless="),
                    After = [.. Enumerable.Range(1, step.Number - 1)],
                }),
            ],
        };
    }

    private static IEnumerable<PlanAsk> AsksOf(PlanDocument plan, PlanPart part) =>
        from debris in plan.Debris
        from grade in new[] { Grade.Exposed, Grade.Guarded }
        where !part.Treatment.IsEmpty
        select new PlanAsk(debris, grade, part.Treatment, new PlanRule("shop.yaml", 1, "so it is done here"));

    private static string WordOf(Part? part) => part?.ClearedBy switch
    {
        ClearedBy.Nothing => "nothing",
        ClearedBy.TwoLooks => "two-looks",
        _ => "one-look",
    };

    private static bool IsCondition(string word) => word.StartsWith("onlyif=", StringComparison.Ordinal) || word.StartsWith("unless=", StringComparison.Ordinal);

    private static ImmutableArray<string> Said(string[] words, string key) =>
        words.FirstOrDefault(word => word.StartsWith(key, StringComparison.Ordinal)) is { } said ? Letters(said[key.Length..]) : [];

    private static ImmutableArray<string> Letters(string text) => [.. text.Split('+', StringSplitOptions.RemoveEmptyEntries)];

    private static IEnumerable<string[]> Lines(string text) =>
        text.Split(['\n', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
