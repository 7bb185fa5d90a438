using System.Diagnostics.CodeAnalysis;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>Free text, on one line or several.</summary>
internal sealed class WordsShape : Shape<string>
{
    /// <summary>Whether at least a character must stand there.</summary>
    public bool MustSay { get; init; }

    /// <inheritdoc/>
    public override string Due => "a text";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, [MaybeNullWhen(false)] out string value)
    {
        value = null;
        if (TextOf(node, context) is not TextNode text)
            return false;
        // Escapes in double quotes can bring in what the file itself may not hold.
        int hidden = SourceText.FirstHidden(text.Value);
        if (hidden >= 0)
        {
            context.Problems.Add(SheetProblems.ControlCharacter(context.PlaceOf(node), text.Value[hidden]));
            return false;
        }

        if (MustSay && string.IsNullOrWhiteSpace(text.Value))
        {
            context.Problems.Add(ShapeProblems.Nothing(context.PlaceOf(text), Due));
            return false;
        }

        value = text.Value.Trim();
        return true;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema)
    {
        schema.Type("string");
        if (MustSay)
            schema.Number("minLength", 1);
    }
}
