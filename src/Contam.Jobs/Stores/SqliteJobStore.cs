using System.Collections.Immutable;
using System.Data;
using System.Data.Common;
using System.Globalization;
using Contam.Jobs.Entries;
using Microsoft.Data.Sqlite;

namespace Contam.Jobs.Stores;

/// <summary>How a shop file is opened.</summary>
internal sealed record SqliteOptions
{
    public static SqliteOptions Default { get; } = new();

    /// <summary>How long to wait for somebody else who writes.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(20);

    /// <summary>Only to read, also where the file could be written: by the system's own means, for a file that may not be written.</summary>
    public bool OnlyRead { get; init; }

    /// <summary>Most pages that the file may have; <c>null</c> for as many as the disk holds.</summary>
    public int? MostPages { get; init; }
}

/// <summary>
/// Jobs in one file. Written through a write-ahead log and brought to the disk before a change is acknowledged, so that neither a process that is killed
/// nor a power cut takes an acknowledged entry.
/// </summary>
internal sealed class SqliteJobStore : SqlJobStore
{
    // What SQLite calls its results; https://www.sqlite.org/rescode.html
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int InputOutput = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NoDatabase = 26;
    private const int NoRoomForIndex = InputOutput | (19 << 8);

    private readonly SqliteConnection connection;
    private readonly string file;
    private bool isSalvaged;
    private int version;
    private SqliteSalvage? salvage;

    static SqliteJobStore()
    {
        SQLitePCL.Batteries_V2.Init();
    }

    private SqliteJobStore(SqliteConnection connection, string file)
    {
        this.connection = connection;
        this.file = file;
    }

    public override string Place => file;

    protected override DbConnection Connection => connection;

    // BEGIN IMMEDIATE has locked the whole file.
    protected override string LockingClause => "";

    /// <summary>The shop in this file, to write to.</summary>
    public static SqliteJobStore Open(string file, bool mayCreate, SqliteOptions? options = null) => Open(file, mayCreate ? ShopUse.Create : ShopUse.Write, options);

    /// <summary>Makes a new shop file with what is put into it: it is there whole, or not at all.</summary>
    /// <param name="file">Where it is to be; nothing may be there.</param>
    /// <param name="fill">Puts in what is to be in it.</param>
    /// <exception cref="ShopException">Something is there, or it cannot be made.</exception>
    public static void Make(string file, Action<SqliteJobStore> fill)
    {
        bool isMade = !File.Exists(file) && !Directory.Exists(file) && NewShopFile.Make(
            file,
            beside =>
            {
                using SqliteJobStore made = Open(file, beside, ShopUse.Create, SqliteOptions.Default);
                // A copy of a shop in which a job is gone and its entries are not is made as it is.
                made.Execute(null, "PRAGMA foreign_keys = OFF");
                fill(made);
            },
            fault => Words(fault, file));
        if (!isMade)
            throw new ShopException(ShopFault.Refused, $"{file} is there already. Nothing was changed. Name a new file: a copy never takes the place of another.");
    }

    /// <summary>The shop in this file.</summary>
    /// <param name="file">Where it is.</param>
    /// <param name="use">What it is opened for.</param>
    /// <param name="options">How it is opened; <c>null</c> for the defaults.</param>
    public static SqliteJobStore Open(string file, ShopUse use, SqliteOptions? options = null)
    {
        options ??= SqliteOptions.Default;
        if (Directory.Exists(file))
            throw new ShopException(ShopFault.Missing, $"{file} is a folder. Name a file in it with --shop.");
        if (!File.Exists(file) && use != ShopUse.Create)
            throw new ShopException(ShopFault.Missing, $"there is no shop file {file} yet. contam job open makes it; another one is named with --shop FILE.");
        if (use == ShopUse.Create && !File.Exists(file))
            NewShopFile.Make(file, beside => Open(file, beside, use, options).Dispose(), fault => Words(fault, file));
        try
        {
            return Open(file, file, use, options);
        }
        catch (ShopException readOnly) when (readOnly.Fault == ShopFault.ReadOnly && !File.Exists(file + "-wal"))
        {
            // Who may write neither the file nor beside it cannot take part in the log, so that SQLite does not even let him read. Nobody else has the file
            // open, or the log would be there, so it can be read as one that does not change.
            return Open(file, $"file:{Uri.EscapeDataString(Path.GetFullPath(file))}?immutable=1", ShopUse.Read, options with { OnlyRead = true });
        }
    }

