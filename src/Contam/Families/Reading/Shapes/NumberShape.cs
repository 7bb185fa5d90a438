using System.Globalization;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>A number from 0 whose unit its key names.</summary>
/// <param name="unit">The unit that the key names, in the plural.</param>
internal sealed class NumberShape(string unit) : Shape<double>
{
    /// <summary>More is a slip in any unit that keys name.</summary>
    private const double Most = 1e6;

    /// <inheritdoc/>
    public override string Due => $"a number of {unit}";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, out double value)
    {
        value = 0;
        if (TextOf(node, context) is not TextNode text)
            return false;
        bool isNumber = text.IsPlain && IsPlainNumber(text.Value)
            && double.TryParse(text.Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value)
            && value <= Most;
        if (isNumber)
            return true;
        context.Problems.Add(ShapeProblems.BadNumberOf(context.PlaceOf(text), text.Value, unit, Most));
        return false;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema)
    {
        schema.Type("number");
        schema.Number("minimum", 0);
        schema.Number("maximum", (long)Most);
    }

    /// <summary>Whether a text is digits, if need be with a point between them.</summary>
    public static bool IsPlainNumber(string text) => text.Length is > 0 and <= 20
        && text.All(c => char.IsAsciiDigit(c) || c == '.') && char.IsAsciiDigit(text[0]) && char.IsAsciiDigit(text[^1]);
}
