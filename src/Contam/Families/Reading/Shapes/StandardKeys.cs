using System.Collections.Immutable;
using Contam.Families.Quantities;

namespace Contam.Families.Reading.Shapes;

/// <summary>The keys of a shop standard.</summary>
internal static class StandardKeys
{
    private static readonly IdShape KindName = new("a kind of part", "filter");
    private static readonly IdShape PartId = new("the id of a part", "oil-filter");

    private static readonly ChoiceShape<TreatmentKind> Treatment = new(
        "a treatment",
        ("inspect", TreatmentKind.Inspect),
        ("flush", TreatmentKind.Flush),
        ("clean", TreatmentKind.Clean),
        ("test", TreatmentKind.Test),
        ("replace", TreatmentKind.Replace));

    private static readonly ListShape<TreatmentKind> Treatments = new(Treatment, "a list of treatments") { AtLeast = 1, EachOnce = true };

    private static readonly QuantityShape<TimeSpan> Time = new(Dimension.Duration, Quantity.TryParse, time => time == TimeSpan.Zero);

    public static readonly Key<string> Standard = new(new IdShape("the id of a standard", "house"))
    {
        Name = "standard", Means = "The id of the standard", Example = "house",
    };

    public static readonly Key<string> Title = new(new WordsShape()) { Name = "title", Means = "Its title, for people", Example = "Harbour workshop" };

    public static readonly Key<bool> CleanFindings = new(new ChoiceShape<bool>("clean-findings", ("accept", true), ("never", false)))
    {
        Name = "clean-findings", Means = "Whether a clean finding may clear what lies beyond it; default: accept", Example = "accept",
    };

    public static readonly Key<TimeSpan> WorkingDay = new(Time) { Name = "working-day", Means = "The length of a working day; default: 8 h", Example = "8 h" };

    public static readonly Key<TimeSpan> FirstRunningHours = new(Time)
    {
        Name = "first-running-hours", Means = "Running time after which filters are changed and places looked at again; default: 5 h", Example = "5 h",
    };

    public static readonly Key<Pressure> GasTestAtMost = new(new QuantityShape<Pressure>(Dimension.Pressure, Quantity.TryParse, pressure => pressure.Pascals == 0))
    {
        Name = "gas-test-at-most", Means = "The highest pressure of gas that a test may use; above it a test is made with liquid; default: 0.7 bar", Example = "0.7 bar",
    };

    public static readonly Key<ImmutableArray<Entry<string, Form>>> Kinds = new(new EntriesShape<string, Form>(
        KindName, KindKeys.Kind, "a mapping from names to kinds", KindName.Pattern))
    {
        Name = "kinds", Means = "Kinds of part, by name; one of the same name below is replaced", Example = "{strainer: {about: a coarse mesh, removable: true}}",
    };

    public static readonly Key<bool> HasSize = new(new FlagShape())
    {
        Name = "has-size", Means = "Whether its particles have a size; debris without size is held back wholly or not at all", Example = "true",
    };

    public static readonly Key<bool> Hard = new(new FlagShape())
    {
        Name = "hard", Means = "Whether a passage narrower than a particle holds it; soft debris squeezes through", Example = "false",
    };

    /// <summary>A sort of debris.</summary>
    public static readonly FormShape DebrisForm = new("debris", "a sort of debris", HasSize, Hard)
    {
        Required = [HasSize, Hard], Means = "A sort of debris beside metal, rubber and water",
    };

    public static readonly Key<ImmutableArray<Entry<string, Form>>> Debris = new(new EntriesShape<string, Form>(
        PartKeys.DebrisName, DebrisForm, "a mapping from names to debris", PartKeys.DebrisName.Pattern))
    {
        Name = "debris", Means = "The shop's own sorts of debris, by name", Example = "{sealant: {has-size: true, hard: false}}",
    };

    public static readonly Key<string> ForPart = new(PartId) { Name = "part", Means = "One part, by id", Example = "oil-filter" };

    public static readonly Key<string> ForKind = new(KindName) { Name = "kind", Means = "A kind of part", Example = "cooler" };

    public static readonly Key<string> ForDebris = new(PartKeys.DebrisName) { Name = "debris", Means = "A sort of debris", Example = "metal" };

    public static readonly Key<string> ForCircuit = new(FlowKeys.CircuitName) { Name = "circuit", Means = "A circuit", Example = "fuel" };

    public static readonly Key<string> ForFluid = new(FlowKeys.FluidId) { Name = "fluid", Means = "A fluid: what it is (petrol, diesel, engine-oil, two-stroke-oil, gear-oil, hydraulic-oil, coolant, raw-water; air for a circuit without one; unsaid), a group (fuel, oil), or its id", Example = "diesel" };

    public static readonly Key<string> ForMachine = new(new ChoiceShape<string>("a machine", [.. MachineName.All.Select(machine => (machine.Name, machine.Name))]))
    {
        Name = "machine", Means = "What the family is", Example = "engine",
    };

    public static readonly Key<TreatmentKind> ForTreatment = new(Treatment) { Name = "treatment", Means = "A treatment", Example = "flush" };

