using System.Collections.Immutable;
using System.Data;
using System.Data.Common;
using System.Globalization;
using Npgsql;

namespace Contam.Jobs.Stores;

/// <summary>
/// Jobs on a PostgreSQL server, for a shop with several benches: in a schema of their own, <c>contam</c>, of the database that is named. Who writes holds one
/// lock of the shop until the change is over, so that entries follow on one another whoever writes, and two never wait for each other in a circle.
/// </summary>
internal sealed class PostgresJobStore : SqlJobStore
{
    // The letters "contam" as a number: what the writers of a shop agree to lock. Locks of this sort belong to one database.
    private const long ShopLock = 0x636F6E74616D;

    private readonly PostgresPlace place;
    private readonly NpgsqlDataSource source;
    private NpgsqlConnection? connection;
    private int version;

    private PostgresJobStore(PostgresPlace place)
    {
        this.place = place;
        source = SourceOf(place);
    }

    public override string Place => place.Words;

    protected override DbConnection Connection => connection!;

    protected override string LockingClause => " FOR UPDATE";

    /// <summary>The shop at this place.</summary>
    /// <param name="place">Where it is.</param>
    /// <param name="use">What it is opened for.</param>
    /// <param name="patience">How long to wait for somebody else who writes; <c>null</c> for twenty seconds.</param>
    public static PostgresJobStore Open(PostgresPlace place, ShopUse use, TimeSpan? patience = null)
    {
        var store = new PostgresJobStore(place);
        try
        {
            store.Guarded(() =>
            {
                store.connection = store.source.OpenConnection();
                store.Prepare(use, patience ?? TimeSpan.FromSeconds(20));
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

    public override ImmutableArray<string> CheckPlace() => Guarded<ImmutableArray<string>>(() =>
    {
        using DbCommand ask = Command(null, "SELECT DISTINCT job FROM entries WHERE job NOT IN (SELECT id FROM jobs)");
        using DbDataReader rows = ask.ExecuteReader();
        var wrong = new List<string>();
        while (rows.Read())
            wrong.Add($"entries of {rows.GetString(0)} belong to no job");
        rows.Close();
        wrong.Sort(StringComparer.Ordinal);
        return [.. wrong, .. version >= Migrations.WithLedger ? Lost() : []];
    });

    public override ImmutableArray<string> Triggers() => Guarded(() =>
    {
        using DbCommand ask = Command(null, "SELECT tgname::text FROM pg_trigger WHERE NOT tgisinternal AND tgenabled IN ('O', 'A') AND tgrelid IN ('contam.entries'::regclass, 'contam.ledger'::regclass)");
        using DbDataReader rows = ask.ExecuteReader();
        var names = new List<string>();
        while (rows.Read())
            names.Add(rows.GetString(0));
        names.Sort(StringComparer.Ordinal);
        return names.ToImmutableArray();
    });

    public override void Dispose()
    {
        connection?.Dispose();
        source.Dispose();
    }

    protected override bool HasLedger => version >= Migrations.WithLedger;

    protected override DbTransaction BeginRead() => connection!.BeginTransaction(IsolationLevel.RepeatableRead);

    protected override DbTransaction BeginWrite()
    {
        // What is read behind the lock is read as it is then, not as it was before the wait; the level that sees the past would not.
        NpgsqlTransaction change = connection!.BeginTransaction(IsolationLevel.ReadCommitted);
        try
        {
            Execute(change, FormattableString.Invariant($"SELECT pg_advisory_xact_lock({ShopLock})"));
            return change;
        }
        catch
        {
            change.Dispose();
            throw;
        }
    }

    protected override ShopException? Translate(Exception fault) => PostgresFaults.Of(fault, place, hasConnected: connection is not null);

    private static NpgsqlDataSource SourceOf(PostgresPlace place)
    {
        var words = new NpgsqlConnectionStringBuilder
        {
            Host = place.Host,
            Port = place.Port,
            Database = place.Database,
            Username = place.User,
            Password = place.Password,
            RootCertificate = place.RootCertificate,
            ApplicationName = "contam",
            Timeout = 10,
            CommandTimeout = 60,
            Pooling = false,
            Enlist = false,
        };
        if (place.Transport is { } transport)
        {
            words.SslMode = transport switch
            {
                "disable" => SslMode.Disable,
                "allow" => SslMode.Allow,
                "prefer" => SslMode.Prefer,
                "require" => SslMode.Require,
                "verify-ca" => SslMode.VerifyCA,
                _ => SslMode.VerifyFull,
            };
        }

        return new NpgsqlSlimDataSourceBuilder(words.ToString()).EnableTransportSecurity().Build();
    }

    private void Prepare(ShopUse use, TimeSpan patience)
    {
        // A process that stops in the middle of a change must not hold up every bench; and an entry is acknowledged only when it is on the disk.
        Execute(null, FormattableString.Invariant($"""
            SET search_path = contam;
            SET lock_timeout = {(int)patience.TotalMilliseconds};
            SET idle_in_transaction_session_timeout = 60000;
            SELECT set_config('synchronous_commit', 'on', false) WHERE current_setting('synchronous_commit') IN ('off', 'local')
            """));
        if (Ask("SHOW server_encoding") is not "UTF8")
            throw new ShopException(ShopFault.Refused, $"{Place} keeps texts in another encoding than UTF8. Nothing was written. Make a database that does: createdb --encoding=UTF8 --template=template0 NAME.");
        version = Version(null);
        if (version > Migrations.Newest)
            throw new ShopException(ShopFault.Newer, FormattableString.Invariant($"{Place} was written by a later contam (its tables are version {version}, this one knows {Migrations.Newest}). Nothing was changed. Use the later contam, or name another shop with --shop."));
        if (version == 0 && use != ShopUse.Create)
            throw new ShopException(ShopFault.Missing, $"there is no shop at {Place} yet. contam job open makes it; another one is named with --shop.");
        // Who only reads changes nothing, not even tables of an earlier version.
        if (version < Migrations.Newest && use != ShopUse.Read)
            Migrate();
    }

    private void Migrate()
    {
        using DbTransaction change = BeginWrite();
        // Who may not make a schema may have been given one.
        if (Ask("SELECT to_regnamespace('contam')::text", change) is null)
            Execute(change, "CREATE SCHEMA contam");
        // Somebody else may have been quicker.
        for (version = Version(change); version < Migrations.Newest; version++)
        {
            Execute(change, Migrations.ForPostgres[version]);
            Execute(change, FormattableString.Invariant($"UPDATE version SET version = {version + 1}"));
        }

        change.Commit();
    }

    private int Version(DbTransaction? change) =>
        Ask("SELECT to_regclass('contam.version')::text", change) is null ? 0 : int.Parse(Ask("SELECT version::text FROM contam.version", change) ?? "0", CultureInfo.InvariantCulture);

    private string? Ask(string question, DbTransaction? change = null)
    {
        using DbCommand ask = Command(change, question);
        return ask.ExecuteScalar() as string;
    }
}
