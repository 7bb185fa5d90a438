using System.Globalization;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>A share of a whole: a number above 0 and at most 1.</summary>
internal sealed class ShareShape : Shape<double>
{
    /// <inheritdoc/>
    public override string Due => "a share above 0 and at most 1";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, out double value)
    {
        value = 0;
        if (TextOf(node, context) is not TextNode text)
            return false;
        bool isShare = text.IsPlain && NumberShape.IsPlainNumber(text.Value)
            && double.TryParse(text.Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value)
            && value is > 0 and <= 1;
        if (isShare)
            return true;
        context.Problems.Add(ShapeProblems.BadNumber(context.PlaceOf(text), text.Value, Due));
        return false;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema)
    {
        schema.Type("number");
        schema.Number("exclusiveMinimum", 0);
        schema.Number("maximum", 1);
    }
}
