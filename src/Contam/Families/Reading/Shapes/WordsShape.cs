using System.Diagnostics.CodeAnalysis;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>Free text, on one line or several.</summary>
internal sealed class WordsShape : Shape<string>
{
    /// <inheritdoc/>
    public override string Due => "a text";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, [MaybeNullWhen(false)] out string value)
    {
        value = null;
        if (TextOf(node, context) is not TextNode text)
            return false;
        int hidden = text.Value.AsSpan().IndexOfAnyInRange('\0', '\u001F') < 0 ? -1 : FirstControl(text.Value);
        if (hidden >= 0)
        {
            context.Problems.Add(SheetProblems.ControlCharacter(context.PlaceOf(node), text.Value[hidden]));
            return false;
        }

        value = text.Value.Trim();
        return true;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema) => schema.Type("string");

    // Escapes in double quotes can bring in what the file itself may not hold.
    private static int FirstControl(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsControl(text[i]) && text[i] is not ('\n' or '\t'))
                return i;
        }

        return -1;
    }
}
