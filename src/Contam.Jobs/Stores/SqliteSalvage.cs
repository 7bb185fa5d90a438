using System.Collections.Immutable;
using Contam.Jobs.Entries;
using Microsoft.Data.Sqlite;

namespace Contam.Jobs.Stores;

/// <summary>
/// Gets entries out of a damaged file, each by itself: by the index where that holds, else by the row. A page that is damaged or gone takes what stood on it
/// and no others.
/// </summary>
internal sealed class SqliteSalvage(SqliteConnection connection)
{
    private const string Columns = "previous, hash, body";

    /// <summary>The row of each entry, by job and sequence; made when the index first fails.</summary>
    private Dictionary<(string Job, long Sequence), long>? rowOf;

    /// <summary>The entries of a job from the first to the last that can be read, and the sequences of those that cannot.</summary>
    /// <param name="job">The job.</param>
    /// <param name="last">The sequence of its last entry.</param>
    /// <param name="most">The most entries that the file can hold.</param>
    public (ImmutableArray<JobEntry> Entries, List<long> Lost) Read(string job, long last, long most)
    {
        var entries = ImmutableArray.CreateBuilder<JobEntry>();
        var lost = new List<long>();
        for (long sequence = 1; sequence <= last; sequence++)
        {
            if ((ByIndex(job, sequence) ?? ByRow(job, sequence, most)) is { } entry)
                entries.Add(entry);
            else
                lost.Add(sequence);
        }

        return (entries.ToImmutable(), lost);
    }

    private JobEntry? ByIndex(string job, long sequence) => One(
        $"SELECT {Columns} FROM entries WHERE job = @job AND sequence = @sequence",
        row => new JobEntry(sequence, row.GetString(0), row.GetString(1), row.GetString(2)),
        ("@job", job),
        ("@sequence", sequence));

    private JobEntry? ByRow(string job, long sequence, long most) => (rowOf ??= Rows(most)).TryGetValue((job, sequence), out long row)
        ? One($"SELECT {Columns} FROM entries NOT INDEXED WHERE rowid = @row", found => new JobEntry(sequence, found.GetString(0), found.GetString(1), found.GetString(2)), ("@row", row))
        : null;

    // Entries are only ever added, so that rows are numbered from 1 without a gap.
    private Dictionary<(string, long), long> Rows(long most)
    {
        var rows = new Dictionary<(string, long), long>();
        for (long row = 1; row <= most; row++)
        {
            if (One("SELECT job, sequence FROM entries NOT INDEXED WHERE rowid = @row", found => (ValueTuple<string, long>?)(found.GetString(0), found.GetInt64(1)), ("@row", row)) is { } entry)
                rows.TryAdd(entry, row);
        }

        return rows;
    }

    private T? One<T>(string question, Func<SqliteDataReader, T> read, params ReadOnlySpan<(string Name, object Value)> values)
    {
        using SqliteCommand select = connection.CreateCommand();
#pragma warning disable CA2100 // Every text stands in this file.
        select.CommandText = question;
#pragma warning restore CA2100
        foreach ((string name, object value) in values)
            select.Parameters.AddWithValue(name, value);
        try
        {
            using SqliteDataReader rows = select.ExecuteReader();
            return rows.Read() ? read(rows) : default;
        }
        catch (SqliteException)
        {
            return default;
        }
    }
}
