using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Reports.Text;
using Contam.Support;
using Contam.Treatment.Reading;

namespace Contam.Reports.Tests.Text;

/// <summary>
/// Somebody who has only the printed text and a pencil, and does just what it says at every look, is left with the steps that the conditions of the plan ask for.
/// </summary>
public sealed partial class A_pencil_on_the_sheet
{
    public static TheoryData<string, string> Failures => new()
    {
        { "harbour-reverse-gear", "output-gear" },
        { "estuary-v6-outboard", "compressor" },
        { "harbour-diesel-i4", "injection-pump" },
        { "flat-six-dry-sump", "fuel-pump" },
        { "stern-trim-unit", "trim-pump" },
        { "dinghy-four-stroke", "cylinder-head" },
    };

    [Theory]
    [MemberData(nameof(Failures))]
    public void Leaves_just_the_steps_that_are_to_be_done_however_the_looks_come_out(string name, string failed)
    {
        (PlanDocument plan, string[] lines) = Printed(name, failed);
        var histories = new Dictionary<string, ImmutableArray<string>>(StringComparer.Ordinal);
        for (int turn = 0; turn < 300; turn++)
        {
            var chance = new Random(turn);
            double odds = turn % 3 / 2.0;
            var pencil = new Pencil(lines, () => turn < 2 ? turn == 1 : chance.NextDouble() < odds / 2 + 0.2);
            histories[pencil.History] = pencil.Done;
            ImmutableArray<string> asked = [.. AskedFor(plan, pencil.Outcomes).Select(number => number.ToString(CultureInfo.InvariantCulture))];
            Assert.Equal((pencil.History, "", ""), (pencil.History, string.Join(' ', asked.Except(pencil.Done)), string.Join(' ', pencil.Done.Except(asked))));
        }

        Assert.True(histories.Count > plan.Looks.Length);
        Assert.True(histories.Values.Select(done => string.Join(' ', done)).Distinct().Count() > plan.Looks.Length);
    }

