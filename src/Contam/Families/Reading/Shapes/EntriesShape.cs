using System.Collections.Immutable;
using Contam.Families.Reading.Sheets;

namespace Contam.Families.Reading.Shapes;

/// <summary>An entry of a mapping whose keys are names that people choose.</summary>
/// <param name="Key">The key.</param>
/// <param name="Value">The value.</param>
/// <param name="IsSound">Whether the value fits; else it is the default, and a problem was raised.</param>
internal readonly record struct Entry<TKey, TValue>(Located<TKey> Key, Located<TValue?> Value, bool IsSound);

/// <summary>A mapping whose keys are names that people choose, each value of one shape. Entries whose key does not fit are left out.</summary>
/// <param name="key">What a key may look like.</param>
/// <param name="item">What a value may look like.</param>
/// <param name="called">What it is called in a message, for instance <c>a mapping from ids to parts</c>.</param>
/// <param name="keyPattern">The pattern of its keys, for the schema.</param>
internal sealed class EntriesShape<TKey, TValue>(Shape<TKey> key, Shape<TValue> item, string called, string keyPattern)
    : Shape<ImmutableArray<Entry<TKey, TValue>>>
    where TKey : notnull
    where TValue : notnull
{
    /// <inheritdoc/>
    public override string Due => called;

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, out ImmutableArray<Entry<TKey, TValue>> value)
    {
        value = [];
        if (node is not MapNode map)
        {
            RaiseWrongShape(node, context);
            return false;
        }

        var read = ImmutableArray.CreateBuilder<Entry<TKey, TValue>>(map.Entries.Count);
        foreach ((TextNode written, SheetNode entry) in map.Entries)
        {
            bool isSound = item.TryRead(entry, context, out TValue? one);
            if (key.TryRead(written, context, out TKey? name))
            {
                read.Add(new Entry<TKey, TValue>(
                    new Located<TKey>(name, context.Sheet, written), new Located<TValue?>(one, context.Sheet, entry), isSound));
            }
        }

        value = read.DrainToImmutable();
        return true;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema)
    {
        schema.Type("object");
        schema.Nested("patternProperties", within => within.Nested(keyPattern, item.WriteSchema));
        schema.Flag("additionalProperties", false);
    }
}