    private static SqliteJobStore Open(string file, string source, ShopUse use, SqliteOptions options)
    {
        var store = new SqliteJobStore(
            new SqliteConnection(new SqliteConnectionStringBuilder
            {
                DataSource = source,
                Mode = options.OnlyRead ? SqliteOpenMode.ReadOnly : SqliteOpenMode.ReadWrite,
                Pooling = false,
                DefaultTimeout = (int)Math.Ceiling(options.Patience.TotalSeconds),
            }.ToString()),
            file);
        try
        {
            store.Guarded(() =>
            {
                store.connection.Open();
                store.Prepare(use, options, isNew: source != file && !options.OnlyRead);
                return true;
            });
            return store;
        }
        catch
        {
            store.Dispose();
            throw;
        }
    }

    public override ImmutableArray<JobEntry> Entries(string job, out string? damage, long after = 0)
    {
        try
        {
            return base.Entries(job, out damage, after);
        }
        catch (ShopException broken) when (broken.Fault == ShopFault.Damaged)
        {
            return ReadOneByOne(job, out damage).RemoveAll(entry => entry.Sequence <= after);
        }
    }

    public override ImmutableArray<string> CheckPlace()
    {
        string[] cut = isSalvaged ? ["the file is shorter than it says itself: its end is gone"] : [];
        try
        {
            return Guarded(() => ImmutableArray.Create([.. cut, .. Lines("PRAGMA integrity_check").Where(line => line != "ok"), .. Lines("PRAGMA foreign_key_check").Select(line => $"a row of {line} belongs to no job"), .. version >= Migrations.WithLedger ? Lost() : []]));
        }
        catch (ShopException broken) when (broken.Fault == ShopFault.Damaged)
        {
            return [.. cut, "the file does not hang together: pieces of it are gone or written over"];
        }
    }

    public override ImmutableArray<string> Triggers() => Guarded(() => Lines("SELECT name FROM sqlite_master WHERE type = 'trigger' AND tbl_name IN ('entries', 'ledger') ORDER BY name").ToImmutableArray());

    public override void Dispose() => connection.Dispose();

    protected override bool HasLedger => version >= Migrations.WithLedger;

    protected override DbTransaction BeginRead() => connection.BeginTransaction(IsolationLevel.Serializable, deferred: true);

    protected override DbTransaction BeginWrite() => isSalvaged
        ? throw new ShopException(ShopFault.Damaged, $"{file} is damaged. Nothing was written. contam job check says where, and contam job export saves what can be read.")
        : connection.BeginTransaction(IsolationLevel.Serializable, deferred: false);

    protected override ShopException? Translate(Exception fault) => Words(fault, file);

    private static ShopException? Words(Exception fault, string file) => fault switch
    {
        SqliteException { SqliteErrorCode: Busy or Locked } => new ShopException(ShopFault.Locked, $"{file} is held by somebody else, who does not let go of it. Nothing was written. See who has it open, then do it again.", fault),
        SqliteException { SqliteErrorCode: ReadOnly } => new ShopException(ShopFault.ReadOnly, $"{file} may be read but not written. Nothing was written. Make file and folder writable, or name another file with --shop.", fault),
        SqliteException { SqliteErrorCode: Full } or SqliteException { SqliteExtendedErrorCode: NoRoomForIndex } => new ShopException(ShopFault.Full, $"there is no room left for {file}. Nothing was written, and what was there is whole. Make room on the disk, then do it again.", fault),
        SqliteException { SqliteErrorCode: NoDatabase } => new ShopException(ShopFault.Damaged, $"{file} is no shop file, or its beginning is damaged. Nothing was changed. Name another with --shop, or put the last good copy in its place.", fault),
        SqliteException { SqliteErrorCode: Corrupt } => new ShopException(ShopFault.Damaged, $"{file} is damaged. Nothing was written. contam job check says where, and contam job export saves what can be read.", fault),
        SqliteException { SqliteErrorCode: CannotOpen } or UnauthorizedAccessException => new ShopException(ShopFault.Missing, $"{file} cannot be opened. Check its name, its folder, and whether you may write there.", fault),
        SqliteException { SqliteErrorCode: InputOutput } or IOException => new ShopException(ShopFault.Damaged, $"{file} cannot be read or written: the disk reports an error. Nothing that was acknowledged is lost by contam. Copy the file and those beside it to another disk, then run contam job check on the copy.", fault),
        _ => null,
    };

