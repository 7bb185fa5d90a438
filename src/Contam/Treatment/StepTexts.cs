using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Treatment;

/// <summary>What a caution or a step text bears on. Each that is not <c>null</c> must fit.</summary>
/// <param name="Circuit">The name of a circuit.</param>
/// <param name="Fluid">The id of a fluid, what it is, or a group of these: see <see cref="FluidSort"/>.</param>
/// <param name="Treatment">A treatment.</param>
/// <param name="Action">An action of a step.</param>
/// <param name="Kind">The name of a kind of part.</param>
/// <param name="Debris">The name of a sort of debris.</param>
public sealed record BearsOn(string? Circuit, string? Fluid, TreatmentKind? Treatment, StepAction? Action, string? Kind, string? Debris)
{
    /// <summary>Nothing said: it bears on everything.</summary>
    public static BearsOn Everything { get; } = new(null, null, null, null, null, null);

    /// <summary>What the family is: engine, gearcase, gearbox or hydraulic-unit.</summary>
    public string? Machine { get; init; }

    /// <summary>A fluid, as in <see cref="Fluid"/>, that runs somewhere in the family, whether its circuit is opened or not.</summary>
    public string? Has { get; init; }
}

/// <summary>A caution, shown once and named by its number on the steps that it bears on.</summary>
/// <param name="For">What it bears on; all members <c>null</c> for the whole procedure.</param>
/// <param name="Say">The text.</param>
/// <param name="Source">The published source, or <c>common practice, no source</c>.</param>
/// <param name="Place">Where it is written.</param>
public sealed record CautionRule(BearsOn For, string Say, string Source, SourceSpan Place);

/// <summary>Something that is used up.</summary>
/// <param name="Item">What.</param>
/// <param name="Quantity">How much, for each <paramref name="Per"/>.</param>
/// <param name="Unit">L, m or another unit; <c>null</c> for pieces.</param>
/// <param name="Per">What the quantity is for.</param>
public sealed record Supply(string Item, double Quantity, string? Unit, SupplyPer Per);

/// <summary>What a step or a method takes.</summary>
/// <param name="Tools">Tools, in the order in which they are written.</param>
/// <param name="Supplies">What is used up.</param>
/// <param name="Hands">How many people it takes.</param>
public sealed record Needs(ImmutableArray<string> Tools, ImmutableArray<Supply> Supplies, int Hands)
{
    /// <summary>One person, and nothing else.</summary>
    public static Needs Nothing { get; } = new([], [], 1);
}

/// <summary>
/// How a step is worded. Placeholders: <c>{part}</c>, <c>{parts}</c>, <c>{kind}</c>, <c>{debris}</c>, <c>{circuit}</c>, <c>{fluid}</c>, <c>{litres}</c>, <c>{size}</c>,
/// <c>{who}</c>, <c>{days}</c>, <c>{hours}</c>, <c>{beyond}</c>, <c>{upstream}</c>, <c>{how}</c>, <c>{limit}</c>, <c>{seals}</c>.
/// </summary>
/// <param name="For">Which steps.</param>
/// <param name="Say">What is done, with what.</param>
/// <param name="Until">Until when; empty for not said.</param>
/// <param name="StopIf">What would make one stop and think again; empty for not said.</param>
/// <param name="Place">Where it is written.</param>
public sealed record StepWording(BearsOn For, string Say, string Until, string StopIf, SourceSpan Place)
{
    /// <summary>The id of the method that it uses, or <c>null</c>.</summary>
    public string? Method { get; init; }

    /// <summary>What it takes beyond the method.</summary>
    public Needs Needs { get; init; } = Needs.Nothing;
}

/// <summary>A way of working that many steps share: said once in a plan. Of several with one id the closest that fits is used.</summary>
/// <param name="Id">Its id.</param>
/// <param name="For">Which steps.</param>
/// <param name="Title">Its name for people.</param>
/// <param name="Say">What is done, with what.</param>
/// <param name="Until">Until when; empty for not said.</param>
/// <param name="StopIf">What would make one stop and think again; empty for not said.</param>
/// <param name="Place">Where it is written.</param>
public sealed record Method(string Id, BearsOn For, string Title, string Say, string Until, string StopIf, SourceSpan Place)
{
    /// <summary>What it takes.</summary>
    public Needs Needs { get; init; } = Needs.Nothing;
}

/// <summary>
/// A step of the frame: what comes before and after the work on the parts. Of several in one section with one name the closest that fits is used; its
/// place is that of the first of them.
/// </summary>
/// <param name="Section">Where it stands.</param>
/// <param name="Step">Its name. Some names have a meaning; see <c>FrameNames</c>.</param>
/// <param name="For">Where it is used.</param>
/// <param name="Say">What is done, with what.</param>
/// <param name="Until">Until when; empty for not said.</param>
/// <param name="StopIf">What would make one stop and think again; empty for not said.</param>
/// <param name="Place">Where it is written.</param>
public sealed record FrameStep(FrameSection Section, string Step, BearsOn For, string Say, string Until, string StopIf, SourceSpan Place)
{
    /// <summary>A technician's minutes, for each part where it is for parts; <c>null</c> for not said.</summary>
    public double? Minutes { get; init; }

    /// <summary>When it is due.</summary>
    public FrameDue Due { get; init; }

    /// <summary>The id of the method that it uses, or <c>null</c>.</summary>
    public string? Method { get; init; }

    /// <summary>What it takes beyond the method.</summary>
    public Needs Needs { get; init; } = Needs.Nothing;
}