    [Fact]
    public void Stands_at_a_look_with_what_takes_long_to_come()
    {
        (PlanDocument plan, string[] lines) = Printed("harbour-reverse-gear", "output-gear");
        PlanOrderLine late = plan.Order.First(line => line.LeadDays is not null && !line.OnlyIf.IsEmpty);

        Assert.Contains(lines, line => line.Contains($"Order at once: {late.Item} ({late.LeadDays} d)", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.StartsWith($"If {string.Join(' ', late.OnlyIf)}", StringComparison.Ordinal) && line.Contains(late.Item, StringComparison.Ordinal) && line.Contains("after the look", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, line => line.StartsWith("Order ", StringComparison.Ordinal) && line.Contains(late.Item, StringComparison.Ordinal));
    }

    [Fact]
    public void Has_nothing_to_strike_in_a_flat_plan()
    {
        string[] lines = Printed("harbour-reverse-gear", "output-gear", most: 0).Lines;

        Assert.DoesNotContain(lines, line => line.Contains("LOOK", StringComparison.Ordinal) || line.Contains("trike", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.StartsWith("[ ] 2      ", StringComparison.Ordinal));
    }

    // What was found clean is no part to be treated, and is told apart.
    [Fact]
    public void Counts_apart_what_was_cleared_beforehand()
    {
        (PlanDocument plan, string[] lines) = Printed("harbour-diesel-i4", "injection-pump", most: 0, clean: "rail");
        int cleared = plan.Parts.Count(part => part.Treatment.IsEmpty);

        Assert.True(cleared > 0);
        Assert.Contains(lines, line => line.Contains($"{plan.Parts.Length} parts can be reached, {cleared} of them cleared by what was seen, {plan.Clear} cannot", StringComparison.Ordinal));
    }

    /// <summary>The numbers of the steps that the conditions in the document ask for.</summary>
    private static IEnumerable<int> AskedFor(PlanDocument plan, Dictionary<string, bool> cameOut)
    {
        HashSet<string> found = [.. cameOut.Where(one => one.Value).Select(one => one.Key)], clean = [.. cameOut.Where(one => !one.Value).Select(one => one.Key)];
        HashSet<string> counts = [.. found, .. plan.Disproofs.Where(rule => rule.Found.All(found.Contains) && rule.Clean.All(clean.Contains)).SelectMany(rule => rule.Void.Where(clean.Contains))];
        for (int before = -1; before != counts.Count;)
        {
            before = counts.Count;
            counts.UnionWith(plan.Looks.Where(look => !cameOut.ContainsKey(look.Id) && (look.OnlyIf.IsEmpty || look.OnlyIf.Any(counts.Contains))).Select(look => look.Id));
        }

        return plan.Steps.Where(step => (step.OnlyIf.IsEmpty || step.OnlyIf.Any(counts.Contains)) && !step.Unless.Any(counts.Contains)).Select(step => step.Number);
    }

    private static (PlanDocument Plan, string[] Lines) Printed(string name, string failed, int most = HowFar.MostLooks, string? clean = null)
    {
        Catalogue catalogue = BuiltInStandards.HouseOverKinds.CatalogueOf();
        Family family = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), catalogue).Value!;
        Debris metal = catalogue.Debris.Single(one => one.Name == "metal");
        var request = new PlanRequest(family, BuiltInStandards.HouseOverKinds, [new PartId(failed)], [metal])
        {
            MostLooks = most,
            Findings = clean is null ? [] : [new Finding(new PartId(clean), metal, Found: false)],
        };
        PlanDocument plan = Planner.Plan(request);
        using var text = new StringWriter();
        // So wide that nothing is folded.
        PlanText.Write(plan, family, text, new TextLook(100_000, HasColour: false));
        return (plan, text.ToString().Split('\n'));
    }

    /// <summary>Reads the lines from top to bottom once, makes the looks, strikes and opens; then says what is left.</summary>
    private sealed class Pencil
    {
        private readonly HashSet<string> struck = new(StringComparer.Ordinal);
        private readonly HashSet<string> circled = new(StringComparer.Ordinal);
        private readonly Dictionary<string, string[]> struckFor = new(StringComparer.Ordinal);

        public Pencil(string[] lines, Func<bool> finds)
        {
            var steps = new List<(string[] Any, string[] Not, int[] Numbers)>();
            var fallen = new List<(string Look, string[] Any)>();
            string? made = null;
            for (int at = Array.IndexOf(lines, "MAKE SAFE"); lines[at] != "WHAT THE DEBRIS REACHED"; at++)
            {
                string line = lines[at];
                if (Step().Match(line) is { Success: true } step)
                {
                    (string[] any, string[] not) = (Letters(step.Groups["any"].Value), Letters(step.Groups["not"].Value));
                    int[] numbers = step.Groups["number"].Success ? [int.Parse(step.Groups["number"].Value, null)] : [.. Box().Matches(lines[at + 1]).Select(box => int.Parse(box.Groups["number"].Value, null))];
                    steps.Add((any, not, numbers));
                    made = step.Groups["look"].Success && IsLeft(any) ? step.Groups["look"].Value : null;
                    if (made is not null)
                        Outcomes.Add(made, finds());
                    else if (step.Groups["look"].Success)
                        fallen.Add((step.Groups["look"].Value, any));
                }
                else if (made is not null && !Outcomes[made] && Clean().Match(line) is { Success: true } clean)
                {
                    struckFor[made] = Letters(clean.Groups["letters"].Value);
                    if (!circled.Contains(made))
                        struck.UnionWith(struckFor[made].Except(circled));
                }
                else if (made is not null && Outcomes[made] && Against().Match(line) is { Success: true } against)
                {
                    string[] named = Letters(against.Groups["clean"].Value);
                    bool isSo = against.Groups["clean"].Value.Contains(" and ", StringComparison.Ordinal) ? named.All(WasClean) : named.Any(WasClean);
                    foreach (string letter in isSo ? Letters(against.Groups["void"].Value) : [])
                    {
                        circled.Add(letter);
                        struck.ExceptWith(struckFor.GetValueOrDefault(letter, []));
                    }
                }

                foreach ((string look, string[] any) in fallen)
                {
                    if (IsLeft(any))
                        struck.Remove(look);
                    else
                        struck.Add(look);
                }
            }

            Done = [.. steps.Where(step => IsLeft(step.Any) && !step.Not.Any(letter => !struck.Contains(letter))).SelectMany(step => step.Numbers).Order().Select(number => number.ToString(CultureInfo.InvariantCulture))];
        }

        public Dictionary<string, bool> Outcomes { get; } = new(StringComparer.Ordinal);

        public ImmutableArray<string> Done { get; }

        public string History => string.Join(", ", Outcomes.Select(one => one.Key + (one.Value ? " found" : " clean")));

        private bool WasClean(string letter) => Outcomes.TryGetValue(letter, out bool found) && !found;

        private bool IsLeft(string[] any) => any.Length == 0 || any.Any(letter => !struck.Contains(letter));

        private static string[] Letters(string text) => [.. Letter().Matches(text).Select(letter => letter.Value)];
    }

    [GeneratedRegex(@"^(?:\[ \] (?<number>\d+)\*?|    \d+[–…]\S*) +(?:(?<any>[A-P](?: [A-P])*)?(?: ?not (?<not>[A-P](?: [A-P])*))?  +)?(?:LOOK (?<look>[A-P]))?")]
    private static partial Regex Step();

    [GeneratedRegex(@"\[ \] (?<number>\d+)")]
    private static partial Regex Box();

    [GeneratedRegex(@"^ +\[ \] clean: strike (?<letters>[^.]+)\.")]
    private static partial Regex Clean();

    [GeneratedRegex(@"although (?<clean>.+?) (?:was|were) clean: a look has missed it\. Circle (?<void>[^.]+)\.")]
    private static partial Regex Against();

    [GeneratedRegex(@"\b[A-P]\b")]
    private static partial Regex Letter();
}
