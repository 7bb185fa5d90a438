using System.Globalization;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>A whole number without a unit.</summary>
/// <param name="least">The least it may be.</param>
/// <param name="most">The most it may be.</param>
internal sealed class WholeShape(int least, int most = int.MaxValue) : Shape<int>
{
    /// <inheritdoc/>
    public override string Due => $"a whole number from {Wording.Number(least)}";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, out int value)
    {
        value = 0;
        if (TextOf(node, context) is not TextNode text)
            return false;
        if (text.IsPlain && int.TryParse(text.Value, NumberStyles.None, CultureInfo.InvariantCulture, out value) && value >= least && value <= most)
            return true;
        context.Problems.Add(ShapeProblems.BadNumber(context.PlaceOf(text), text.Value, Due));
        return false;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema)
    {
        schema.Type("integer");
        schema.Number("minimum", least);
        if (most != int.MaxValue)
            schema.Number("maximum", most);
    }
}
