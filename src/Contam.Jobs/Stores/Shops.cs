namespace Contam.Jobs.Stores;

/// <summary>Opens the store that a place names.</summary>
internal static class Shops
{
    /// <summary>The shop at this place, to write to.</summary>
    public static IJobStore Open(string place, bool mayCreate) => Open(place, mayCreate ? ShopUse.Create : ShopUse.Write);

    /// <summary>The shop at this place.</summary>
    /// <param name="place">A file, or <c>postgres://USER@HOST/DATABASE</c>.</param>
    /// <param name="use">What it is opened for.</param>
    /// <exception cref="ShopException">It cannot be used; the message says why and what to do, and shows no password.</exception>
    public static IJobStore Open(string place, ShopUse use)
    {
        ArgumentNullException.ThrowIfNull(place);
        // The provider of a server is loaded by the one line that needs it: whoever works with a file pays nothing for it.
        if (PostgresPlace.IsOne(place))
            return PostgresJobStore.Open(PostgresPlace.Read(place), use);
        if (place.Contains("://", StringComparison.Ordinal))
            throw new ShopException(ShopFault.Refused, $"{ShopWords.WithoutPassword(place)} is no shop that contam knows. Name a file, or a server: postgres://USER@HOST/DATABASE.");
        return SqliteJobStore.Open(place, use);
    }
}
