using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>A mapping with known keys.</summary>
/// <param name="name">Its name in the schema, one word, for instance <c>part</c>.</param>
/// <param name="called">What it is called in a message, for instance <c>a part</c>.</param>
/// <param name="keys">The keys that it may have, in the order in which people are told of them.</param>
internal sealed class FormShape(string name, string called, params ImmutableArray<Key> keys) : Shape<Form>
{
    private readonly Dictionary<string, Key> keyOf = keys.ToDictionary(key => key.Name, StringComparer.Ordinal);

    /// <summary>Its name in the schema.</summary>
    public string Name { get; } = name;

    /// <summary>What it is called in a message.</summary>
    public string Called { get; } = called;

    /// <summary>The keys that it may have.</summary>
    public ImmutableArray<Key> Keys { get; } = keys;

    /// <summary>The keys that it must have.</summary>
    public ImmutableArray<Key> Required { get; init; } = [];

    /// <summary>The key that may be left out when it is the only one: its value alone stands for the mapping. <c>null</c> for none.</summary>
    public Key? Short { get; init; }

    /// <summary>What to write where something stands for the mapping that belongs under another key; answers <c>null</c> for all else.</summary>
    public Func<string, string?>? ShortSlip { get; init; }

    /// <summary>How many keys it must have at least.</summary>
    public int AtLeast { get; init; }

    /// <summary>Keys that it had once.</summary>
    public ImmutableArray<FormerKey> Former { get; init; } = [];

    /// <summary>What it is, for the schema.</summary>
    public string Means { get; init; } = "";

    /// <inheritdoc/>
    public override string Due => Short is null
        ? $"a mapping with the keys of {Called}"
        : $"{Short.AnyShape.Due}, or a mapping with the keys of {Called}";

    /// <inheritdoc/>
    protected override string MendOf(TextNode written)
    {
        Key? first = Required.FirstOrDefault();
        return first is null ? "" : $"write its keys in braces, for instance `{{{first.Name}: {(first.Name == "kind" && !written.IsNothing && written.Value.All(one => char.IsAsciiLetter(one) || one == '-') ? written.Value : first.Example)}}}`";
    }

    /// <inheritdoc/>
    protected override string MendOfList(ListNode written) => $"write its keys in braces, without the brackets or dashes of a list: `{{{(Required.FirstOrDefault() ?? Keys[0]).Name}: {(Required.FirstOrDefault() ?? Keys[0]).Example}}}`";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, [MaybeNullWhen(false)] out Form value)
    {
        value = null;
        if (Short is not null && node is not MapNode and not BrokenNode)
        {
            value = new Form(context.Sheet, node.Start, 1);
            if (node is TextNode alone && ShortSlip?.Invoke(alone.Value) is { } slip)
            {
                context.Problems.Add(ShapeProblems.WrongShape(context.PlaceOf(node), Short.AnyShape.Due, Wording.Quoted(alone.Value), slip));
                value.Add(Short, null, node, null);
                return true;
            }

            value.Add(Short, null, node, Short.AnyShape.ReadBoxed(node, context));
            return true;
        }

        if (node is not MapNode map)
        {
            RaiseWrongShape(node, context);
            return false;
        }

        value = new Form(context.Sheet, map.Start, map.Entries.Count);
        List<(TextNode Written, SheetNode Value)>? unknown = null;
        for (int i = 0; i < map.Entries.Count; i++)
        {
            (TextNode written, SheetNode entry) = map.Entries[i];
            if (DecimalCommas.Raise(map, i, context))
            {
                i++;
                if (keyOf.TryGetValue(written.Value, out Key? cut))
                    value.Add(cut, written, entry, null);
                continue;
            }

            if (keyOf.TryGetValue(written.Value, out Key? key) && ListsWithoutBrackets.Raise(map, i, key, context) is > 0 and int items)
            {
                value.Add(key, written, entry, null);
                i += items;
                continue;
            }

            if (key is not null)
                value.Add(key, written, entry, key.AnyShape.ReadBoxed(entry, context));
            else
                (unknown ??= []).Add((written, entry));
        }

        if (unknown is not null || IsAnyMissing(value))
        {
            List<Key> missing = MissingOf(value);
            RaiseUnknown(unknown ?? [], missing, context);
            RaiseMissing(map, missing, context);
        }

        if (map.Entries.Count < AtLeast)
            context.Problems.Add(ShapeProblems.NoKey(context.PlaceOf(map), Called, Keys.Select(key => key.Name)));
        return true;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema) => schema.Refer(this);

    private bool IsAnyMissing(Form form)
    {
        foreach (Key key in Required)
        {
            if (!form.Has(key))
                return true;
        }

        return false;
    }

    private List<Key> MissingOf(Form form) => [.. Required.Where(key => !form.Has(key))];

    /// <summary>A mistyped key is one mistake: where it was likely meant for a key that is missing, that key is not missed as well.</summary>
    private void RaiseUnknown(List<(TextNode Written, SheetNode Value)> unknown, List<Key> missing, SheetContext context)
    {
        foreach ((TextNode written, SheetNode value) in unknown)
        {
            // Words without even a colon, or several words, are what a text between braces leaves behind its comma.
            bool isWithoutColon = value is TextNode { IsNothing: true } && value.Start == written.End;
            if (isWithoutColon && written.Value.IndexOf(':', StringComparison.Ordinal) is > 0 and var colon && keyOf.TryGetValue(written.Value[..colon], out Key? cut))
            {
                missing.Remove(cut);
                context.Problems.Add(ShapeProblems.NoSpaceAfterColon(context.PlaceOf(written), written.Value));
                continue;
            }

            if (isWithoutColon || (written.Value.Contains(' ', StringComparison.Ordinal) && context.Sheet.Source.IsAfterComma(written.Start)))
            {
                context.Problems.Add(ShapeProblems.CommaInText(context.PlaceOf(written), written.Value));
                continue;
            }

            if (Former.FirstOrDefault(key => key.Name == written.Value) is FormerKey former)
            {
                context.Problems.Add(ShapeProblems.FormerKey(context.PlaceOf(written), former.Name, Called, former.Mend));
                continue;
            }

            string? near = context.Problems.NearTo(written.Value, Keys.Select(key => key.Name)) ?? NearName.Beginning(written.Value, Keys.Select(key => key.Name));
            missing.RemoveAll(key => key.Name == near);
            context.Problems.Add(ShapeProblems.UnknownKey(context.PlaceOf(written), written.Value, Called, near, Keys.Select(key => key.Name)));
        }
    }

    private void RaiseMissing(MapNode map, List<Key> missing, SheetContext context)
    {
        foreach (Key key in missing)
            context.Problems.Add(ShapeProblems.MissingKey(context.PlaceOf(map), Called, key.Name, key.Example));
    }
}
