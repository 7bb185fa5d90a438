using System.Collections.Immutable;
using System.Data.Common;
using Contam.Jobs.Entries;
using Contam.Jobs.Work;

namespace Contam.Jobs.Stores;

/// <summary>What any SQL database does alike: the statements, and that every change is one transaction. One connection, used by one thread.</summary>
internal abstract class SqlJobStore : IJobStore
{
    private const string SummaryColumns = ShopTable.SummaryColumns;

    // What the standard calls a row that names one that is not there; ISO/IEC 9075-2.
    private const string ForeignKeyViolation = "23503";

    // The change in which what to add is being decided: what is read meanwhile is read within it.
    private DbTransaction? deciding;

    public abstract string Place { get; }

    protected abstract DbConnection Connection { get; }

    public bool Create(JobAddition first) => Guarded(() =>
    {
        using DbTransaction change = BeginWrite();
        if (FindIn(change, first.Summary.Id, forUpdate: true) is not null)
            return false;
        WriteSummary(change, first.Summary, $"INSERT INTO jobs ({SummaryColumns}) VALUES (@id, @sequence, @hash, @customer, @engine, @family, @failed, @debris, @state, @done, @steps, @unanswered, @opened, @last)");
        WriteEntries(change, first);
        using DbCommand list = Command(change, "INSERT INTO ledger (number, job) VALUES ((SELECT COALESCE(MAX(number), 0) + 1 FROM ledger), @id)", ("@id", first.Summary.Id));
        list.ExecuteNonQuery();
        change.Commit();
        return true;
    });

    public JobAddition? Append(string job, Func<JobSummary, JobAddition?> decide) => Guarded(() =>
    {
        using DbTransaction change = BeginWrite();
        if (FindIn(change, job, forUpdate: true) is not { } head || Decided(change, head, decide) is not { } addition)
            return null;
        if (addition.Entries.IsEmpty || addition.Entries[0].Previous != head.Hash || addition.Entries[0].Sequence != head.Sequence + 1)
            throw new ArgumentException("the entries do not follow on the last one", nameof(decide));
        WriteSummary(change, addition.Summary, """
            UPDATE jobs SET sequence = @sequence, hash = @hash, customer = @customer, engine = @engine, family = @family, failed = @failed, debris = @debris,
                state = @state, done = @done, steps = @steps, unanswered = @unanswered, opened = @opened, last = @last WHERE id = @id
            """);
        WriteEntries(change, addition);
        change.Commit();
        return addition;
    });

    public JobSummary? Find(string job) => Guarded(() => FindIn(null, job, forUpdate: false));

    public ImmutableArray<JobSummary> List() => Guarded(() =>
    {
        using DbCommand select = Command(null, $"SELECT {SummaryColumns} FROM jobs");
        using DbDataReader rows = select.ExecuteReader();
        var list = new List<JobSummary>();
        while (rows.Read())
            list.Add(SummaryOf(rows));
        // Sorted here, since databases sort texts by rules of their own. Times bear offsets, so they are compared as times.
        return list.Select(job => (Job: job, Last: JobSummary.TimeOf(job.Last))).OrderByDescending(one => one.Last).ThenBy(one => one.Job.Id, StringComparer.Ordinal).Select(one => one.Job).ToImmutableArray();
    });

    public virtual ImmutableArray<JobEntry> Entries(string job, out string? damage, long after = 0)
    {
        damage = null;
        return Guarded(() =>
        {
            using DbCommand select = Command(null, "SELECT sequence, previous, hash, body FROM entries WHERE job = @job AND sequence > @after ORDER BY sequence", ("@job", job), ("@after", after));
            using DbDataReader rows = select.ExecuteReader();
            var entries = ImmutableArray.CreateBuilder<JobEntry>();
            while (rows.Read())
                entries.Add(new JobEntry(rows.GetInt64(0), rows.GetString(1), rows.GetString(2), rows.GetString(3)));
            return entries.ToImmutable();
        });
    }

    public string? Text(string sha256) => Guarded(() =>
    {
        using DbCommand select = Command(null, "SELECT text FROM texts WHERE sha256 = @sha256", ("@sha256", sha256));
        return select.ExecuteScalar() as string;
    });

