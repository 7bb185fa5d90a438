using System.Collections.Immutable;
using Contam.Families.Quantities;

namespace Contam.Families.Reading.Shapes;

/// <summary>The keys of fluids, circuits and links.</summary>
internal static class FlowKeys
{
    /// <summary>A reference to a circuit.</summary>
    public static readonly IdShape CircuitName = new("the name of a circuit", "fuel");

    /// <summary>A reference to a fluid.</summary>
    public static readonly IdShape FluidId = new("the id of a fluid", "oil-15w40");

    public static readonly Key<Density> Density = new(new QuantityShape<Density>(Dimension.Density, Quantity.TryParse, density => density.KilogramsPerCubicMetre == 0))
    {
        Name = "density", Means = "Its density", Example = "875 kg/m3",
    };

    private static readonly QuantityShape<Temperature> At = new(Dimension.Temperature, Quantity.TryParse);

    public static readonly Key<ImmutableArray<Entry<Temperature, KinematicViscosity>>> Viscosity = new(new EntriesShape<Temperature, KinematicViscosity>(
        At,
        new QuantityShape<KinematicViscosity>(Dimension.KinematicViscosity, Quantity.TryParse, viscosity => viscosity.SquareMetresPerSecond == 0),
        "a mapping from temperatures to viscosities",
        At.Pattern))
    {
        Name = "viscosity", Means = "Kinematic viscosity by temperature; two temperatures give it at any other", Example = "{40 C: 105 cSt, 100 C: 14.2 cSt}",
    };

    /// <summary>A fluid.</summary>
    public static readonly Key<bool> Free = new(new FlagShape())
    {
        Name = "free", Means = "Whether it comes from outside, as sea water does, and need not be ordered; default: false", Example = "true",
    };

    public static readonly Key<string> Is = new(new ChoiceShape<string>("what a fluid is", [.. FluidSort.All.Select(sort => (sort, sort))]))
    {
        Name = "is", Means = "What it is, for the texts of a standard; default: what its id says where that is one of these words", Example = "engine-oil",
    };

    public static readonly FormShape Fluid = new("fluid", "a fluid", Is, Density, Viscosity, Free) { Means = "A fluid: what it is, and figures for flushing sums" };

    public static readonly Key<string> CircuitFluid = new(FluidId)
    {
        Name = "fluid", Means = "The fluid that runs here, one of `fluids`", Example = "oil-15w40",
    };

    public static readonly Key<ImmutableArray<Located<ImmutableArray<Located<string>>>>> Runs = new(new RunsShape())
    {
        Name = "runs", Means = "Parts in flow order; `a-#` next to `b-#` joins number to number, a plain id next to `b-#` joins to every one", Example = "[[fuel-tank, feed-hose, injection-pump], [injector-#, return-rail, fuel-tank]]",
    };

    /// <summary>A circuit.</summary>
    public static readonly FormShape Circuit = new("circuit", "a circuit", CircuitFluid, Runs, MeantKeys.Meant) { Means = "One fluid's way through the engine" };

    public static readonly Key<string> From = new(PartKeys.Reference) { Name = "from", Means = "The part upstream", Example = "cylinder-1" };

    public static readonly Key<string> To = new(PartKeys.Reference) { Name = "to", Means = "The part downstream", Example = "sump" };

    public static readonly Key<string> LinkCircuit = new(CircuitName) { Name = "circuit", Means = "The circuit that it belongs to, one of `circuits`", Example = "oil" };

    public static readonly Key<ImmutableArray<Located<EngineStates>>> When = new(States("when it is open"))
    {
        Name = "when", Means = "The engine states in which something can pass; default: all", Example = "stopped",
    };

    public static readonly Key<string> OnlyIfFailed = new(PartKeys.Reference)
    {
        Name = "only-if-failed", Means = "Open only when this part has failed", Example = "ring-pack-1",
    };

    public static readonly Key<bool> BothWays = new(new FlagShape()) { Name = "both-ways", Means = "Whether it passes both ways; default: false", Example = "true" };

    public static readonly Key<ParticleSize> Passage = new(new QuantityShape<ParticleSize>(Dimension.Length, ParticleSize.TryParse))
    {
        Name = "passage", Means = "The widest a hard particle may be and still pass; default: not limited", Example = "4 mm",
    };

    /// <summary>A link.</summary>
    public static readonly FormShape Link = new("link", "a link", From, To, LinkCircuit, When, OnlyIfFailed, BothWays, Passage)
    {
        Required = [From, To, LinkCircuit], Means = "One joint, where a run does not say enough",
    };

    /// <summary>Engine states: one, or a list.</summary>
    public static ListShape<EngineStates> States(string called) => new(
        new ChoiceShape<EngineStates>(called, ("running", EngineStates.Running), ("cranking", EngineStates.Cranking), ("stopped", EngineStates.Stopped)),
        "a list of engine states")
    {
        AtLeast = 1, MayStandAlone = true, EachOnce = true, AllOrNothing = true,
    };
}
