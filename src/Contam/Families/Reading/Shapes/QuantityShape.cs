using System.Diagnostics.CodeAnalysis;
using System.Text.RegularExpressions;
using Contam.Families.Quantities;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

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