    public IEnumerable<EntryOfJob> EntriesOfKind(params ImmutableArray<string> kinds)
    {
        var jobOf = List().ToDictionary(job => job.Id, StringComparer.Ordinal);
        return Guarded(() =>
        {
            var entries = new List<EntryOfJob>();
            foreach (string kind in kinds)
            {
                // Each of the two has an index of its own, which is used only where its condition is named.
                string indexed = kind == "decided" ? "kind = 'decided'" : "kind IN ('opened', 'looked')";
                using DbCommand select = Command(null, $"SELECT job, sequence, previous, hash, body FROM entries WHERE kind = @kind AND {indexed}", ("@kind", kind));
                using DbDataReader rows = select.ExecuteReader();
                while (rows.Read())
                {
                    if (jobOf.TryGetValue(rows.GetString(0), out JobSummary? job))
                        entries.Add(new EntryOfJob(job, new JobEntry(rows.GetInt64(1), rows.GetString(2), rows.GetString(3), rows.GetString(4))));
                }
            }

            return entries.OrderBy(one => one.Job.Id, StringComparer.Ordinal).ThenBy(one => one.Entry.Sequence).ToList();
        });
    }

    public abstract ImmutableArray<string> CheckPlace();

    public abstract ImmutableArray<string> Triggers();

    public abstract void Dispose();

    /// <summary>Begins to read what is there now, whatever others write meanwhile.</summary>
    protected abstract DbTransaction BeginRead();

    /// <summary>Whether there is a list of opened jobs; shops of the first versions have none.</summary>
    protected abstract bool HasLedger { get; }

    /// <summary>
    /// Every row of the shop as it stands at one moment, in an order of its own. Readable while others write; they do not wait.
    /// </summary>
    /// <param name="take">Is given the table and a row of it, column by column as in <see cref="ShopTable"/>.</param>
    public void ReadAll(Action<ShopTable, object[]> take) => Guarded(() =>
    {
        using DbTransaction now = BeginRead();
        foreach (ShopTable table in ShopTable.All)
        {
            using DbCommand select = Command(now, table == ShopTable.Ledger && !HasLedger ? ShopTable.LedgerOfJobs : $"SELECT {table.Columns} FROM {table.Name} ORDER BY {table.Order}");
            using DbDataReader rows = select.ExecuteReader();
            while (rows.Read())
            {
                var row = new object[table.Names.Length];
                rows.GetValues(row);
                take(table, row);
            }
        }

        return true;
    });

    /// <summary>Puts every row of another shop into this one, which must be empty: all of it, or nothing.</summary>
    /// <param name="other">The other shop.</param>
    /// <param name="sent">Is given each row that is put in.</param>
    /// <exception cref="ShopException">There are jobs in this one, or one of the two cannot be read or written.</exception>
    public void FillFrom(SqlJobStore other, Action<ShopTable, object[]> sent) => Guarded(() =>
    {
        using DbTransaction change = BeginWrite();
        using (DbCommand any = Command(change, "SELECT job FROM ledger"))
        {
            if (any.ExecuteScalar() is not null)
                throw new ShopException(ShopFault.Refused, $"{Place} has jobs already. Nothing was changed. Name a new file, or a database without jobs.");
        }

        other.ReadAll((table, row) =>
        {
            using DbCommand insert = Command(change, $"INSERT INTO {table.Name} ({table.Columns}) VALUES ({string.Join(", ", table.Names.Select(name => "@" + name))})", [.. table.Names.Zip(row, (name, value) => ("@" + name, value))]);
            try
            {
                insert.ExecuteNonQuery();
            }
            catch (DbException torn) when (torn.SqlState == ForeignKeyViolation)
            {
                throw new ShopException(ShopFault.Damaged, $"{other.Place} has entries of a job that is gone, which no server takes. Nothing was changed. Restore it into a file; contam job check says which job.", torn);
            }

            sent(table, row);
        });
        change.Commit();
        return true;
    });

    /// <summary>Begins a change while which nobody else can write what it reads.</summary>
    protected abstract DbTransaction BeginWrite();

    /// <summary>What the database says, in our words; <c>null</c> where it is a fault of the program.</summary>
    protected abstract ShopException? Translate(Exception fault);

    /// <summary>What locks the row of a job until the change is over, where beginning it has not locked everything.</summary>
    protected abstract string LockingClause { get; }

