using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.RegularExpressions;
using Contam.Families.Quantities;
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

/// <summary>Reads the text of a quantity.</summary>
internal delegate bool QuantityReader<T>(string text, [MaybeNullWhen(false)] out T value, [NotNullWhen(false)] out QuantityError? error);

/// <summary>A number with its unit.</summary>
/// <param name="dimension">What it measures.</param>
/// <param name="read">Reads it.</param>
/// <param name="isZero">Whether a value is 0 where 0 makes no sense; <c>null</c> where 0 is allowed.</param>
internal sealed class QuantityShape<T>(Dimension dimension, QuantityReader<T> read, Func<T, bool>? isZero = null) : Shape<T>
    where T : notnull
{
    /// <inheritdoc/>
    public override string Due => QuantityProblems.Due(dimension);

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, [MaybeNullWhen(false)] out T value)
    {
        value = default;
        if (TextOf(node, context) is not TextNode text)
            return false;
        if (!read(text.Value, out value, out QuantityError? error))
        {
            context.Problems.Add(QuantityProblems.Of(context.Sheet.PlaceWithin(text, error.Offset), text.Value, dimension, error));
            return false;
        }

        if (isZero is null || !isZero(value))
            return true;
        context.Problems.Add(QuantityProblems.Zero(context.PlaceOf(text), text.Value, dimension));
        return false;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema)
    {
        schema.Type("string");
        schema.Text("pattern", Pattern);
    }

    /// <summary>The pattern that quantities of this dimension meet.</summary>
    public string Pattern
    {
        get
        {
            string units = string.Join('|', UnitTable.Of(dimension).Select(unit => Regex.Escape(unit.Symbol).Replace("/", "\\/", StringComparison.Ordinal)));
            string sign = dimension == Dimension.Temperature ? "-?" : "";
            return $"^{sign}[0-9]+(\\.[0-9]+)?([eE][+-]?[0-9]+)? ?({units})$";
        }
    }
}
