using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>Finds a decimal comma between braces, where it ends the value: of <c>{bore: 12,5 mm}</c> come the value <c>12</c> and a key <c>5 mm</c> without a colon.</summary>
internal static class DecimalCommas
{
    /// <summary>Raises the comma where this entry and the next are the two halves of a number; then neither is to be read.</summary>
    public static bool Raise(MapNode map, int index, SheetContext context)
    {
        if (index + 1 >= map.Entries.Count || map.Entries[index].Value is not TextNode { IsPlain: true } value)
            return false;
        (TextNode key, SheetNode next) = map.Entries[index + 1];
        bool hasNoColon = next is TextNode { IsNothing: true } && next.Start == key.End;
        if (!hasNoColon || value.Value.Length == 0 || key.Value.Length == 0 || !value.Value.All(char.IsAsciiDigit) || !char.IsAsciiDigit(key.Value[0]))
            return false;
        if (context.Sheet.Source.Text.AsSpan(value.End, key.Start - value.End).Trim() is not ",")
            return false;
        context.Problems.Add(ShapeProblems.CommaInNumber(context.PlaceOf(value), $"{value.Value},{key.Value}"));
        return true;
    }
}
