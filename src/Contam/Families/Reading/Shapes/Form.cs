using System.Diagnostics.CodeAnalysis;
using Contam.Families.Reading.Sheets;

namespace Contam.Families.Reading.Shapes;

/// <summary>
/// A mapping that was read by its <see cref="FormShape"/>: for every key that it has the value, and where both stand. Holds on to nothing of the
/// tree that it was read from.
/// </summary>
/// <param name="sheet">The sheet it stands in.</param>
/// <param name="node">The mapping as written.</param>
internal sealed class Form(Sheet sheet, SheetNode node)
{
    private readonly int start = node.Start;
    private Entry[] entries = node.ItemCount == 0 ? [] : new Entry[node.ItemCount];
    private int count;

    /// <summary>The sheet it stands in.</summary>
    public Sheet Sheet { get; } = sheet;

    /// <summary>Where it begins.</summary>
    public SourceSpan Place => Sheet.PlaceAt(start);

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
        where T : notnull
    {
        int index = IndexOf(key);
        return index >= 0 && entries[index].Read is T read ? new Located<T>(read, Sheet, entries[index].Start, entries[index].End) : null;
    }

    /// <summary>Where a key is written, or where its value begins for one that needs no key to be written.</summary>
    public SourceSpan KeyPlace(Key key) => Sheet.PlaceAt(entries[IndexOf(key)].KeyStart);

    /// <summary>Where the value of a key begins.</summary>
    public SourceSpan ValuePlace(Key key) => Sheet.PlaceAt(entries[IndexOf(key)].Start);

    /// <summary>How many items or entries are written in the value of a key, whether they fit or not.</summary>
    public int WrittenIn(Key key) => entries[IndexOf(key)].Items;

    /// <summary>The keys that it has, in file order.</summary>
    public IEnumerable<Key> Keys => entries.Take(count).Select(entry => entry.Key);

    /// <summary>Lets go of the value of a key that nobody asks for any more; the key itself stays.</summary>
    public void Forget(Key key)
    {
        if (IndexOf(key) is int index and >= 0)
            entries[index] = entries[index] with { Read = null };
    }

    /// <summary>Puts in what was read.</summary>
    internal void Add(Key key, TextNode? written, SheetNode value, object? read)
    {
        if (count == entries.Length)
            Array.Resize(ref entries, Math.Max(4, 2 * count));
        int end = value is TextNode text ? text.End : value.Start;
        entries[count++] = new Entry(key, read, (written ?? value).Start, value.Start, end, value.ItemCount);
    }

    private int IndexOf(Key key)
    {
        for (int i = 0; i < count; i++)
        {
            if (ReferenceEquals(entries[i].Key, key))
                return i;
        }

        return -1;
    }

    private readonly record struct Entry(Key Key, object? Read, int KeyStart, int Start, int End, int Items);
}
