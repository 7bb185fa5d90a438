using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary><c>true</c> or <c>false</c>.</summary>
/// <param name="otherwise">What a person may do who wrote something else.</param>
internal sealed class FlagShape(string otherwise = "write `true` or `false`, or leave the key out where you do not know") : Shape<bool>
{
    /// <inheritdoc/>
    public override string Due => "true or false";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, out bool value)
    {
        value = false;
        if (TextOf(node, context) is not TextNode text)
            return false;
        value = text.Value == "true";
        if (text.IsPlain && text.Value is "true" or "false")
            return true;
        context.Problems.Add(ShapeProblems.BadFlag(context.PlaceOf(text), text.Value, otherwise));
        return false;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema) => schema.Type("boolean");
}
