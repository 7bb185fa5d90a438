using Contam.Families;
using Contam.Families.Reading;

namespace Contam.Treatment.Reading;

/// <summary>The standards that come with the library. Each is read once, when it is first asked for.</summary>
public static class BuiltInStandards
{
    private static readonly Lazy<ShopStandard> ReadKinds = new(() => Read("kinds.yaml", new Catalogue([], [])));
    private static readonly Lazy<ShopStandard> ReadHouse = new(() => Read("house.yaml", Kinds.CatalogueOf()));
    private static readonly Lazy<ShopStandard> Both = new(() => House.Over(Kinds));

    /// <summary>The kinds of part that the trade knows; places bear the name <c>kinds.yaml</c>.</summary>
    public static ShopStandard Kinds => ReadKinds.Value;

    /// <summary>The house standard alone, to be laid over <see cref="Kinds"/>; places bear the name <c>house.yaml</c>.</summary>
    public static ShopStandard House => ReadHouse.Value;

    /// <summary>The house standard over the kinds: what counts where a shop says nothing of its own.</summary>
    public static ShopStandard HouseOverKinds => Both.Value;

    private static ShopStandard Read(string name, Catalogue below)
    {
        using Stream stream = typeof(BuiltInStandards).Assembly.GetManifestResourceStream("standards/" + name)
            ?? throw new InvalidOperationException($"the built-in standard {name} is missing from the library");
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        Outcome<ShopStandard> outcome = StandardReader.ReadBytes(bytes.ToArray(), name, below);
        return outcome.Value
            ?? throw new InvalidOperationException($"the built-in standard {name} is not sound: {outcome.Problems[0].Place}: {outcome.Problems[0].Text}");
    }
}
