using Contam.Families;

namespace Contam.Support;

/// <summary>The kinds of part and sorts of debris that test systems are made of. All figures are invented.</summary>
public static class ShopFloor
{
    /// <summary>A part that comes off to be treated.</summary>
    public static Kind Part { get; } = new("part", Written(1))
    {
        IsRemovable = true,
        Minutes = new() { Inspect = 5, Remove = 10, Flush = 15, Clean = 20, Test = 10, Replace = 5, Refit = 15 },
    };

    /// <summary>A filter, which comes off to be treated.</summary>
    public static Kind Filter { get; } = new("filter", Written(2))
    {
        IsRemovable = true,
        IsFilter = true,
        Minutes = new() { Inspect = 5, Remove = 5, Flush = 10, Clean = 10, Test = 5, Replace = 5, Refit = 5 },
    };

    /// <summary>Something that is treated where it is, as a gallery.</summary>
    public static Kind Block { get; } = new("block", Written(3))
    {
        IsRemovable = false,
        Minutes = new() { Inspect = 10, Remove = 60, Flush = 30, Clean = 40, Test = 15, Replace = 20, Refit = 90 },
    };

    /// <summary>The three kinds.</summary>
    public static IReadOnlyList<Kind> Kinds { get; } = [Part, Filter, Block];

    /// <summary>The place of anything that stands in no file: a line of a page that is not there.</summary>
    public static SourceSpan Written(int line) => new("notation", line, 1);

    /// <summary>A catalogue of the kinds, metal, rubber, water, and a shop's own debris.</summary>
    public static Catalogue CatalogueWith(IEnumerable<Debris> own) =>
        new(Kinds, [Debris.Metal, Debris.Rubber, Debris.Water, .. own]);
}
