using System.Collections.Immutable;

namespace Contam.Families.Reading.Shapes;

/// <summary>The keys that say what a part sits on or in, and what it is renewed with.</summary>
internal static class CarrierKeys
{
    /// <summary>A reference to a part, or to every one of a repeated part.</summary>
    public static readonly IdShape Reference = new("the id of a part", "oil-filter", RepeatMark.AtEnd);

    public static readonly Key<ImmutableArray<Located<string>>> StandsOn = new(new ListShape<string>(Reference, "a list of parts") { EachOnce = true, MayStandAlone = true })
    {
        Name = "stands-on",
        Means = "What the part stands on, an id or a list: it comes off before any of them comes off, and goes on after all of them are on",
        Example = "[engine-block]",
    };

    public static readonly Key<string> RidesOn = new(Reference)
    {
        Name = "rides-on",
        Means = "What the part rides on: it comes off with that part or after it, is parted from it on the bench, and is built up before that part goes on",
        Example = "cylinder-head",
    };

    public static readonly Key<ImmutableArray<Located<string>>> Together = new(new ListShape<string>(Reference, "a list of parts") { EachOnce = true, MayStandAlone = true })
    {
        Name = "together",
        Means = "Parts that are renewed with this one as a set, an id or a list; it is enough to say it at one of them",
        Example = "[drive-gear]",
    };

    public static readonly Key<string> Assembly = new(Reference)
    {
        Name = "assembly",
        Means = "The part that this one is inside of: where that one is renewed whole, this one is renewed with it",
        Example = "turbocharger",
    };
}
