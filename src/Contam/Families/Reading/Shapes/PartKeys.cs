using System.Collections.Immutable;
using Contam.Families.Quantities;

namespace Contam.Families.Reading.Shapes;

/// <summary>The keys of a part.</summary>
internal static class PartKeys
{
    /// <summary>A name of debris.</summary>
    public static readonly IdShape DebrisName = new("a sort of debris", "metal");

    /// <summary>A reference to a part, or to every one of a repeated part.</summary>
    public static readonly IdShape Reference = CarrierKeys.Reference;

    public static readonly Key<string> Name = new(new WordsShape())
    {
        Name = "name", Means = "The name that people read; default: the id, spaced and capitalised. A repeated part gets its number behind it", Example = "High-pressure injection pump",
    };

    public static readonly Key<string> Kind = new(new IdShape("a kind of part", "filter"))
    {
        Name = "kind", Means = "What sort of part it is; the kind brings the defaults. The shop standard lists the kinds", Example = "injection-pump",
    };

    public static readonly Key<int> Count = new(new WholeShape(1))
    {
        Name = "count", Means = "How often a repeated part (`injector-#`) stands: it becomes injector-1, injector-2 and so on", Example = "4",
    };

    public static readonly Key<Likelihood> Likely = new(new ChoiceShape<Likelihood>(
        "how likely it sheds", ("rare", Likelihood.Rare), ("occasional", Likelihood.Occasional), ("common", Likelihood.Common)))
    {
        Name = "likely", Means = "How likely the part is to shed this debris when it fails", Example = "common",
    };

    public static readonly Key<ParticleSize> UpTo = new(new QuantityShape<ParticleSize>(Dimension.Length, ParticleSize.TryParse, size => size == ParticleSize.Zero))
    {
        Name = "up-to", Means = "The largest particle it sheds; default: unlimited. Not for debris without size, such as water", Example = "400 um",
    };

    public static readonly Key<bool> Magnetic = new(new FlagShape())
    {
        Name = "magnetic", Means = "Whether what it sheds is magnetic; leave it out where that is not known", Example = "false",
    };

    public static readonly Key<DebrisForm> Form = new(new ChoiceShape<DebrisForm>(
        "the form of debris", ("flakes", DebrisForm.Flakes), ("slivers", DebrisForm.Slivers), ("grains", DebrisForm.Grains), ("fuzz", DebrisForm.Fuzz)))
    {
        Name = "form", Means = "What it looks like; leave it out where that is not known", Example = "flakes",
    };

    public static readonly FormShape Shed = new("shed", "a shed debris", Likely, UpTo, Magnetic, Form)
    {
        Required = [Likely], Short = Likely, ShortSlip = written => ParticleSize.TryParse(written, out _, out _) ? $"say how likely, and the size with `up-to`: `{{likely: occasional, up-to: {written}}}`" : null, Means = "How a part sheds one debris; how likely alone is the short form",
    };

    public static readonly Key<ImmutableArray<Entry<string, Form>>> Sheds = new(new EntriesShape<string, Form>(
        DebrisName, Shed, "a mapping from debris to how likely it is shed", DebrisName.Pattern, ShedsOf))
    {
        Name = "sheds", Means = "What the part sheds when it fails, by debris", Example = "{metal: {likely: common, up-to: 400 um}, rubber: rare}",
    };

    public static readonly Key<ImmutableArray<Entry<string, HoldSaid>>> Holds = new(new EntriesShape<string, HoldSaid>(
        DebrisName, new HoldShape(), "a mapping from debris to what is held back", DebrisName.Pattern, HoldsOf))
    {
        Name = "holds", Means = "What the part holds back, by debris: particles larger than a length, or `all`. Relied on only with an absolute rating and no bypass", Example = "{water: all, metal: 30 um}",
    };

    public static readonly Key<bool> Rating = new(new ChoiceShape<bool>("a rating", ("absolute", true), ("nominal", false)))
    {
        Name = "rating", Means = "Whether what it holds is an absolute or a nominal rating; default: nominal, which is not relied on", Example = "absolute",
    };

    public static readonly Key<bool> Bypass = new(new FlagShape("write `true` where it opens past itself, at whatever pressure; `false` where it has no bypass"))
    {
        Name = "bypass", Means = "Whether it opens past itself when loaded, so that it is not relied on; default: false", Example = "true",
    };

    public static readonly Key<ParticleSize> Passage = new(new QuantityShape<ParticleSize>(Dimension.Length, ParticleSize.TryParse))
    {
        Name = "passage", Means = "The widest a hard particle may be and still go through to what lies downstream; default: not limited", Example = "60 um",
    };

    public static readonly Key<ParticleSize> Clearance = new(new QuantityShape<ParticleSize>(Dimension.Length, ParticleSize.TryParse))
    {
        Name = "clearance", Means = "The running clearance that debris of that size harms", Example = "3 um",
    };

    public static readonly Key<bool> Removable = new(new FlagShape())
    {
        Name = "removable", Means = "Whether the part comes off to be treated; default: as its kind says", Example = "false",
    };

    public static readonly Key<ImmutableArray<Located<string>>> Access = new(new ListShape<string>(Reference, "a list of parts") { EachOnce = true })
    {
        Name = "access", Means = "Parts that must be off before this one can be got at, contaminated or not", Example = "[intake-hose]",
    };

    public static readonly Key<ImmutableArray<Located<string>>> Seals = new(new ListShape<string>(
        new IdShape("the name of a seal", "bowl-o-ring", RepeatMark.Anywhere), "a list of seals"))
    {
        Name = "seals", Means = "Single-use seals, renewed whenever the part is opened; the same name twice means two pieces, `-#` is the number of a repeated part. Takes the place of the kind's seals", Example = "[separator-bowl-o-ring]",
    };

