using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using Contam.Families.Reading.Sheets;

namespace Contam.Families.Reading.Shapes;

/// <summary>
/// A mapping that was read by its <see cref="FormShape"/>: for every key that it has the value, and where both stand. Holds on to nothing of the
/// tree that it was read from. Of a short one, as nearly all are, the entries lie in the object itself: what is said of all parts is kept until the last
/// file is read, and each object fewer is one fewer for the collector to go through.
/// </summary>
internal abstract class Form
{
    private readonly int start;
    private int count;

    private Form(Sheet sheet, int start) => (Sheet, this.start) = (sheet, start);

    /// <summary>A form without an entry yet.</summary>
    /// <param name="sheet">The sheet it stands in.</param>
    /// <param name="start">The index of its first character in the file's text.</param>
    /// <param name="entries">How many entries it is to have; 0 where nobody knows yet.</param>
    internal static Form Of(Sheet sheet, int start, int entries) => entries switch
    {
        1 or 2 => new OfTwo(sheet, start),
        3 or 4 => new OfFour(sheet, start),
        _ => new OfMany(sheet, start, entries),
    };

    /// <summary>The sheet it stands in.</summary>
    public Sheet Sheet { get; }

    /// <summary>Where it begins.</summary>
    public SourceSpan Place => Sheet.PlaceAt(start);

    /// <summary>Whether it has the key, with a sound value or not.</summary>
    public bool Has(Key key) => IndexOf(key) >= 0;

    /// <summary>The value of a key; <c>false</c> where the key is missing or its value does not fit.</summary>
    public bool TryGet<T>(Key<T> key, [MaybeNullWhen(false)] out T value)
        where T : notnull
    {
        int index = IndexOf(key);
        if (index >= 0 && Room[index].Read is T read)
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
        return index >= 0 && Room[index].Read is T read ? new Located<T>(read, Sheet, Room[index].Start, Room[index].End) : null;
    }

    /// <summary>Where a key is written, or where its value begins for one that needs no key to be written.</summary>
    public SourceSpan KeyPlace(Key key) => Sheet.PlaceAt(Room[IndexOf(key)].KeyStart);

    /// <summary>Where the value of a key begins.</summary>
    public SourceSpan ValuePlace(Key key) => Sheet.PlaceAt(Room[IndexOf(key)].Start);

    /// <summary>How many items or entries are written in the value of a key, whether they fit or not.</summary>
    public int WrittenIn(Key key) => Room[IndexOf(key)].Items;

    /// <summary>All its entries, in file order.</summary>
    public Entry[] Entries => Room[..count].ToArray();

    /// <summary>Where the entries lie; those behind the last are empty.</summary>
    private protected abstract Span<Entry> Room { get; }

    /// <summary>Lets go of the value of a key that nobody asks for any more; the key itself stays.</summary>
    public void Forget(Key key)
    {
        if (IndexOf(key) is int index and >= 0)
            Room[index] = Room[index] with { Read = null };
    }

    /// <summary>Puts in what was read.</summary>
    internal void Add(Key key, TextNode? written, SheetNode value, object? read)
    {
        if (count == Room.Length)
            Grow();
        int end = value is TextNode text ? text.End : value.Start;
        Room[count++] = new Entry(key, read, (written ?? value).Start, value.Start, end, value.ItemCount);
    }

    private int IndexOf(Key key)
    {
        ReadOnlySpan<Entry> entries = Room[..count];
        for (int i = 0; i < entries.Length; i++)
        {
            if (ReferenceEquals(entries[i].Key, key))
                return i;
        }

        return -1;
    }

    /// <summary>Makes room for one more entry at least.</summary>
    private protected virtual void Grow() => throw new InvalidOperationException("a mapping has more entries than it was said to have");

    private sealed class OfTwo(Sheet sheet, int start) : Form(sheet, start)
    {
        private Two room;

        private protected override Span<Entry> Room => room;
    }

    private sealed class OfFour(Sheet sheet, int start) : Form(sheet, start)
    {
        private Four room;

        private protected override Span<Entry> Room => room;
    }

    private sealed class OfMany(Sheet sheet, int start, int count) : Form(sheet, start)
    {
        private Entry[] room = count == 0 ? [] : new Entry[count];

        private protected override Span<Entry> Room => room;

        private protected override void Grow() => Array.Resize(ref room, Math.Max(4, 2 * room.Length));
    }

    [InlineArray(2)]
    private struct Two
    {
        private Entry first;
    }

    [InlineArray(4)]
    private struct Four
    {
        private Entry first;
    }

    /// <summary>What it holds of one key.</summary>
    /// <param name="Key">The key.</param>
    /// <param name="Read">Its value; <c>null</c> where it does not fit.</param>
    /// <param name="KeyStart">The index of the key's first character in the file's text, or that of the value for one that needs no key to be written.</param>
    /// <param name="Start">The index of the value's first character.</param>
    /// <param name="End">The index after the last character of a text; that of its first for anything else.</param>
    /// <param name="Items">How many items or entries are written in the value, whether they fit or not.</param>
    internal readonly record struct Entry(Key Key, object? Read, int KeyStart, int Start, int End, int Items);
}