    protected T Guarded<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        catch (Exception fault) when (fault is not ShopException && Translate(fault) is not null)
        {
            throw Translate(fault)!;
        }
    }

    protected DbCommand Command(DbTransaction? change, string text, params ReadOnlySpan<(string Name, object Value)> values)
    {
        DbCommand command = Connection.CreateCommand();
#pragma warning disable CA2100 // Every text stands in this program; what people write goes in as parameters.
        command.CommandText = text;
#pragma warning restore CA2100
        command.Transaction = change ?? deciding;
        foreach ((string name, object value) in values)
        {
            DbParameter parameter = command.CreateParameter();
            parameter.ParameterName = name;
            parameter.Value = value;
            command.Parameters.Add(parameter);
        }

        return command;
    }

    protected void Execute(DbTransaction? change, string text)
    {
        using DbCommand command = Command(change, text);
        command.ExecuteNonQuery();
    }

    /// <summary>Jobs that were opened and are gone, or are there and were never opened, and triggers that are gone; a clause each.</summary>
    protected IEnumerable<string> Lost()
    {
        var listed = new List<(long Number, string Job)>();
        using (DbCommand select = Command(null, "SELECT number, job FROM ledger"))
        {
            using DbDataReader rows = select.ExecuteReader();
            while (rows.Read())
                listed.Add((Convert.ToInt64(rows.GetValue(0), System.Globalization.CultureInfo.InvariantCulture), rows.GetString(1)));
        }

        listed.Sort();
        var there = List().Select(job => job.Id).ToHashSet(StringComparer.Ordinal);
        var known = listed.Select(one => one.Job).ToHashSet(StringComparer.Ordinal);
        foreach ((_, string job) in listed.Where(one => !there.Contains(one.Job)))
            yield return $"job {job} was opened here and is gone, with every entry";
        foreach (string job in there.Where(job => !known.Contains(job)).Order(StringComparer.Ordinal))
            yield return $"job {job} is here and was never opened";
        if (listed.Count > 0 && listed[^1].Number != listed.Count)
            yield return "the list of opened jobs has a gap";
        foreach (string gone in Migrations.Triggers.Except(Triggers(), StringComparer.Ordinal))
            yield return $"the trigger {gone} is gone: what it guards could be changed";
    }

    private JobAddition? Decided(DbTransaction change, JobSummary head, Func<JobSummary, JobAddition?> decide)
    {
        deciding = change;
        try
        {
            return decide(head);
        }
        finally
        {
            deciding = null;
        }
    }

    private JobSummary? FindIn(DbTransaction? change, string job, bool forUpdate)
    {
        using DbCommand select = Command(change, $"SELECT {SummaryColumns} FROM jobs WHERE id = @id{(forUpdate ? LockingClause : "")}", ("@id", job));
        using DbDataReader rows = select.ExecuteReader();
        return rows.Read() ? SummaryOf(rows) : null;
    }

    private void WriteSummary(DbTransaction change, JobSummary job, string statement)
    {
        using DbCommand write = Command(
            change,
            statement,
            ("@id", job.Id),
            ("@sequence", job.Sequence),
            ("@hash", job.Hash),
            ("@customer", job.Customer),
            ("@engine", job.Engine),
            ("@family", job.Family),
            ("@failed", job.Failed),
            ("@debris", job.Debris),
            ("@state", job.State),
            ("@done", job.Done),
            ("@steps", job.Steps),
            ("@unanswered", job.Unanswered),
            ("@opened", job.Opened),
            ("@last", job.Last));
        write.ExecuteNonQuery();
    }

    private void WriteEntries(DbTransaction change, JobAddition addition)
    {
        foreach (string text in addition.Texts)
        {
            using DbCommand keep = Command(change, "INSERT INTO texts (sha256, text) VALUES (@sha256, @text) ON CONFLICT DO NOTHING", ("@sha256", EntryChain.Sha256(text)), ("@text", text));
            keep.ExecuteNonQuery();
        }

        foreach (JobEntry entry in addition.Entries)
        {
            using DbCommand insert = Command(
                change,
                "INSERT INTO entries (job, sequence, previous, hash, kind, body) VALUES (@job, @sequence, @previous, @hash, @kind, @body)",
                ("@job", addition.Summary.Id),
                ("@sequence", entry.Sequence),
                ("@previous", entry.Previous),
                ("@hash", entry.Hash),
                ("@kind", EntryJson.KindOf(entry.Body)),
                ("@body", entry.Body));
            insert.ExecuteNonQuery();
        }
    }

    private static JobSummary SummaryOf(DbDataReader row) => new()
    {
        Id = row.GetString(0),
        Sequence = row.GetInt64(1),
        Hash = row.GetString(2),
        Customer = row.GetString(3),
        Engine = row.GetString(4),
        Family = row.GetString(5),
        Failed = row.GetString(6),
        Debris = row.GetString(7),
        State = row.GetString(8),
        Done = row.GetInt32(9),
        Steps = row.GetInt32(10),
        Unanswered = row.GetInt32(11),
        Opened = row.GetString(12),
        Last = row.GetString(13),
    };
}