    public static readonly Key<double> LookMinutes = new(new NumberShape("minutes"))
    {
        Name = "minutes", Means = "Minutes of a technician's time for the look", Example = "5",
    };

    public static readonly Key<Shows> Shows = new(new ChoiceShape<Shows>(
        "how surely a look shows debris", ("good", Families.Shows.Good), ("fair", Families.Shows.Fair), ("poor", Families.Shows.Poor)))
    {
        Name = "shows", Means = "How surely the look shows debris that is there; a clean finding counts only where it is good; default: poor", Example = "good",
    };

    public static readonly Key<string> How = new(new WordsShape())
    {
        Name = "how", Means = "How the look is done, in words", Example = "draw the bowl into a clear jar and let it stand",
    };

    public static readonly Key<ImmutableArray<Located<string>>> LookAccess = new(new ListShape<string>(Reference, "a list of parts") { EachOnce = true })
    {
        Name = "access", Means = "What must be off for the look; default: what must be off for any work at the part. `[]` for a look at the part as it stands, which opens nothing", Example = "[injector-#]",
    };

    public static readonly Key<bool> UsesUp = new(new FlagShape())
    {
        Name = "uses-up", Means = "Whether the look uses the part up, so that a new one is needed whatever is seen; default: as its kind says", Example = "true",
    };

    public static readonly Key<bool> TakesOff = new(new FlagShape())
    {
        Name = "takes-off", Means = "Whether the look takes the part off its place; what a look uses up it takes off; default: false", Example = "true",
    };

    public static readonly Key<Form> Inspect = new(new FormShape("inspect", "a look", LookMinutes, Shows, How, LookAccess, UsesUp, TakesOff)
    {
        Means = "A look at a part: how long it takes, how surely it shows debris, how it is done",
    })
    {
        Name = "inspect", Means = "A place to look at; leave it out where debris cannot be looked for", Example = "{minutes: 5, shows: good, how: draw the bowl into a clear jar}",
    };

    public static readonly Key<double> Days = new(new NumberShape("days"))
    {
        Name = "days", Means = "Working days away", Example = "4",
    };

    public static readonly Key<string> Who = new(new WordsShape())
    {
        Name = "who", Means = "Who does it", Example = "injection workshop",
    };

    public static readonly Key<Form> SendOut = new(new FormShape("send-out", "a send-out", Days, Who)
    {
        AtLeast = 1, Means = "The part leaves the shop to be treated and uses no technician's time meanwhile",
    })
    {
        Name = "send-out", Means = "The part leaves the shop to be treated", Example = "{days: 4, who: injection workshop}",
    };

    public static readonly Key<Form> Minutes = new(MinutesKeys.Shape)
    {
        Name = "minutes", Means = "Minutes by task, which take the place of the kind's and the standard's", Example = "{remove: 40, refit: 50, test: 0}",
    };

    public static readonly Key<TimeSpan> Lead = new(new QuantityShape<TimeSpan>(Dimension.Duration, Quantity.TryParse))
    {
        Name = "lead", Means = "How long a new one takes to come", Example = "12 d",
    };

    public static readonly Key<Volume> Volume = new(new QuantityShape<Volume>(Dimension.Volume, Quantity.TryParse, volume => volume.CubicMetres == 0))
    {
        Name = "volume", Means = "What it holds when full", Example = "60 L",
    };

    public static readonly Key<Length> Bore = new(new QuantityShape<Length>(Dimension.Length, Quantity.TryParse, length => length.Metres == 0))
    {
        Name = "bore", Means = "Its inner diameter", Example = "9.5 mm",
    };

    public static readonly Key<Length> Length = new(new QuantityShape<Length>(Dimension.Length, Quantity.TryParse, length => length.Metres == 0))
    {
        Name = "length", Means = "Its length along the flow", Example = "1.8 m",
    };

    private static string ShedsOf(string? written) =>
        $"say how likely it sheds each, for instance `{{{(written is not null && DebrisName.IsId(written) ? written : "metal")}: occasional}}`";

    private static string HoldsOf(string? written) =>
        $"say of which debris, for instance `{{metal: {(written is not null && ParticleSize.TryParse(written, out _, out _) ? written : "10 um")}}}`";

    private static readonly FormerKey Critical = new(
        "critical",
        "write `cleared-by: nothing` for a part that is treated whatever is seen elsewhere, or `cleared-by: two-looks` for one that two clean places on every way spare");

    private static readonly ImmutableArray<Key> Adjustable =
    [
        Name, Kind, Sheds, Holds, Rating, Bypass, Passage, Clearance, KindPartKeys.ClearedBy, KindPartKeys.TestAt, Removable,
        Access, CarrierKeys.StandsOn, CarrierKeys.RidesOn, CarrierKeys.Together, CarrierKeys.Assembly,
        Seals, Inspect, SendOut, Minutes, Lead, Volume, Bore, Length, MeantKeys.Meant,
    ];

    /// <summary>A part.</summary>
    public static readonly FormShape Part = new("part", "a part", [Kind, Name, Count, .. Adjustable[2..]])
    {
        Required = [Kind], Former = [Critical], Means = "Anything that debris can reach",
    };

    /// <summary>What a file may change about a part that a module brought.</summary>
    public static readonly FormShape Adjustment = new("adjustment", "an adjustment", Adjustable)
    {
        AtLeast = 1, Former = [Critical], Means = "Keys of a part that take the place of those the module says; each as a whole",
    };
}
