using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>A text with placeholders in braces.</summary>
internal sealed class StepTextShape : Shape<string>
{
    private static readonly WordsShape Words = new();

    /// <summary>The placeholders, without their braces.</summary>
    public static readonly ImmutableArray<string> Names = 
    [
        "part", "parts", "kind", "debris", "circuit", "fluid", "litres", "size", "who", "days", "hours", "beyond", "upstream", "how", "limit", "seals",
    ];

    /// <summary>The placeholders, as a phrase.</summary>
    public static readonly string Placeholders = "placeholders are " + Wording.AllOf(Names.Select(name => $"{{{name}}}"));

    /// <inheritdoc/>
    public override string Due => Words.Due;

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, [MaybeNullWhen(false)] out string value)
    {
        if (!Words.TryRead(node, context, out value))
            return false;
        var text = (TextNode)node;
        bool sound = true;
        int at = 0;
        while ((at = text.Value.AsSpan(at).IndexOfAny('{', '}') is int step && step >= 0 ? at + step : -1) >= 0)
        {
            int end = text.Value[at] == '{' ? text.Value.AsSpan(at + 1).IndexOfAny('{', '}') + at + 1 : at;
            bool isClosed = end > at && text.Value[end] == '}';
            string name = isClosed ? text.Value[(at + 1)..end] : "";
            if (!isClosed || !Names.Contains(name))
            {
                string written = isClosed ? text.Value[at..(end + 1)] : text.Value[at..(at + 1)];
                context.Problems.Add(StandardProblems.Placeholder(
                    context.Sheet.PlaceWithin(text, at), written, isClosed, isClosed ? context.Problems.NearTo(name, Names) : null, Names));
                sound = false;
            }

            at = isClosed ? end + 1 : at + 1;
        }

        return sound;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema)
    {
        schema.Type("string");
        schema.Text("pattern", $"^([^{{}}]|\\{{({string.Join('|', Names)})\\}})*$");
    }
}
