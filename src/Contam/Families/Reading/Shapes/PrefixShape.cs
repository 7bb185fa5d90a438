using System.Diagnostics.CodeAnalysis;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>What is put before ids: an id with a hyphen behind it, or a quoted nothing.</summary>
internal sealed class PrefixShape : Shape<string>
{
    private static readonly IdShape Id = new("a prefix", "port-");

    /// <inheritdoc/>
    public override string Due => "a prefix such as `port-`";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, [MaybeNullWhen(false)] out string value)
    {
        value = null;
        if (TextOf(node, context) is not TextNode text)
            return false;
        if (text.Value.Length == 0 || Id.IsId(text.Value + "x"))
        {
            bool endsInHyphen = text.Value.Length == 0 || text.Value[^1] == '-';
            value = text.Value;
            if (endsInHyphen)
                return true;
        }

        context.Problems.Add(ShapeProblems.BadPrefix(context.PlaceOf(text), text.Value));
        return false;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema)
    {
        schema.Type("string");
        schema.Text("pattern", "^([a-z][a-z0-9]*(-[a-z0-9]+)*-)?$");
    }
}
