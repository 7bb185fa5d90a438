using Contam.Jobs.Stores;

namespace Contam.Jobs.Documents;

/// <summary>
/// Copies of a whole shop, to be kept elsewhere and to come back from: every row as it stands at one moment, though others write meanwhile. What arrives is
/// read again and held against what was sent.
/// </summary>
public static class ShopCopy
{
    /// <summary>Copies a shop into a new shop file.</summary>
    /// <param name="book">The shop.</param>
    /// <param name="file">The file to make; nothing may be there. Its owner alone may read it.</param>
    /// <returns>What a check of the copy came to. What is wrong in the shop is wrong in its copy, which is kept all the same: it is as good as there is.</returns>
    /// <exception cref="ShopException">It cannot be read or made, or another arrived than was sent; then there is no such file.</exception>
    public static ShopCheckResult Backup(JobBook book, string file)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(file);
        ShopCheckResult? check = null;
        SqliteJobStore.Make(file, made => check = Copy(StoreOf(book), made));
        return check!;
    }

    /// <summary>Makes a shop from a copy of one.</summary>
    /// <param name="file">The copy; it is not changed.</param>
    /// <param name="place">The new shop: a file that is not there, or a database without jobs.</param>
    /// <returns>What a check of the new shop came to.</returns>
    /// <exception cref="ShopException">There is a shop already, or one of the two cannot be read or written; nothing is changed then.</exception>
    public static ShopCheckResult Restore(string file, string place)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(place);
        using SqliteJobStore copy = SqliteJobStore.Open(file, ShopUse.Read);
        if (place.Contains("://", StringComparison.Ordinal))
        {
            using IJobStore shop = Shops.Open(place, ShopUse.Create);
            return Copy(copy, (SqlJobStore)shop);
        }

        ShopCheckResult? check = null;
        SqliteJobStore.Make(place, made => check = Copy(copy, made));
        return check!;
    }

    private static SqlJobStore StoreOf(JobBook book) => book.Store as SqlJobStore ?? throw new ArgumentException("a book that is kept in no database has no copy", nameof(book));

    private static ShopCheckResult Copy(SqlJobStore from, SqlJobStore to)
    {
        var sent = new RowsSeen();
        to.FillFrom(from, sent.Add);
        var arrived = new RowsSeen();
        to.ReadAll(arrived.Add);
        if (!sent.IsSameAs(arrived))
            throw new ShopException(ShopFault.Damaged, $"what arrived in {to.Place} is not what {from.Place} sent. Do not use it. Do it again, on another disk.");
        // The book only reads here, and the store is disposed of by who opened it.
        return ShopCheck.Of(new JobBook(to));
    }
}
