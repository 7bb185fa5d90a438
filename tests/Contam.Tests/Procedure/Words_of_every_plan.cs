using System.Text.RegularExpressions;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Support;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Procedure;

/// <summary>The plans of the shipped families as they are read: short steps, nothing said twice, words of the machine that it is.</summary>
public sealed partial class Words_of_every_plan
{
    private const int EachPart = 6;

    // Twenty is the aim; lines that stand for several like parts name them all, and the longest family comes to 22.
    private const int MostOfNineSteps = 22;

    private static readonly ShopStandard House = BuiltInStandards.HouseOverKinds;

    public static TheoryData<string> Families =>
        [.. Directory.GetFiles(RepositoryFiles.At("systems/families"), "*.yaml").Order(StringComparer.Ordinal).Select(file => Path.GetFileNameWithoutExtension(file)!)];

    [Theory]
    [MemberData(nameof(Families))]
    public void Nine_steps_of_ten_are_short(string name)
    {
        int[] words = [.. Plans(name).SelectMany(plan => plan.Steps).Select(step => WritingRules.Words(step.Text)).Order()];
        Assert.NotEmpty(words);
        Assert.InRange(words[words.Length * 9 / 10], 1, MostOfNineSteps);
    }

    /// <summary>What a family's own file says (how a look is done, limits, names) is not the standard's; lists of parts and figures are not sentences.</summary>
    [Theory]
    [MemberData(nameof(Families))]
    public void No_sentence_is_long(string name)
    {
        string[] tooLong =
        [
            .. Plans(name).SelectMany(plan => plan.Methods.Select(method => method.Text).Concat(plan.Steps.Where(step => step.Parts.Length < 2 && step.Action is not (StepAction.Note or StepAction.Inspect)).Select(step => step.Text)))
                .SelectMany(WritingRules.Sentences)
                .Where(sentence => WritingRules.Words(sentence) > WritingRules.MostInProcedure)
                .Distinct(),
        ];
        Assert.Equal([], tooLong);
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void At_most_a_tenth_of_the_words_was_said_before(string name)
    {
        foreach (PlanDocument plan in Plans(name))
        {
            (int all, int repeated) = Repeated(plan);
            Assert.True(repeated * 10 <= all, $"{plan.Failed[0].Part} {plan.Debris[0]}: {repeated} of {all} words");
        }
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void A_method_is_said_once(string name)
    {
        foreach (PlanDocument plan in Plans(name))
        {
            Assert.Equal(plan.Methods.Select(method => method.Text).Distinct(), plan.Methods.Select(method => method.Text));
            Assert.Equal(Enumerable.Range(1, plan.Methods.Length).Select(number => $"M{number}"), plan.Methods.Select(method => method.Id));
            Assert.Equal(plan.Methods.Select(method => method.Id), plan.Steps.Select(step => step.Method).OfType<string>().Distinct());
            string[] own = [.. plan.Steps.SelectMany(step => WritingRules.Sentences(step.Text))];
            Assert.Equal([], plan.Methods.SelectMany(method => WritingRules.Sentences(method.Text)).Where(sentence => WritingRules.Words(sentence) > 5).Intersect(own));
        }
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void Holds_no_word_that_is_old_and_nothing_left_open(string name)
    {
        foreach (string text in Plans(name).SelectMany(plan => plan.Steps.Select(step => step.Text).Concat(plan.Methods.Select(method => method.Text))).Distinct())
        {
            Assert.Equal([], WritingRules.BannedIn(text));
            Assert.DoesNotContain('{', text);
            Assert.DoesNotContain("no seals", text, StringComparison.Ordinal);
        }
    }

    /// <summary>An engine is cranked; a trim unit, a gearcase and a gearbox are not.</summary>
    [Theory]
    [MemberData(nameof(Families))]
    public void Only_an_engine_is_cranked_and_only_what_has_raw_water_has_a_water_inlet(string name)
    {
        bool isEngine = name is not ("stern-trim-unit" or "outboard-gearcase" or "harbour-reverse-gear");
        Family family = Family(name);
        bool hasWater = family.Circuits.Any(circuit => FluidSort.Of(family, circuit) == "raw-water");
        foreach (PlanDocument plan in Plans(name))
        {
            string proof = string.Join('\n', plan.Steps.Where(step => step.Phase == Phase.Prove).Select(step => step.Text));
            Assert.Equal(isEngine, proof.Contains("crank ten seconds", StringComparison.Ordinal));
            Assert.Equal(isEngine && hasWater, proof.Contains("Water inlet closed", StringComparison.Ordinal));
            Assert.Equal(name == "stern-trim-unit", proof.Contains("Work each circuit", StringComparison.Ordinal));
        }
    }

    /// <summary>NAVEDTRA and army practice, TM 5-3895-382-24: the engine is not started until the injection pump is full of fuel.</summary>
    [Theory]
    [InlineData("harbour-diesel-i4")]
    [InlineData("quay-diesel-v8")]
    [InlineData("creek-diesel-i4")]
    public void A_pump_that_its_fuel_lubricates_is_full_before_it_turns(string name)
    {
        Family family = Family(name);
        int seen = 0;
        foreach (PlanDocument plan in Plans(name).Where(plan => plan.Steps.Any(step => (step.Part ?? step.Parts.FirstOrDefault()) is { } part && family[new PartId(part)].Kind.Name == "injection-pump" && step.Action == StepAction.Refit && !step.ForAccess)))
        {
            int bled = NumberOf(plan, "Bleed the injection pump");
            Assert.InRange(bled, 1, NumberOf(plan, "crank ten seconds") - 1);
            Assert.InRange(bled, 1, NumberOf(plan, "two turns by hand") - 1);
            seen++;
        }

        Assert.True(seen > 0);
    }

    /// <summary>TM 55-1905-223-24-5, step (8): primed to a pressure first, then cranked with the fuel off; the sea-cock is shut meanwhile (from memory).</summary>
    [Fact]
    public void Oil_is_primed_before_it_cranks_and_pressure_seen_before_it_fires()
    {
        PlanDocument plan = Plan(Family("harbour-diesel-i4"), "oil-pump", "metal");
        int[] order = [NumberOf(plan, "Prime the oil"), NumberOf(plan, "crank ten seconds"), NumberOf(plan, "Oil pressure shows"), NumberOf(plan, "Open the water inlet"), NumberOf(plan, "Start it at idle")];
        Assert.Equal(order.Order(), order);
        Assert.Equal(order.Length, order.Distinct().Count());
    }

    [Fact]
    public void A_gearcase_is_tried_for_tightness_before_it_is_filled()
    {
        PlanDocument plan = Plan(Family("outboard-gearcase"), "pinion", "metal");
        Assert.InRange(NumberOf(plan, "pressure drop"), 1, NumberOf(plan, "Fill gear oil") - 1);
    }

    [Fact]
    public void No_air_goes_through_what_petrol_ran_in()
    {
        Family family = Family("sterndrive-petrol-v6");
        Assert.Equal([], Plans("sterndrive-petrol-v6").SelectMany(plan => plan.Steps)
            .Where(step => step.Part is { } id && family.Circuits.Any(circuit => circuit.Fluid == "petrol" && circuit.Parts.Contains(new PartId(id))))
            .Select(step => step.Text)
            .Where(text => text.Contains("burst", StringComparison.Ordinal) || text.Contains("blow", StringComparison.OrdinalIgnoreCase)));
    }

    [Fact]
    public void Petrol_is_never_warmed()
    {
        PlanStep[] flushes = [.. Plan(Family("sterndrive-petrol-v6"), "fuel-tank", "metal").Steps.Where(step => step.Action == StepAction.Flush && step.Text.Contains("L/min", StringComparison.Ordinal))];
        Family family = Family("sterndrive-petrol-v6");
        PlanStep[] petrol = [.. flushes.Where(step => step.Part is { } id && family.Circuits.Where(circuit => circuit.Parts.Contains(new PartId(id))).All(circuit => circuit.Fluid == "petrol"))];
        Assert.NotEmpty(petrol);
        Assert.All(petrol, step => Assert.Contains("at 20 °C", step.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_high_pressure_is_tried_on_liquid()
    {
        Family family = Family("stern-trim-unit");
        PartId[] high = [.. family.Limits.Where(limit => limit.Measures == Measure.PressureDrop && limit.At is { Bar: > 0.7 }).Select(limit => limit.Part)];
        PlanStep[] tests = [.. Plans("stern-trim-unit").SelectMany(plan => plan.Steps).Where(step => step.Action == StepAction.Test && step.Part is { } id && high.Contains(new PartId(id)))];
        Assert.NotEmpty(tests);
        Assert.All(tests, step => Assert.Contains("never on gas", step.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void What_it_takes_is_gathered()
    {
        PlanDocument plan = Plan(Family("harbour-diesel-i4"), "injection-pump", "metal");
        Assert.Contains("filter cutter", plan.Before.Tools);
        Assert.Equal(plan.Before.Tools.Distinct(), plan.Before.Tools);
        Assert.Contains(plan.Before.Supplies, supply => supply is { Item: "clean cap or plug", Unit: null, Quantity: > 1 });
        Assert.Contains(plan.Before.Supplies, supply => supply is { Item: "solvent", Unit: "L", Quantity: > 0 });
        Assert.NotEmpty(plan.Before.Hands);
    }

    private static int NumberOf(PlanDocument plan, string words) => plan.Steps.First(step => step.Text.Contains(words, StringComparison.OrdinalIgnoreCase) && step.Phase == Phase.Prove).Number;

    /// <summary>
    /// How many words the texts of a plan have, and how many of them stand in a sentence that was used before in it. Steps at like parts, alike in all but the
    /// number, are one.
    /// </summary>
    internal static (int All, int Repeated) Repeated(PlanDocument plan)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        int all = 0;
        int repeated = 0;
        IEnumerable<string> steps = plan.Steps.Select(step => step.Text).DistinctBy(text => Digits().Replace(text, "#"), StringComparer.Ordinal);
        foreach (string sentence in plan.Cautions.Select(caution => caution.Text).Concat(plan.Methods.Select(method => method.Text)).Concat(steps).SelectMany(WritingRules.Sentences))
        {
            int words = WritingRules.Words(sentence);
            all += words;
            repeated += seen.Add(sentence) ? 0 : words;
        }

        return (all, repeated);
    }

    [GeneratedRegex("[0-9]+")]
    private static partial Regex Digits();

    private static Family Family(string name) => FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), House.CatalogueOf()).Value!;

    // Every few parts and every debris: some thirty plans a family.
    private static IEnumerable<PlanDocument> Plans(string name)
    {
        Family family = Family(name);
        return family.Parts.Where((_, index) => index % EachPart == 0)
            .SelectMany(part => House.CatalogueOf().Debris.Where(debris => part.ShedOf(debris) is not null).Select(debris => Plan(family, part.Id.Value, debris.Name)));
    }

    private static PlanDocument Plan(Family family, string failed, string debris) =>
        Planner.Plan(new PlanRequest(family, House, [new PartId(failed)], [House.CatalogueOf().FindDebris(debris)!]) { TakesFirstSchedule = true });
}
