using System.Collections.Immutable;

namespace Contam.Authoring;

/// <summary>What a column of a table of parts or joints holds.</summary>
/// <param name="Title">Its title, as it is written and read.</param>
/// <param name="Means">What stands in it, in a sentence without a full stop at its end.</param>
public sealed record TableColumn(string Title, string Means);

/// <summary>The columns that the tables of a family have, in the order in which they are written.</summary>
public static class TableColumns
{
    /// <summary>The columns of the table of joints; the first three must be there.</summary>
    public static ImmutableArray<TableColumn> Joints { get; } =
    [
        new("circuit", "The circuit that the joint belongs to"),
        new("from", "The part upstream"),
        new("to", "The part downstream"),
        new("fluid", "The fluid of the circuit; it is enough to say it in one row"),
        new("when", "The states in which something can pass: running, cranking, stopped; never; empty for all"),
        new("passage", "The widest a hard particle may be and still pass, with its unit"),
        new("only-if-failed", "The part that must have failed for the joint to be open"),
        new("both-ways", "yes where it passes both ways"),
        new("link", "yes where it stands for itself and on no run"),
    ];

    /// <summary>The columns of the table of parts; the first must be there.</summary>
    public static ImmutableArray<TableColumn> Parts { get; } =
    [
        new("id", "The part; words are joined by hyphens"),
        new("kind", "What sort of part it is; empty where the last word of the id says it"),
        new("name", "The name that people read"),
        new("count", "How often a part whose id ends in -# stands"),
        new("sheds", "What it sheds, parted by semicolons: metal common 400 um magnetic flakes; rubber rare"),
        new("holds", "What it holds back, parted by semicolons: metal 30 um; water all"),
        new("rating", "absolute or nominal"),
        new("bypass", "yes where it opens past itself"),
        new("passage", "The widest a hard particle may be and still go through"),
        new("clearance", "The running clearance"),
        new("cleared-by", "nothing, two-looks or one-look"),
        new("test-at", "bench, built-up or fitted"),
        new("removable", "yes or no"),
        new("access", "Parts that must be off before, parted by semicolons"),
        new("stands-on", "Parts that it stands on, parted by semicolons"),
        new("rides-on", "The part that it rides on"),
        new("together", "Parts that are renewed with it, parted by semicolons"),
        new("assembly", "The part that it is inside of"),
        new("seals", "Single-use seals, parted by semicolons; none where there are none"),
        new("look-minutes", "Minutes that a look takes"),
        new("look-shows", "good, fair or poor"),
        new("look-how", "How the look is done"),
        new("look-access", "What must be off for the look alone; none for nothing"),
        new("look-uses-up", "yes or no: whether the look uses the part up"),
        new("look-takes-off", "yes where the look takes the part off"),
        new("away-days", "Working days away, where it leaves the shop"),
        new("away-who", "Who does it"),
        new("minutes", "Minutes by task, parted by semicolons: remove 40; refit 50"),
        new("lead", "How long a new one takes to come"),
        new("volume", "What it holds when full"),
        new("bore", "Its inner diameter"),
        new("length", "Its length along the flow"),
        new("meant", "Warnings that are meant so, parted by semicolons: dead-end=it ends over the side"),
    ];
}
