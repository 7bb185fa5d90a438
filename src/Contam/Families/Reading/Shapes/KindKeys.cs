using System.Collections.Immutable;

namespace Contam.Families.Reading.Shapes;

/// <summary>The keys of a kind of part.</summary>
internal static class KindKeys
{
    public static readonly Key<string> About = new(new WordsShape()) { Name = "about", Means = "What it is, in a line", Example = "catches debris in an element" };

    public static readonly Key<bool> Removable = new(new FlagShape())
    {
        Name = "removable", Means = "Whether such a part comes off to be treated; default: false, treated where it is", Example = "true",
    };

    public static readonly Key<bool> Filter = new(new FlagShape())
    {
        Name = "filter", Means = "Whether it is there to catch debris, so that it is done last in its circuit; default: false", Example = "true",
    };

    public static readonly Key<bool> JoinsFluids = new(new FlagShape())
    {
        Name = "joins-fluids", Means = "Whether such a part may stand in circuits of different fluids; default: false", Example = "true",
    };

    public static readonly Key<bool> FluidMayEnd = new(new FlagShape())
    {
        Name = "fluid-may-end", Means = "Whether a run may end here; default: false", Example = "true",
    };

    public static readonly Key<bool> Reservoir = new(new FlagShape())
    {
        Name = "reservoir", Means = "Whether the fluid of a circuit is kept in such a part, drawn from it and brought back to it; default: false", Example = "true",
    };

    public static readonly Key<bool> LookUsesUp = new(new FlagShape())
    {
        Name = "look-uses-up", Means = "Whether a look at such a part uses it up, so that a new one is needed whatever is seen; default: false", Example = "true",
    };

    public static readonly Key<bool> LookOpens = new(new FlagShape())
    {
        Name = "look-opens", Means = "Whether a look at such a part opens its circuit, so that the circuit is made safe before; default: true", Example = "false",
    };

    public static readonly Key<bool> Carried = new(new FlagShape())
    {
        Name = "carried", Means = "Whether such a part usually sits on or in another, so that a family which names carriers should name its own; default: false", Example = "true",
    };

    public static readonly Key<bool> RenewedWhenOut = new(new FlagShape())
    {
        Name = "renewed-when-out", Means = "Whether such a part is renewed whenever it is taken out, also where it is only in the way; default: false", Example = "true",
    };

    public static readonly Key<ImmutableArray<Located<Measure>>> Measures = new(new ListShape<Measure>(LimitKeys.MeasureShape, "a list of what is measured") { EachOnce = true })
    {
        Name = "measures", Means = "What can be measured at such a part; default: anything", Example = "[run-out, clearance]",
    };

    public static readonly Key<Form> Minutes = new(MinutesKeys.Shape)
    {
        Name = "minutes", Means = "Minutes by task, where `times` and the part say nothing", Example = "{remove: 5, refit: 5}",
    };

    public static readonly Key<ImmutableArray<Located<string>>> Seals = new(new ListShape<string>(new IdShape("the name of a seal", "bowl-o-ring"), "a list of seals"))
    {
        Name = "seals", Means = "Single-use seals of such a part; the same name twice means two pieces", Example = "[bowl-o-ring]",
    };

    /// <summary>A kind of part.</summary>
    public static readonly FormShape Kind = new(
        "kind", "a kind", About, Removable, Filter, JoinsFluids, FluidMayEnd, Reservoir,
        KindPartKeys.ClearedBy, KindPartKeys.TestAt, LookUsesUp, LookOpens, Carried, RenewedWhenOut, Measures, Minutes, Seals)
    {
        Means = "A sort of part, and the defaults that it brings",
    };
}
