using System.Diagnostics.CodeAnalysis;
using Contam.Families.Reading.Sheets;

namespace Contam.Families.Reading.Shapes;

/// <summary>
/// A mapping that was read by its <see cref="FormShape"/>: for every key that it has the value, and where both stand. Holds on to nothing of the
/// tree that it was read from.
/// </summary>
/// <param name="sheet">The sheet it stands in.</param>
/// <param name="start">The index of its first character in the file's text.</param>
/// <param name="written">How many entries are written in it.</param>
internal sealed class Form(Sheet sheet, int start, int written)
{
    private readonly List<Entry> entries = new(written);

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

    /// <summary>All its entries, in file order.</summary>
    public IReadOnlyList<Entry> Entries => entries;

    /// <summary>Puts in what was read.</summary>
    internal void Add(Key key, TextNode? written, SheetNode value, object? read)
    {
        int end = value is TextNode text ? text.End : value.Start;
        entries.Add(new Entry(key, read, (written ?? value).Start, value.Start, end, value.ItemCount));
    }

    private int IndexOf(Key key) => entries.FindIndex(entry => ReferenceEquals(entry.Key, key));

    /// <summary>What it holds of one key.</summary>
    /// <param name="Key">The key.</param>
    /// <param name="Read">Its value; <c>null</c> where it does not fit.</param>
    /// <param name="KeyStart">The index of the key's first character in the file's text, or that of the value for one that needs no key to be written.</param>
    /// <param name="Start">The index of the value's first character.</param>
    /// <param name="End">The index after the last character of a text; that of its first for anything else.</param>
    /// <param name="Items">How many items or entries are written in the value, whether they fit or not.</param>
    internal readonly record struct Entry(Key Key, object? Read, int KeyStart, int Start, int End, int Items);
}
