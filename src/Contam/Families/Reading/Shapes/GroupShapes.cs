using System.Collections.Immutable;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>A list, each item of one shape. Items that do not fit are left out after their problem was raised.</summary>
/// <param name="item">What an item may look like.</param>
/// <param name="called">What it is called in a message, for instance <c>a list of parts</c>.</param>
internal sealed class ListShape<T>(Shape<T> item, string called) : Shape<ImmutableArray<Located<T>>>
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
        var firstOf = new Dictionary<T, SourceSpan>();
        foreach (SheetNode entry in items)
        {
            if (!item.TryRead(entry, context, out T? one))
                continue;
            if (EachOnce && !firstOf.TryAdd(one, context.PlaceOf(entry)))
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

/// <summary>An entry of a mapping whose keys are names that people choose.</summary>
/// <param name="Key">The key.</param>
/// <param name="Value">The value.</param>
/// <param name="IsSound">Whether the value fits; else it is the default, and a problem was raised.</param>
internal readonly record struct Entry<TKey, TValue>(Located<TKey> Key, Located<TValue?> Value, bool IsSound);

/// <summary>Questions about sections whose keys are names that people choose.</summary>
internal static class Sections
{
    /// <summary>
    /// Whether everything that a section names is known: it is not there at all, or it was read and none of its names was dropped. Where it is
    /// not, a name that is not found may have been meant, and is not told as well.
    /// </summary>
    public static bool IsWhole<TKey, TValue>(Form form, Key<ImmutableArray<Entry<TKey, TValue>>> section)
        where TKey : notnull
        where TValue : notnull
    {
        if (!form.Has(section))
            return true;
        return form.Locate(section) is Located<ImmutableArray<Entry<TKey, TValue>>> read
            && read.Node is MapNode map && map.Entries.Count == read.Value.Length;
    }
}

/// <summary>A mapping whose keys are names that people choose, each value of one shape. Entries whose key does not fit are left out.</summary>
/// <param name="key">What a key may look like.</param>
/// <param name="value">What a value may look like.</param>
/// <param name="called">What it is called in a message, for instance <c>a mapping from ids to parts</c>.</param>
/// <param name="keyPattern">The pattern of its keys, for the schema.</param>
internal sealed class EntriesShape<TKey, TValue>(Shape<TKey> key, Shape<TValue> value, string called, string keyPattern)
    : Shape<ImmutableArray<Entry<TKey, TValue>>>
    where TKey : notnull
    where TValue : notnull
{
    /// <inheritdoc/>
    public override string Due => called;

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, out ImmutableArray<Entry<TKey, TValue>> value1)
    {
        value1 = [];
        if (node is not MapNode map)
        {
            RaiseWrongShape(node, context);
            return false;
        }

        var read = ImmutableArray.CreateBuilder<Entry<TKey, TValue>>(map.Entries.Count);
        foreach ((TextNode written, SheetNode entry) in map.Entries)
        {
            bool isSound = value.TryRead(entry, context, out TValue? one);
            if (key.TryRead(written, context, out TKey? name))
            {
                read.Add(new Entry<TKey, TValue>(
                    new Located<TKey>(name, context.Sheet, written), new Located<TValue?>(one, context.Sheet, entry), isSound));
            }
        }

        value1 = read.DrainToImmutable();
        return true;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema)
    {
        schema.Type("object");
        schema.Nested("patternProperties", within => within.Nested(keyPattern, value.WriteSchema));
        schema.Flag("additionalProperties", false);
    }
}
