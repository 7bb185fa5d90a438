namespace Contam.Jobs.Stores;

/// <summary>Opens the store that a place names.</summary>
public static class Shops
{
    /// <summary>The shop in this file.</summary>
    /// <param name="place">A file.</param>
    /// <param name="mayCreate">Whether to make it where it is not there.</param>
    /// <exception cref="ShopException">It cannot be used; the message says why and what to do.</exception>
    public static IJobStore Open(string place, bool mayCreate) => SqliteJobStore.Open(place, mayCreate);
}
