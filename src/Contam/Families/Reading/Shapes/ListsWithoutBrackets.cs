using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>Finds a list without its brackets between braces: of <c>{access: pump, hose}</c> come the value <c>pump</c> and a key <c>hose</c> without a colon.</summary>
internal static class ListsWithoutBrackets
{
    /// <summary>Raises it where the value of this entry is the first of several; answers how many entries behind it belong to it, 0 for none.</summary>
    public static int Raise(MapNode map, int index, Key key, SheetContext context)
    {
        if (key.AnyShape is not IListShape || map.Entries[index].Value is not TextNode { IsNothing: false } first)
            return 0;
        var items = new List<string> { first.Value };
        while (index + items.Count < map.Entries.Count && map.Entries[index + items.Count] is (TextNode item, TextNode { IsNothing: true } none) && none.Start == item.End)
            items.Add(item.Value);
        if (items.Count == 1)
            return 0;
        string written = string.Join(", ", items);
        context.Problems.Add(ShapeProblems.WrongShape(context.PlaceOf(first), key.AnyShape.Due, Wording.Quoted(written), $"put brackets round it: {Wording.Quoted($"[{written}]")}"));
        return items.Count - 1;
    }
}

/// <summary>A shape that is a list.</summary>
internal interface IListShape;