    private void Prepare(ShopUse use, SqliteOptions options, bool isNew)
    {
        // The wait is SQLite's own, which asks again after a millisecond; the provider's asks every 150 ms.
        Execute(null, FormattableString.Invariant($"PRAGMA busy_timeout = {(int)options.Patience.TotalMilliseconds}"));
        Execute(null, "PRAGMA foreign_keys = ON");
        version = VersionOrSalvage();
        if (!isSalvaged && !isNew)
            Recognise();
        if (version > Migrations.Newest)
            throw new ShopException(ShopFault.Newer, FormattableString.Invariant($"{file} was written by a later contam (its tables are version {version}, this one knows {Migrations.Newest}). Nothing was changed. Use the later contam, or name another file with --shop."));
        if (options.OnlyRead || isSalvaged)
            return;
        if (use == ShopUse.Read)
        {
            // Not even tables of an earlier version are brought on.
            Execute(null, "PRAGMA query_only = ON");
            return;
        }

        if (version < Migrations.Newest)
        {
            Execute(null, "PRAGMA journal_mode = WAL");
            Migrate();
        }

        Execute(null, "PRAGMA synchronous = FULL");
        if (options.MostPages is { } most)
            Execute(null, FormattableString.Invariant($"PRAGMA max_page_count = {most}"));
    }

    /// <summary>
    /// The version of the tables. A file whose end is cut off SQLite does not read at all, unless it is told that its own description may be repaired; so told
    /// it gives what is there, and nothing is written.
    /// </summary>
    private int VersionOrSalvage()
    {
        try
        {
            return Version();
        }
        catch (SqliteException broken) when (broken.SqliteErrorCode == Corrupt)
        {
            Execute(null, "PRAGMA writable_schema = ON");
            isSalvaged = true;
            return Version();
        }
    }

    /// <summary>Whether this is a shop's file at all; nothing is ever put into another.</summary>
    private void Recognise()
    {
        List<string> tables = Lines("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name");
        bool isMarked = Lines("PRAGMA application_id") is [var id] && id == Migrations.ApplicationId.ToString(CultureInfo.InvariantCulture);
        bool hasTables = tables.Contains("entries") && tables.Contains("jobs") && tables.Contains("texts");
        // Files of the first versions bear no mark.
        if (hasTables && version > 0 && (isMarked || version < Migrations.WithLedger))
            return;
        throw tables.Count == 0
            ? new ShopException(ShopFault.Damaged, $"{file} is there and empty: no shop is in it, or it was emptied. Nothing was changed. Put the last good copy in its place; if there never was one, remove the file or name another with --shop.")
            : hasTables
                ? new ShopException(ShopFault.Damaged, $"{file} has the tables of a shop, but what marks it as one was changed (application id or version). Nothing was changed. Put the last good copy in its place.")
                : new ShopException(ShopFault.Refused, $"{file} is a database of something else, not a shop's. Nothing was changed. Name another file with --shop.");
    }

    private void Migrate()
    {
        using DbTransaction change = BeginWrite();
        // Somebody else may have been quicker.
        for (version = Version(change); version < Migrations.Newest; version++)
        {
            Execute(change, Migrations.ForSqlite[version]);
            Execute(change, FormattableString.Invariant($"PRAGMA user_version = {version + 1}"));
        }

        change.Commit();
    }

    private int Version(DbTransaction? change = null)
    {
        using DbCommand ask = Command(change, "PRAGMA user_version");
        return Convert.ToInt32(ask.ExecuteScalar(), CultureInfo.InvariantCulture);
    }

    private List<string> Lines(string question)
    {
        using DbCommand ask = Command(null, question);
        using DbDataReader rows = ask.ExecuteReader();
        var lines = new List<string>();
        while (rows.Read())
            lines.Add(rows.GetValue(0).ToString() ?? "");
        return lines;
    }

    private ImmutableArray<JobEntry> ReadOneByOne(string job, out string? damage)
    {
        long last = OrNothing(() => Find(job)?.Sequence ?? 0);
        // Where even the list cannot be read, as many as this job alone has.
        long most = Math.Max(last, OrNothing(() => List().Sum(one => one.Sequence)));
        salvage ??= new SqliteSalvage(connection);
        (ImmutableArray<JobEntry> entries, List<long> lost) = salvage.Read(job, last, most);
        damage = lost.Count == 0 ? null : FormattableString.Invariant($"{lost.Count} of {last} entries cannot be read: {string.Join(", ", lost.Take(20))}{(lost.Count > 20 ? ", …" : "")}");
        return entries;
    }

    private static long OrNothing(Func<long> read)
    {
        try
        {
            return read();
        }
        catch (ShopException)
        {
            return 0;
        }
    }
}
