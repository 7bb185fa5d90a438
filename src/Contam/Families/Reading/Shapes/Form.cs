using System.Diagnostics.CodeAnalysis;
using Contam.Families.Reading.Sheets;

namespace Contam.Families.Reading.Shapes;

/// <summary>A mapping that was read by its <see cref="FormShape"/>: for every key that it has the value, and where both stand.</summary>
/// <param name="sheet">The sheet it stands in.</param>
/// <param name="node">The mapping as written.</param>
internal sealed class Form(Sheet sheet, SheetNode node)
{
    private readonly List<(Key Key, TextNode? Written, SheetNode Value, object? Read)> entries = [];

    /// <summary>The sheet it stands in.</summary>
    public Sheet Sheet { get; } = sheet;

    /// <summary>Where it begins.</summary>
    public SourceSpan Place => Sheet.PlaceOf(node);

    /// <summary>Whether it has the key, with a sound value or not.</summary>
    public bool Has(Key key) => IndexOf(key) >= 0;

    /// <summary>The value of a key; <c>false</c> where the key is missing or its value does not fit.</summary>
    public bool TryGet<T>(Key<T> key, [MaybeNullWhen(false)] out T value)
        where T : notnull
    {
        int index = IndexOf(key);
        if (index >= 0 && entries[index].Read is T read)
        {
            value = read;
            return true;
        }

        value = default;
        return false;
    }

    /// <summary>The value of a key, or <paramref name="otherwise"/>.</summary>
    public T Get<T>(Key<T> key, T otherwise)
        where T : notnull => TryGet(key, out T? value) ? value : otherwise;

    /// <summary>The value of a key, or <c>null</c>.</summary>
    public T? Find<T>(Key<T> key)
        where T : struct => TryGet(key, out T value) ? value : null;

    /// <summary>The value of a key with its place, or <c>null</c>.</summary>
    public Located<T>? Locate<T>(Key<T> key)
        where T : notnull => TryGet(key, out T? value) ? new Located<T>(value, Sheet, entries[IndexOf(key)].Value) : null;

    /// <summary>Where a key is written, or where its value begins for one that needs no key to be written.</summary>
    public SourceSpan KeyPlace(Key key)
    {
        (_, TextNode? written, SheetNode value, _) = entries[IndexOf(key)];
        return Sheet.PlaceOf(written ?? value);
    }

    /// <summary>Where the value of a key begins.</summary>
    public SourceSpan ValuePlace(Key key) => Sheet.PlaceOf(entries[IndexOf(key)].Value);

    /// <summary>The keys that it has, in file order.</summary>
    public IEnumerable<Key> Keys => entries.Select(entry => entry.Key);

    /// <summary>Puts in what was read.</summary>
    internal void Add(Key key, TextNode? written, SheetNode value, object? read) => entries.Add((key, written, value, read));

    private int IndexOf(Key key)
    {
        for (int i = 0; i < entries.Count; i++)
        {
            if (ReferenceEquals(entries[i].Key, key))
                return i;
        }

        return -1;
    }
}
