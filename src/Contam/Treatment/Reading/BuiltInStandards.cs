using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;

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

    /// <summary>The texts of both, the lower first, so that they can be kept and read again after another version of the library has changed them.</summary>
    public static ImmutableArray<SourceCopy> Sources => [CopyOf("kinds.yaml"), CopyOf("house.yaml")];

    /// <summary>What texts of <see cref="Sources"/>, kept by whatever version of the library, say laid over one another.</summary>
    /// <param name="sources">The lower first; each is laid over those before it. At least one.</param>
    /// <param name="limits">How much is taken in; <c>null</c> for the usual.</param>
    /// <returns>The standard, or the problems of the first text that is not sound.</returns>
    public static Outcome<ShopStandard> ReadSources(ImmutableArray<SourceCopy> sources, ReadLimits? limits = null)
    {
        ShopStandard? below = null;
        foreach (SourceCopy source in sources)
        {
            Outcome<ShopStandard> outcome = StandardReader.ReadText(source.Text, source.Name, below?.CatalogueOf() ?? new Catalogue([], []), limits);
            if (outcome.Value is not { } standard)
                return outcome;
            below = below is null ? standard : standard.Over(below);
        }

        return new Outcome<ShopStandard>(below ?? throw new ArgumentException("there is no text", nameof(sources)), []);
    }

    private static SourceCopy CopyOf(string name) => new(name, TextOf(name));

    private static ShopStandard Read(string name, Catalogue below)
    {
        Outcome<ShopStandard> outcome = StandardReader.ReadText(TextOf(name), name, below);
        return outcome.Value
            ?? throw new InvalidOperationException($"the built-in standard {name} is not sound: {outcome.Problems[0].Place}: {outcome.Problems[0].Text}");
    }

    private static string TextOf(string name)
    {
        using Stream stream = typeof(BuiltInStandards).Assembly.GetManifestResourceStream("standards/" + name)
            ?? throw new InvalidOperationException($"the built-in standard {name} is missing from the library");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
