namespace Contam.Jobs.Stores;

/// <summary>Opens the store that a place names.</summary>
internal static class Shops
{
    /// <summary>The shop at this place.</summary>
    /// <param name="place">A file, or <c>postgres://USER@HOST/DATABASE</c>.</param>
    /// <param name="mayCreate">Whether to make it where it is not there.</param>
    /// <exception cref="ShopException">It cannot be used; the message says why and what to do, and shows no password.</exception>
    public static IJobStore Open(string place, bool mayCreate)
    {
        ArgumentNullException.ThrowIfNull(place);
        // The provider of a server is loaded by the one line that needs it: whoever works with a file pays nothing for it.
        if (PostgresPlace.IsOne(place))
            return PostgresJobStore.Open(PostgresPlace.Read(place), mayCreate);
        if (place.Contains("://", StringComparison.Ordinal))
            throw new ShopException(ShopFault.Refused, $"{ShopWords.WithoutPassword(place)} is no shop that contam knows. Name a file, or a server: postgres://USER@HOST/DATABASE.");
        return SqliteJobStore.Open(place, mayCreate);
    }
}