    public static readonly Key<StepAction> ForAction = new(new ChoiceShape<StepAction>(
        "an action",
        ("make-safe", StepAction.MakeSafe),
        ("inspect", StepAction.Inspect),
        ("remove", StepAction.Remove),
        ("flush", StepAction.Flush),
        ("clean", StepAction.Clean),
        ("test", StepAction.Test),
        ("replace", StepAction.Replace),
        ("refit", StepAction.Refit),
        ("prove", StepAction.Prove),
        ("send-out", StepAction.SendOut),
        ("note", StepAction.Note)))
    {
        Name = "action", Means = "An action of a step", Example = "remove",
    };

    public static readonly Key<string> ForHas = new(FlowKeys.FluidId)
    {
        Name = "has", Means = "A fluid, as in `fluid`, that runs somewhere in the machine, whether its circuit is opened or not", Example = "raw-water",
    };

    private static readonly FormShape RuleTarget = new("rule-for", "what a rule is for", ForPart, ForKind, ForDebris)
    {
        AtLeast = 1, Means = "What a rule is for; all that is given must fit",
    };

    public static readonly Key<Form> RuleFor = new(RuleTarget)
    {
        Name = "for", Means = "What the rule is for; the most specific rule wins: part, kind with debris, kind, debris", Example = "{kind: cooler, debris: metal}",
    };

    public static readonly Key<ImmutableArray<Located<TreatmentKind>>> Exposed = new(Treatments)
    {
        Name = "exposed", Means = "What is done with an exposed part", Example = "[replace]",
    };

    public static readonly Key<ImmutableArray<Located<TreatmentKind>>> Guarded = new(Treatments)
    {
        Name = "guarded", Means = "What is done with a guarded part", Example = "[flush, test]",
    };

    public static readonly Key<ImmutableArray<Located<TreatmentKind>>> Failed = new(Treatments)
    {
        Name = "failed", Means = "What is done with the failed part itself; default: replace", Example = "[replace]",
    };

    public static readonly Key<string> Because = new(new WordsShape())
    {
        Name = "because", Means = "The reason", Example = "a tube bundle holds chips that no flush can be shown to have removed",
    };

    /// <summary>A rule.</summary>
    public static readonly FormShape Rule = new("rule", "a rule", RuleFor, Exposed, Guarded, Failed, Because)
    {
        Required = [RuleFor], Means = "Which treatment a part gets",
    };

    public static readonly Key<ImmutableArray<Located<Form>>> Rules = new(new ListShape<Form>(Rule, "a list of rules"))
    {
        Name = "rules", Means = "Which treatment parts get", Example = "[{for: {kind: injector}, exposed: [clean, test], guarded: [test]}]",
    };

    public static readonly Key<Form> ShareFor = new(RuleTarget)
    {
        Name = "for", Means = "What the share is for; the most specific wins, as with rules", Example = "{kind: screen, debris: metal}",
    };

    public static readonly Key<double> Share = new(new ShareShape())
    {
        Name = "share", Means = "How often debris that came this far goes further, above 0 and at most 1", Example = "0.3",
    };

    /// <summary>How often debris passes on.</summary>
    public static readonly FormShape PassingOn = new("passing-on", "a share that passes on", ShareFor, Share)
    {
        Required = [ShareFor, Share], Means = "How often debris that came to a part goes further",
    };

    public static readonly Key<ImmutableArray<Located<Form>>> PassesOn = new(new ListShape<Form>(PassingOn, "a list of shares"))
    {
        Name = "passes-on",
        Means = "How often debris that came to a part goes further; what is not said is 0.9. It chooses and ranks looks, and leaves no part out",
        Example = "[{for: {kind: screen, debris: metal}, share: 0.3}]",
    };

    public static readonly Key<ImmutableArray<Entry<string, Form>>> Times = new(new EntriesShape<string, Form>(
        KindName, MinutesKeys.Shape, "a mapping from kinds to minutes", KindName.Pattern))
    {
        Name = "times", Means = "Minutes by kind, which take the place of the kind's own", Example = "{hose: {remove: 5, flush: 10, refit: 5}}",
    };

    internal static readonly FormShape BearsOn = new(
        "bears-on", "what it bears on", ForMachine, ForHas, ForCircuit, ForFluid, ForTreatment, ForAction, ForKind, ForDebris)
    {
        AtLeast = 1, Means = "What a caution or a text bears on; all that is given must fit",
    };

    public static readonly Key<Form> CautionFor = new(BearsOn)
    {
        Name = "for", Means = "What the caution bears on; default: the whole procedure", Example = "{circuit: fuel}",
    };

    public static readonly Key<string> CautionSay = new(new WordsShape())
    {
        Name = "say", Means = "The caution", Example = "let the rail pressure down before a union is opened",
    };

    public static readonly Key<string> CautionSource = new(new WordsShape())
    {
        Name = "source", Means = "The published source; default: common practice, no source", Example = "29 CFR 1910.242(b)",
    };

    /// <summary>A caution.</summary>
    public static readonly FormShape Caution = new("caution", "a caution", CautionFor, CautionSay, CautionSource)
    {
        Required = [CautionSay], Means = "A caution, shown once and named by its number on the steps that it bears on",
    };

    public static readonly Key<ImmutableArray<Located<Form>>> Cautions = new(new ListShape<Form>(Caution, "a list of cautions"))
    {
        Name = "cautions", Means = "Cautions by circuit, fluid, treatment, action, kind or debris", Example = "[{for: {circuit: fuel}, say: no naked flame}]",
    };
}
