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
/// <param name="mend">What a person may do who wrote something else; is given the text where one was written. <c>null</c> for an example of the form alone.</param>
internal sealed class EntriesShape<TKey, TValue>(Shape<TKey> key, Shape<TValue> item, string called, string keyPattern, Func<string?, string>? mend = null)
    : Shape<ImmutableArray<Entry<TKey, TValue>>>
    where TKey : notnull
    where TValue : notnull
{
    /// <inheritdoc/>
    public override string Due => called;

    /// <inheritdoc/>
    protected override string MendOf(TextNode written) => mend?.Invoke(written.IsNothing ? null : written.Value) ?? "write `name: value` for each, in braces or one on each line, indented";

    /// <inheritdoc/>
    protected override string MendOfList(ListNode written) => mend?.Invoke(written.Items is [TextNode only] ? only.Value : null) ?? "write `name: value` for each, without the dashes or brackets of a list";

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
        for (int i = 0; i < map.Entries.Count; i++)
        {
            (TextNode written, SheetNode entry) = map.Entries[i];
            if (DecimalCommas.Raise(map, i, context))
            {
                i++;
                continue;
            }

            // `hose {kind: hose}`: what stands behind the colon is the other half of what should stand between braces.
            if (written.Value.Contains(" {", StringComparison.Ordinal) && !key.TryRead(written, context, out _))
                continue;
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
