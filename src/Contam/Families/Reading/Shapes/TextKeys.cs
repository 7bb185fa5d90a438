using System.Collections.Immutable;

namespace Contam.Families.Reading.Shapes;

/// <summary>The keys of a standard that say how steps are worded: methods, texts and the frame.</summary>
internal static class TextKeys
{
    private static readonly IdShape MethodId = new("the id of a method", "wash");

    public static readonly Key<string> Say = new(new StepTextShape())
    {
        Name = "say", Means = "What is done, with what; " + StepTextShape.Placeholders, Example = "\"flush {part} against the flow\"",
    };

    public static readonly Key<string> Until = new(new StepTextShape())
    {
        Name = "until", Means = "Until when", Example = "what runs out is clear through a white cloth",
    };

    public static readonly Key<string> StopIf = new(new StepTextShape())
    {
        Name = "stop-if", Means = "What would make one stop and think again", Example = "\"pieces larger than {size} come out\"",
    };

    public static readonly Key<string> Uses = new(MethodId)
    {
        Name = "method", Means = "The method that it uses, one of `methods`; the text then says only what is special", Example = "wash",
    };

    public static readonly Key<ImmutableArray<Located<string>>> Tools = new(new ListShape<string>(new WordsShape { MustSay = true }, "a list of tools") { EachOnce = true })
    {
        Name = "tools", Means = "Tools that it takes", Example = "[magnet, filter cutter]",
    };

    public static readonly Key<int> Hands = new(new WholeShape(1))
    {
        Name = "hands", Means = "How many people it takes; default: 1", Example = "2",
    };

    public static readonly Key<string> Item = new(new StepTextShape()) { Name = "item", Means = "What is used up; it may hold `{fluid}`", Example = "white cloth" };

    public static readonly Key<double> Quantity = new(new NumberShape("units")) { Name = "quantity", Means = "How much of it; default: 1", Example = "0.5" };

    public static readonly Key<string> Unit = new(new WordsShape { MustSay = true }) { Name = "unit", Means = "The unit; default: pieces", Example = "L" };

    public static readonly Key<SupplyPer> Per = new(new ChoiceShape<SupplyPer>(
        "what a quantity is for", ("part", SupplyPer.Part), ("plan", SupplyPer.Plan), ("litre", SupplyPer.Litre), ("opening", SupplyPer.Opening)))
    {
        Name = "per", Means = "What the quantity is for: each part, the whole plan, each litre that the parts hold, or each opening of the parts; default: part", Example = "part",
    };

    /// <summary>A supply.</summary>
    public static readonly FormShape Supply = new("supply", "a supply", Item, Quantity, Unit, Per) { Required = [Item], Means = "Something that is used up" };

    public static readonly Key<ImmutableArray<Located<Form>>> Supplies = new(new ListShape<Form>(Supply, "a list of supplies"))
    {
        Name = "supplies", Means = "What is used up", Example = "[{item: white cloth, per: part}]",
    };

    public static readonly Key<Form> For = new(StandardKeys.BearsOn) { Name = "for", Means = "Which steps it is for; the closest that fits is used", Example = "{action: flush, debris: metal}" };

    public static readonly Key<string> Id = new(MethodId) { Name = "id", Means = "Its id; several of one id differ in `for`", Example = "wash" };

    public static readonly Key<string> Title = new(new WordsShape { MustSay = true }) { Name = "title", Means = "Its name, for people", Example = "Wash in a bath" };

    /// <summary>A method.</summary>
    public static readonly FormShape Method = new("method", "a method", Id, Title, For, Say, Until, StopIf, Tools, Supplies, Hands)
    {
        Required = [Id, Title, Say], Means = "A way of working that many steps share, said once in a plan",
    };

    public static readonly Key<ImmutableArray<Located<Form>>> Methods = new(new ListShape<Form>(Method, "a list of methods"))
    {
        Name = "methods", Means = "Ways of working that many steps share", Example = "[{id: wash, title: Wash, say: \"brush it in clean solvent\"}]",
    };

    /// <summary>A text of a step.</summary>
    public static readonly FormShape StepText = new("text", "a text", For, Say, Until, StopIf, Uses, Tools, Supplies, Hands)
    {
        Required = [For, Say], Means = "How a step is worded",
    };

    public static readonly Key<ImmutableArray<Located<Form>>> Texts = new(new ListShape<Form>(StepText, "a list of texts"))
    {
        Name = "texts", Means = "How steps are worded", Example = "[{for: {action: remove}, say: \"take {part} off\"}]",
    };

    public static readonly Key<string> Step = new(new IdShape("the name of a step", "fill-oil"))
    {
        Name = "step", Means = "Its name; of several with one name the closest that fits is used. Names with a meaning: " + FrameNames.Phrase, Example = "fill-oil",
    };

    public static readonly Key<double> Minutes = new(new NumberShape("minutes")) { Name = "minutes", Means = "Minutes of a technician's time, for each part where it is for parts", Example = "10" };

    public static readonly Key<FrameDue> Due = new(new ChoiceShape<FrameDue>(
        "when a step is due", ("before-running", FrameDue.BeforeRunning), ("first-run", FrameDue.FirstRun), ("running-hours", FrameDue.RunningHours)))
    {
        Name = "due", Means = "When it is due: before the first start, at the first run, or after the first running hours; default: before-running", Example = "first-run",
    };

    /// <summary>A step of the frame.</summary>
    public static readonly FormShape FrameStep = new("frame-step", "a step of the frame", Step, For, Say, Until, StopIf, Minutes, Due, Uses, Tools, Supplies, Hands)
    {
        Required = [Step, Say], Means = "A step before or after the work on the parts",
    };

    private static readonly ListShape<Form> FrameSteps = new(FrameStep, "a list of steps");

    public static readonly ImmutableArray<(FrameSection Section, Key<ImmutableArray<Located<Form>>> Key)> FrameSections =
    [
        (FrameSection.MakeSafe, new(FrameSteps) { Name = "make-safe", Means = "Before anything is opened", Example = "[{step: stop, say: engine off}]" }),
        (FrameSection.Confirm, new(FrameSteps) { Name = "confirm", Means = "Before the strip", Example = "[{step: decide, say: \"does the plan fit?\"}]" }),
        (FrameSection.Refit, new(FrameSteps) { Name = "refit", Means = "Among the refits", Example = "[{step: filters-next, say: only now the filters}]" }),
        (FrameSection.Prove, new(FrameSteps) { Name = "prove", Means = "After everything is back, in this order", Example = "[{step: first-run, say: run it at idle, due: first-run}]" }),
        (FrameSection.WithStep, new(FrameSteps) { Name = "with-step", Means = "Sentences that stand with a step on a part", Example = "[{step: seals, say: \"New {seals}\"}]" }),
    ];

    public static readonly Key<Form> Frame = new(new FormShape("frame", "the frame", [.. FrameSections.Select(section => (Key)section.Key)])
    {
        Means = "The steps before and after the work on the parts",
    })
    {
        Name = "frame", Means = "What comes before and after the work on the parts", Example = "{prove: [{step: first-run, say: run it at idle, due: first-run}]}",
    };
}
