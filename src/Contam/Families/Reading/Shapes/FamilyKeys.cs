using System.Collections.Immutable;

namespace Contam.Families.Reading.Shapes;

/// <summary>The keys of a family file and of a module.</summary>
internal static class FamilyKeys
{
    private static readonly IdShape PartKey = new("the id of a part", "oil-filter", RepeatMark.AtEnd);
    private static readonly IdShape LimitKey = new("the id of a limit", "pump-run-out", RepeatMark.AtEnd);
    private static readonly IdShape CountKey = new("the name of a repeated part", "main-bearing");

    public static readonly Key<int> Format = new(new WholeShape(1, 1))
    {
        Name = "format", Means = "The format of the file: 1", Example = "1",
    };

    public static readonly Key<string> Family = new(new IdShape("the id of a family", "harbour-diesel-i4"))
    {
        Name = "family", Means = "The id of the family, unique in its folder", Example = "harbour-diesel-i4",
    };

    public static readonly Key<Machine> Machine = new(new ChoiceShape<Machine>(
        "a sort of machine", [.. MachineName.All]))
    {
        Name = "machine", Means = "What sort of machine it is, which decides how it is made safe and proved; default: engine", Example = "gearcase",
    };

    public static readonly Key<string> Title = new(new WordsShape())
    {
        Name = "title", Means = "Its title, for people", Example = "Four-cylinder harbour-launch diesel",
    };

    public static readonly Key<string> About = new(new WordsShape())
    {
        Name = "about", Means = "What it is, in a line or two", Example = "wet sump, common rail, keel cooled",
    };

    public static readonly Key<ImmutableArray<Located<EngineStates>>> EngineRunning = new(FlowKeys.States("an engine state"))
    {
        Name = "engine-running", Means = "The states that this engine has; default: all three", Example = "[running, cranking, stopped]",
    };

    public static readonly Key<string> Module = new(new WordsShape())
    {
        Name = "module", Means = "The module's file, relative to this one, with `/` between folders", Example = "../modules/wet-sump-oil.yaml",
    };

    public static readonly Key<string> Prefix = new(new PrefixShape())
    {
        Name = "prefix", Means = "Put before every id of a part, limit or fluid that the module brings; circuits keep their names. Its words stand before the names of parts too. Default: nothing", Example = "port-",
    };

    public static readonly Key<ImmutableArray<Entry<string, int>>> Counts = new(new EntriesShape<string, int>(
        CountKey, new WholeShape(1), "a mapping from repeated parts to how often they stand", CountKey.Pattern))
    {
        Name = "counts", Means = "How often the module's repeated parts stand here, by their names in the module, without `-#`", Example = "{main-bearing: 5}",
    };

    /// <summary>A use of a module.</summary>
    public static readonly FormShape UseForm = new("use", "a use of a module", Module, Prefix, Counts)
    {
        Required = [Module], Means = "Brings in what a module describes",
    };

    public static readonly Key<ImmutableArray<Located<Form>>> Use = new(new ListShape<Form>(UseForm, "a list of modules"))
    {
        Name = "use", Means = "Modules shared between families", Example = "[{module: ../modules/wet-sump-oil.yaml, counts: {main-bearing: 5}}]",
    };

    public static readonly Key<ImmutableArray<Entry<string, Form>>> Adjust = new(new EntriesShape<string, Form>(
        PartKey, PartKeys.Adjustment, "a mapping from ids to what is changed", PartKey.Pattern))
    {
        Name = "adjust", Means = "Changes parts that a module brought, by their ids in this file", Example = "{oil-filter: {bypass: true}}",
    };

    public static readonly Key<ImmutableArray<Entry<string, Form>>> Fluids = new(new EntriesShape<string, Form>(
        FlowKeys.FluidId, FlowKeys.Fluid, "a mapping from ids to fluids", FlowKeys.FluidId.Pattern))
    {
        Name = "fluids", Means = "Fluids, by id", Example = "{oil-15w40: {density: 875 kg/m3, viscosity: {40 C: 105 cSt, 100 C: 14.2 cSt}}}",
    };

    public static readonly Key<ImmutableArray<Entry<string, Form>>> Parts = new(new EntriesShape<string, Form>(
        PartKey, PartKeys.Part, "a mapping from ids to parts", PartKey.Pattern))
    {
        Name = "parts", Means = "Parts, by id; `injector-#` with `count` stands for several", Example = "{feed-hose: {kind: hose, bore: 9.5 mm}, injector-#: {kind: injector, count: 4}}",
    };

    public static readonly Key<ImmutableArray<Entry<string, Form>>> Circuits = new(new EntriesShape<string, Form>(
        FlowKeys.CircuitName, FlowKeys.Circuit, "a mapping from names to circuits", FlowKeys.CircuitName.Pattern))
    {
        Name = "circuits", Means = "Circuits, by name: air, fuel, oil, cooling, or others", Example = "{fuel: {runs: [[fuel-tank, feed-hose, injector-#]]}}",
    };

    public static readonly Key<ImmutableArray<Located<Form>>> Links = new(new ListShape<Form>(FlowKeys.Link, "a list of links"))
    {
        Name = "links", Means = "Joints that need more said than a run can say", Example = "[{from: crankcase, to: breather-hose, circuit: air, both-ways: true}]",
    };

    public static readonly Key<ImmutableArray<Entry<string, Form>>> Limits = new(new EntriesShape<string, Form>(
        LimitKey, LimitKeys.Limit, "a mapping from ids to limits", LimitKey.Pattern))
    {
        Name = "limits", Means = "What readings are judged by, by id", Example = "{pump-run-out: {part: pump, measures: run-out, good: \"<= 0.05 mm\"}}",
    };

    private static readonly ImmutableArray<Key> Shared = [Title, About, EngineRunning, Use, Adjust, Fluids, Parts, Circuits, Links, Limits];

    /// <summary>A family file.</summary>
    public static readonly FormShape FamilyFile = new("family", "a family file", [Format, Family, Machine, .. Shared])
    {
        Required = [Format, Family], Means = "An engine family: its parts and how its fluids run through them",
    };

    /// <summary>A module.</summary>
    public static readonly FormShape ModuleFile = new("module", "a module", [Format, .. Shared])
    {
        Required = [Format], Means = "Parts and circuits shared between families",
    };
}
