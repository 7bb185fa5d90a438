using System.Collections.Immutable;

namespace Contam.Jobs.Stores;

/// <summary>A table of a shop, as it is copied from one shop to another.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Columns">Its columns, as a statement lists them.</param>
/// <param name="Order">What its rows are sorted by: numbers and names of jobs, so that a row comes after those it names.</param>
internal sealed record ShopTable(string Name, string Columns, string Order)
{
    public const string SummaryColumns = "id, sequence, hash, customer, engine, family, failed, debris, state, done, steps, unanswered, opened, last";

    /// <summary>The list of opened jobs, as a shop of the first versions would have it.</summary>
    public const string LedgerOfJobs = "SELECT row_number() OVER (ORDER BY opened, id), id FROM jobs ORDER BY 1";

    public static ShopTable Ledger { get; } = new("ledger", "number, job", "number");

    /// <summary>All tables, in the order in which they can be filled.</summary>
    public static ImmutableArray<ShopTable> All { get; } =
    [
        new("texts", "sha256, text", "sha256"),
        new("jobs", SummaryColumns, "id"),
        new("entries", "job, sequence, previous, hash, kind, body", "job, sequence"),
        Ledger,
    ];

    public ImmutableArray<string> Names { get; } = [.. Columns.Split(", ")];
}
