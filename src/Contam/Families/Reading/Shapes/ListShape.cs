using System.Collections.Immutable;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>A list, each item of one shape. Items that do not fit are left out after their problem was raised.</summary>
/// <param name="item">What an item may look like.</param>
/// <param name="called">What it is called in a message, for instance <c>a list of parts</c>.</param>
internal sealed class ListShape<T>(Shape<T> item, string called) : Shape<ImmutableArray<Located<T>>>, IListShape
    where T : notnull
{
    /// <summary>How many items it must have at least.</summary>
    public int AtLeast { get; init; }

    /// <summary>Whether one item may stand alone, without the list around it.</summary>
    public bool MayStandAlone { get; init; }

    /// <summary>Whether no item may stand twice.</summary>
    public bool EachOnce { get; init; }

    /// <summary>Whether a list counts as read only when every item fits.</summary>
    public bool AllOrNothing { get; init; }

    /// <inheritdoc/>
    public override string Due => MayStandAlone ? $"{item.Due}, or {called}" : called;

    /// <inheritdoc/>
    protected override string MendOf(TextNode written) => written.IsNothing
        ? "write a list in brackets, or leave the key out"
        : $"put brackets round it: {Wording.Quoted($"[{written.Value}]")}";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, out ImmutableArray<Located<T>> value)
    {
        value = [];
        List<SheetNode> items;
        if (node is ListNode list)
            items = list.Items;
        else if (MayStandAlone && node is TextNode { IsNothing: false })
            items = [node];
        else
        {
            RaiseWrongShape(node, context);
            return false;
        }

        if (items.Count < AtLeast)
        {
            context.Problems.Add(ShapeProblems.EmptyList(context.PlaceOf(node), called));
            return false;
        }

        var read = ImmutableArray.CreateBuilder<Located<T>>(items.Count);
        Dictionary<T, SourceSpan>? firstOf = EachOnce ? [] : null;
        foreach (SheetNode entry in items)
        {
            if (!item.TryRead(entry, context, out T? one))
                continue;
            if (firstOf is not null && !firstOf.TryAdd(one, context.PlaceOf(entry)))
                context.Problems.Add(ShapeProblems.TwiceInList(context.PlaceOf(entry), entry is TextNode text ? text.Value : "", firstOf[one]));
            else
                read.Add(new Located<T>(one, context.Sheet, entry));
        }

        bool whole = read.Count == items.Count;
        value = read.DrainToImmutable();
        return whole || !AllOrNothing;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema)
    {
        if (MayStandAlone)
            schema.AnyOf(item.WriteSchema, WriteList);
        else
            WriteList(schema);
    }

    private void WriteList(SchemaWriter schema)
    {
        schema.Type("array");
        schema.Nested("items", item.WriteSchema);
        if (AtLeast > 0)
            schema.Number("minItems", AtLeast);
        if (EachOnce)
            schema.Flag("uniqueItems", true);
    }
}
