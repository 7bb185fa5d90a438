using System.Diagnostics.CodeAnalysis;
using System.Runtime.CompilerServices;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>What a value may look like. One description serves the reader and the JSON Schema.</summary>
internal abstract class Shape
{
    /// <summary>What is due, as it reads in a message, for instance <c>a length such as `25 um`</c>.</summary>
    public abstract string Due { get; }

    /// <summary>Reads a value; <c>null</c> where it does not fit, after a problem was raised.</summary>
    public abstract object? ReadBoxed(SheetNode node, SheetContext context);

    /// <summary>Writes the keywords of its JSON Schema into the object that is open.</summary>
    public abstract void WriteSchema(SchemaWriter schema);
}

/// <summary>What a value may look like, and what it is read as.</summary>
internal abstract class Shape<T> : Shape
    where T : notnull
{
    private object? lastBoxed;

    /// <inheritdoc/>
    public sealed override object? ReadBoxed(SheetNode node, SheetContext context)
    {
        if (!TryRead(node, context, out T? value))
            return null;
        if (RuntimeHelpers.IsReferenceOrContainsReferences<T>())
            return value;
        // Files say the same of many parts: a number or flag that is the one before is kept once.
        object? last = lastBoxed;
        return last is T same && EqualityComparer<T>.Default.Equals(same, value) ? last : lastBoxed = value;
    }

    /// <summary>Reads a value. Where it does not fit, one problem is raised, or none where one was raised for the value before.</summary>
    public abstract bool TryRead(SheetNode node, SheetContext context, [MaybeNullWhen(false)] out T value);

    /// <summary>The text that must stand here, or <c>null</c> after a problem was raised.</summary>
    protected TextNode? TextOf(SheetNode node, SheetContext context)
    {
        if (node is TextNode { IsNothing: true } nothing)
        {
            context.Problems.Add(ShapeProblems.Nothing(context.PlaceOf(nothing), Due));
            return null;
        }

        if (node is TextNode text)
            return text;
        RaiseWrongShape(node, context);
        return null;
    }

    /// <summary>What a person may do who wrote this text where something else is due; empty where that is plain.</summary>
    protected virtual string MendOf(TextNode written) => "";

    /// <summary>The same for a person who wrote a list.</summary>
    protected virtual string MendOfList(ListNode written) => "";

    /// <summary>The same for a person who wrote a mapping.</summary>
    protected virtual string MendOfMap(MapNode written) => "";

    /// <summary>Raises that a list or mapping stands where something else is due.</summary>
    protected void RaiseWrongShape(SheetNode node, SheetContext context)
    {
        if (node is BrokenNode)
            return;
        string found = node switch
        {
            ListNode => "a list",
            MapNode => "a mapping",
            TextNode { IsNothing: true } => "nothing",
            TextNode text => Wording.Quoted(text.Value),
            _ => "something else",
        };
        context.Problems.Add(ShapeProblems.WrongShape(context.PlaceOf(node), Due, found, node switch
        {
            TextNode wrong => MendOf(wrong),
            ListNode list => MendOfList(list),
            MapNode map => MendOfMap(map),
            _ => "",
        }));
    }
}
