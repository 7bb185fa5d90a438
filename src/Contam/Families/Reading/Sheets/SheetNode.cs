namespace Contam.Families.Reading.Sheets;

/// <summary>A value in a file: a text, a list, a mapping, or one that a problem was raised for.</summary>
/// <param name="start">The zero-based index of its first character in the file's text.</param>
internal abstract class SheetNode(int start)
{
    /// <summary>The zero-based index of its first character in the file's text.</summary>
    public int Start { get; } = start;

    /// <summary>How many items or entries it has; 0 for what is no list or mapping.</summary>
    public int ItemCount => this switch
    {
        MapNode map => map.Entries.Count,
        ListNode list => list.Items.Count,
        _ => 0,
    };
}

/// <summary>A text. Numbers and true or false are texts too; whoever reads one decides.</summary>
/// <param name="value">The text, escapes and quotes undone.</param>
/// <param name="isPlain">Whether it stands without quotes.</param>
/// <param name="start">The index of its first character, the quote if there is one.</param>
/// <param name="end">The index after its last character.</param>
internal sealed class TextNode(string value, bool isPlain, int start, int end) : SheetNode(start)
{
    /// <summary>The text, escapes and quotes undone.</summary>
    public string Value { get; } = value;

    /// <summary>Whether it stands without quotes.</summary>
    public bool IsPlain { get; } = isPlain;

    /// <summary>The index after its last character.</summary>
    public int End { get; } = end;

    /// <summary>Whether nothing is written at all.</summary>
    public bool IsNothing => IsPlain && Value.Length == 0;
}

/// <summary>A list.</summary>
internal sealed class ListNode(int start) : SheetNode(start)
{
    /// <summary>Its items, in file order.</summary>
    public List<SheetNode> Items { get; } = [];
}

/// <summary>A mapping from keys to values, no key twice.</summary>
internal sealed class MapNode(int start) : SheetNode(start)
{
    /// <summary>Its entries, in file order.</summary>
    public List<(TextNode Key, SheetNode Value)> Entries { get; } = [];
}

/// <summary>A value that a problem was raised for, so that nothing more is said of it.</summary>
internal sealed class BrokenNode(int start) : SheetNode(start);
