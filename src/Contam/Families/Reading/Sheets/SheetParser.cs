using Contam.Problems;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Contam.Families.Reading.Sheets;

/// <summary>
/// Turns the YAML library's events into a <see cref="Sheet"/>. The only type that sees the library.
/// Events are taken one by one and nothing is expanded, so that a file costs memory in proportion to its size and is refused at the first
/// value too many or too deep. Nothing here calls itself.
/// </summary>
internal sealed class SheetParser
{
    private readonly SourceText source;
    private readonly ReadBudget budget;
    private readonly ProblemList problems;
    private readonly Scanner scanner;
    private readonly Parser parser;
    private readonly Stack<OpenNode> open = new();
    private SheetNode? root;
    private bool documentEnded;
    private bool isBroken;

    private SheetParser(SourceText source, ReadBudget budget, ProblemList problems)
    {
        this.source = source;
        this.budget = budget;
        this.problems = problems;
        scanner = new Scanner(new StringReader(source.Text), skipComments: true);
        parser = new Parser(scanner);
    }

    /// <summary>
    /// The sheet of a text, or <c>null</c> where it is not YAML or too much; then a problem says why.
    /// Anchors, aliases, tags, merge keys, keys that are no texts and keys that stand twice are problems too, but the sheet is still answered.
    /// </summary>
    public static Sheet? Parse(SourceText source, ReadBudget budget, ProblemList problems) =>
        new SheetParser(source, budget, problems).Run();

    private Sheet? Run()
    {
        while (Next() is ParsingEvent step)
        {
            if (!Take(step))
                return null;
        }

        if (isBroken)
            return null;
        if (root is null or TextNode { IsNothing: true })
        {
            problems.Add(SheetProblems.FileEmpty(source.File));
            return null;
        }

        return new Sheet(source, root);
    }

    /// <summary>The next event of the first document, or <c>null</c> at its end and after a problem was raised.</summary>
    private ParsingEvent? Next()
    {
        try
        {
            if (!parser.MoveNext())
                return null;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // The library lets other exceptions than its own slip out, for instance where a bracket is not closed.
            problems.Add(Fault(fault, (int)scanner.CurrentPosition.Index));
            isBroken = true;
            return null;
        }

        ParsingEvent step = parser.Current!;
        if (step is DocumentStart && documentEnded)
        {
            problems.Add(SheetProblems.SeveralDocuments(PlaceAt(step.Start)));
            return null;
        }

        documentEnded |= step is DocumentEnd;
        return step;
    }

    /// <summary>Takes one event; answers whether reading may go on.</summary>
    private bool Take(ParsingEvent step)
    {
        if (step is MappingEnd or SequenceEnd)
        {
            if (!open.TryPop(out OpenNode? done))
                return false;
            // The library drops what stands after a colon without a key where that begins a mapping, and ends the mapping there.
            if (done.AwaitsValue && done.Key is TextNode key)
                problems.Add(SheetProblems.KeyMissing(source.PlaceAt(key.Start)));
            Attach(done.Node);
            return true;
        }

        if (step is not (NodeEvent or AnchorAlias))
            return true;
        if (!Count(step))
            return false;
        int start = Index(step.Start);
        switch (step)
        {
            case MappingStart mapping:
                return Open(new MapNode(start), mapping.Style == MappingStyle.Flow);
            case SequenceStart sequence:
                return Open(new ListNode(start), sequence.Style == SequenceStyle.Flow);
            case Scalar scalar:
                Attach(new TextNode(scalar.Value, scalar.Style == ScalarStyle.Plain, start, Index(scalar.End)));
                return true;
            default:
                problems.Add(SheetProblems.Alias(PlaceAt(step.Start)));
                Attach(new BrokenNode(start));
                return true;
        }
    }

    /// <summary>Counts a value and looks at what stands before it; answers whether there is room for it.</summary>
    private bool Count(ParsingEvent step)
    {
        if (budget.ValuesLeft-- == 0)
        {
            problems.Add(SheetProblems.TooManyValues(PlaceAt(step.Start), budget.Limits.Values));
            return false;
        }

        if (step is NodeEvent node)
            RefuseDecoration(node);
        return true;
    }

    private bool Open(SheetNode node, bool isFlow)
    {
        if (open.Count == budget.Limits.Nesting)
        {
            problems.Add(SheetProblems.TooDeep(source.PlaceAt(node.Start), budget.Limits.Nesting));
            return false;
        }

        open.Push(new OpenNode(node, isFlow));
        return true;
    }

    /// <summary>Puts a finished value where it belongs: the outermost, a list's next item, a mapping's next key or the value of its last key.</summary>
    private void Attach(SheetNode node)
    {
        if (!open.TryPeek(out OpenNode? into))
        {
            root = node;
            return;
        }

        if (into.Node is ListNode list)
            list.Items.Add(node);
        else if (!into.AwaitsValue)
            TakeKey(into, node);
        else
            TakeValue(into, node);
    }

