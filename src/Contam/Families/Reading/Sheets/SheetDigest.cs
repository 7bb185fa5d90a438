using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace Contam.Families.Reading.Sheets;

/// <summary>
/// The tree of a file that was read before, beside the file: what the YAML library made of it, so that a start need not ask it again. A line a value,
/// in file order: <c>m</c> a mapping, <c>l</c> a list, <c>.</c> the end of either, <c>p</c> a text as it stands, <c>q</c> one between quotes,
/// <c>v</c> (plain) and <c>w</c> (quoted) one that is not written as it reads, which then follows. Each with how far it begins behind the value
/// before it, and texts with their length. The first line is the text's mark: a digest of another text is none. It guards
/// against a text that was changed and whose digest was forgotten, not against malice: both come in one library, and a test holds them together.
/// </summary>
internal static class SheetDigest
{
    /// <summary>The digest of a sheet without problems.</summary>
    public static string Write(Sheet sheet)
    {
        var text = new StringBuilder(MarkOf(sheet.Source.Text)).Append('\n');
        int before = 0;
        Write(sheet.Root);
        return text.ToString();

        // Calls itself as deep as values stand in values, which has a limit.
        void Write(SheetNode node)
        {
            string from = (node.Start - before).ToString(CultureInfo.InvariantCulture);
            before = node.Start;
            switch (node)
            {
                case MapNode map:
                    text.Append('m').Append(from).Append('\n');
                    for (int i = 0; map.TryGet(i, out TextNode? key, out SheetNode? value); i++)
                    {
                        Write(key);
                        Write(value);
                    }

                    text.Append(".\n");
                    break;
                case ListNode list:
                    text.Append('l').Append(from).Append('\n');
                    foreach (SheetNode item in list.Items)
                        Write(item);
                    text.Append(".\n");
                    break;
                case TextNode one:
                    (char sort, string reads) = SortOf(one, sheet.Source.Text);
                    text.Append(sort).Append(from).Append(' ').Append((one.End - one.Start).ToString(CultureInfo.InvariantCulture)).Append(reads).Append('\n');
                    break;
                default:
                    throw new ArgumentException("a sheet with problems has no digest", nameof(sheet));
            }
        }
    }

    /// <summary>The text's length and its 64-bit FNV-1a hash by characters (Fowler, Noll and Vo; from memory), for telling two texts apart without the library of true hashes.</summary>
    private static string MarkOf(string text)
    {
        ulong hash = 14695981039346656037;
        foreach (char c in text)
            hash = unchecked((hash ^ c) * 1099511628211);
        return string.Create(CultureInfo.InvariantCulture, $"{text.Length} {hash:x16}");
    }

    private static (char Sort, string Reads) SortOf(TextNode node, string file)
    {
        ReadOnlySpan<char> written = file.AsSpan(node.Start, node.End - node.Start);
        if (node.IsPlain && written.SequenceEqual(node.Value))
            return ('p', "");
        if (!node.IsPlain && written.Length >= 2 && written[1..^1].SequenceEqual(node.Value))
            return ('q', "");
        return (node.IsPlain ? 'v' : 'w', " " + node.Value.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\n", "\\n", StringComparison.Ordinal));
    }

    /// <summary>The sheet that a digest tells of, or <c>null</c> where it is that of another text.</summary>
    /// <param name="source">The file.</param>
    /// <param name="digest">The digest, as <see cref="Write"/> gives it.</param>
    public static Sheet? Read(SourceText source, ReadOnlySpan<byte> digest)
    {
        if (!TakeLine(ref digest).SequenceEqual(Encoding.ASCII.GetBytes(MarkOf(source.Text))))
            return null;
        var open = new Stack<(SheetNode Node, TextNode? Key)>();
        int start = 0;
        while (!digest.IsEmpty)
        {
            ReadOnlySpan<byte> line = TakeLine(ref digest);
            SheetNode node;
            if (line[0] == (byte)'.')
            {
                node = open.Pop().Node;
            }
            else
            {
                char sort = (char)line[0];
                line = line[1..];
                start += TakeNumber(ref line);
                if (sort is 'm' or 'l')
                {
                    open.Push((sort == 'm' ? new WholeMap(start) : new ListNode(start), null));
                    continue;
                }

                node = TextAt(sort, start, line, source.Text);
            }

            if (!open.TryPop(out (SheetNode Node, TextNode? Key) into))
                return new Sheet(source, node);
            if (into.Node is ListNode list)
                list.Items.Add(node);
            else if (into.Key is TextNode key)
                ((WholeMap)into.Node).Entries.Add((key, node));
            open.Push((into.Node, into.Node is MapNode && into.Key is null ? (TextNode)node : null));
        }

        return null;
    }

    private static TextNode TextAt(char sort, int start, ReadOnlySpan<byte> line, string file)
    {
        int end = start + TakeNumber(ref line);
        return sort switch
        {
            'p' => new TextNode(file[start..end], isPlain: true, start, end),
            'q' => new TextNode(file[(start + 1)..(end - 1)], isPlain: false, start, end),
            _ => new TextNode(Unescaped(Encoding.UTF8.GetString(line)), sort == 'v', start, end),
        };
    }

    private static string Unescaped(string text)
    {
        if (!text.Contains('\\', StringComparison.Ordinal))
            return text;
        var plain = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
            plain.Append(text[i] != '\\' ? text[i] : text[++i] == 'n' ? '\n' : '\\');
        return plain.ToString();
    }

    private static ReadOnlySpan<byte> TakeLine(ref ReadOnlySpan<byte> rest)
    {
        int end = rest.IndexOf((byte)'\n');
        ReadOnlySpan<byte> line = rest[..end];
        rest = rest[(end + 1)..];
        return line;
    }

    /// <summary>The number that the line goes on with, and the space behind it.</summary>
    private static int TakeNumber(ref ReadOnlySpan<byte> line)
    {
        if (!Utf8Parser.TryParse(line, out int number, out int taken))
            throw new FormatException("a digest of a sheet lacks a number");
        line = line[Math.Min(taken + 1, line.Length)..];
        return number;
    }
}