    private void TakeKey(OpenNode into, SheetNode node)
    {
        into.AwaitsValue = true;
        into.Key = null;
        if (node is not TextNode key)
        {
            // An alias as a key has had its problem already.
            if (node is not BrokenNode)
                problems.Add(SheetProblems.KeyNotText(source.PlaceAt(node.Start)));
        }
        else if (key.IsPlain && key.Value == "<<")
        {
            problems.Add(SheetProblems.MergeKey(source.PlaceAt(key.Start)));
        }
        else if (into.FirstOf(key) is TextNode first)
        {
            problems.Add(SheetProblems.DuplicateKey(source.PlaceAt(key.Start), key.Value, source.PlaceAt(first.Start)));
        }
        else
        {
            into.Key = key;
        }
    }

    private static void TakeValue(OpenNode into, SheetNode node)
    {
        into.AwaitsValue = false;
        if (into.Key is TextNode key)
            ((MapNode)into.Node).Entries.Add((key, node));
    }

    private void RefuseDecoration(NodeEvent node)
    {
        if (!node.Anchor.IsEmpty)
            problems.Add(SheetProblems.Anchor(PlaceAt(node.Start), node.Anchor.Value));
        // The library marks a value without a tag with a question mark.
        if (!node.Tag.IsEmpty && node.Tag.Value != "?")
            problems.Add(SheetProblems.Tag(PlaceAt(node.Start), node.Tag.Value));
    }

    private Problem Fault(Exception fault, int reached)
    {
        string said = fault is YamlException ? fault.Message : "";
        int index = Math.Clamp(fault is YamlException at && at.Start.Index > 0 ? (int)at.Start.Index : reached, 0, source.Text.Length);
        if (said.Contains(" tab ", StringComparison.Ordinal))
            return SheetProblems.Tab(source.PlaceAt(TabNear(Math.Clamp(reached, 0, source.Text.Length))));

        SourceSpan place = source.PlaceAt(BeforeTrailingBreaks(index));
        char? found = index < source.Text.Length ? source.Text[index] : null;
        OpenNode? bracket = open.TryPeek(out OpenNode? innermost) && innermost.IsFlow ? innermost : null;
        bool isBracketFault = bracket is not null
            && (fault is not YamlException || said.Contains("expected ','", StringComparison.Ordinal) || source.LineAt(index).StartsWith("- ", StringComparison.Ordinal));
        return isBracketFault
            ? SheetProblems.BracketNotClosed(place, bracket!.Node is ListNode ? '[' : '{', source.PlaceAt(bracket.Node.Start))
            : SheetProblems.Syntax(place, said, found, source.LineAt(index), IsDeeper(index));
    }

    /// <summary>Whether the line of this character begins with a key, and is indented further than the line before it, which has a key and a value.</summary>
    private bool IsDeeper(int index)
    {
        int start = source.LineStart(index);
        if (start == 0 || !KeyAndValue(source.LineAt(index)))
            return false;
        int before = source.LineStart(start - 1);
        return KeyAndValue(source.LineAt(before)) && SpacesAt(before) < SpacesAt(start);

        static bool KeyAndValue(string line) => line.IndexOf(": ", StringComparison.Ordinal) is > 0 and var colon && line[..colon].All(one => char.IsAsciiLetterOrDigit(one) || one == '-');
    }

    private int SpacesAt(int start)
    {
        int at = start;
        while (at < source.Text.Length && source.Text[at] == ' ')
            at++;
        return at - start;
    }

    /// <summary>The first tab in the space that the line of this character begins with, or the character itself.</summary>
    private int TabNear(int index)
    {
        int at = source.LineStart(index);
        while (at < source.Text.Length && source.Text[at] == ' ')
            at++;
        return at < source.Text.Length && source.Text[at] == '\t' ? at : index;
    }

    /// <summary>A fault at the very end is shown after the last character that can be seen, not on an empty line behind it.</summary>
    private int BeforeTrailingBreaks(int index)
    {
        if (index < source.Text.Length)
            return index;
        while (index > 0 && source.Text[index - 1] is '\n' or '\r')
            index--;
        return index;
    }

    private int Index(Mark mark) => Math.Clamp((int)mark.Index, 0, source.Text.Length);

    private SourceSpan PlaceAt(Mark mark) => source.PlaceAt(Index(mark));

    /// <summary>A list or mapping whose end has not been seen.</summary>
    private sealed class OpenNode(SheetNode node, bool isFlow)
    {
        public SheetNode Node { get; } = node;

        public bool IsFlow { get; } = isFlow;

        /// <summary>The keys of a long mapping; short ones, which are by far the most, are looked through one by one.</summary>
        private Dictionary<string, TextNode>? longKeys;

        public bool AwaitsValue { get; set; }

        public TextNode? Key { get; set; }

        /// <summary>The same key where the mapping has it already, else <c>null</c>; then it is taken to have it from now on.</summary>
        public TextNode? FirstOf(TextNode key)
        {
            List<(TextNode Key, SheetNode Value)> entries = ((MapNode)Node).Entries;
            if (entries.Count >= 8 && longKeys is null)
            {
                longKeys = new Dictionary<string, TextNode>(StringComparer.Ordinal);
                foreach ((TextNode known, _) in entries)
                    longKeys.Add(known.Value, known);
            }

            if (longKeys is not null)
                return longKeys.TryAdd(key.Value, key) ? null : longKeys[key.Value];
            foreach ((TextNode known, _) in entries)
            {
                if (known.Value == key.Value)
                    return known;
            }

            return null;
        }
    }
}
