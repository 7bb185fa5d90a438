using System.Collections.Immutable;

namespace Contam.Jobs.Stores;

/// <summary>
/// The tables, as steps from one version to the next. A step that has been given out is never changed; a change is a new step at the end.
/// </summary>
internal static class Migrations
{
    /// <summary>The version that this program writes and understands.</summary>
    public static int Newest => ForSqlite.Length;

    /// <summary>Steps for SQLite; the step at index n leads from version n to n + 1.</summary>
    public static ImmutableArray<string> ForSqlite { get; } =
    [
        Tables,
        """
        CREATE TRIGGER entries_stay BEFORE UPDATE ON entries BEGIN SELECT RAISE(ABORT, 'entries are only ever added'); END;
        CREATE TRIGGER entries_remain BEFORE DELETE ON entries BEGIN SELECT RAISE(ABORT, 'entries are only ever added'); END;
        CREATE INDEX entries_by_kind ON entries (kind, job, sequence) WHERE kind IN ('opened', 'looked');
        """,
        Ledger + """
        CREATE TRIGGER ledger_stay BEFORE UPDATE ON ledger BEGIN SELECT RAISE(ABORT, 'jobs are only ever added'); END;
        CREATE TRIGGER ledger_remain BEFORE DELETE ON ledger BEGIN SELECT RAISE(ABORT, 'jobs are only ever added'); END;
        PRAGMA application_id = 1668183149;
        """,
        LooksByKind,
    ];

    /// <summary>What marks a file as a shop's: the letters "cntm" as a number.</summary>
    public const int ApplicationId = 1668183149;

    /// <summary>The triggers that keep entries and the list of opened jobs from being changed, in ordinal order.</summary>
    public static ImmutableArray<string> Triggers { get; } = ["entries_remain", "entries_stay", "ledger_remain", "ledger_stay"];

    /// <summary>The version from which there is a list of opened jobs.</summary>
    public const int WithLedger = 3;

    /// <summary>Steps for PostgreSQL, with the same versions. They run with the schema <c>contam</c> as the place where names are looked for.</summary>
    public static ImmutableArray<string> ForPostgres { get; } =
    [
        Tables + "CREATE TABLE version (version INTEGER NOT NULL, one BOOLEAN NOT NULL PRIMARY KEY DEFAULT TRUE CHECK (one)); INSERT INTO version (version) VALUES (0);",
        """
        CREATE FUNCTION entries_stay() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'entries are only ever added'; END $$;
        CREATE TRIGGER entries_stay BEFORE UPDATE OR DELETE ON entries FOR EACH ROW EXECUTE FUNCTION entries_stay();
        CREATE TRIGGER entries_remain BEFORE TRUNCATE ON entries FOR EACH STATEMENT EXECUTE FUNCTION entries_stay();
        CREATE INDEX entries_by_kind ON entries (kind, job, sequence) WHERE kind IN ('opened', 'looked');
        """,
        Ledger + """
        CREATE TRIGGER ledger_stay BEFORE UPDATE OR DELETE ON ledger FOR EACH ROW EXECUTE FUNCTION entries_stay();
        CREATE TRIGGER ledger_remain BEFORE TRUNCATE ON ledger FOR EACH STATEMENT EXECUTE FUNCTION entries_stay();
        """,
        LooksByKind,
    ];

    // A history also goes by the outcomes of looks that decide.
    private static string LooksByKind => "CREATE INDEX outcomes_by_kind ON entries (kind, job, sequence) WHERE kind = 'decided';";

    // A list of its own of every job that was ever opened: a job that is deleted with all its entries is still named here.
    private static string Ledger =>
        """
        CREATE TABLE ledger (number INTEGER NOT NULL PRIMARY KEY CHECK (number > 0), job TEXT NOT NULL UNIQUE);
        INSERT INTO ledger (number, job) SELECT row_number() OVER (ORDER BY opened, id), id FROM jobs;

        """;

    private static string Tables =>
        """
        CREATE TABLE texts (sha256 TEXT NOT NULL PRIMARY KEY, text TEXT NOT NULL);
        CREATE TABLE jobs (
            id TEXT NOT NULL PRIMARY KEY, sequence BIGINT NOT NULL, hash TEXT NOT NULL, customer TEXT NOT NULL, engine TEXT NOT NULL,
            family TEXT NOT NULL, failed TEXT NOT NULL, debris TEXT NOT NULL, state TEXT NOT NULL, done INTEGER NOT NULL, steps INTEGER NOT NULL,
            unanswered INTEGER NOT NULL, opened TEXT NOT NULL, last TEXT NOT NULL);
        CREATE TABLE entries (
            job TEXT NOT NULL REFERENCES jobs (id), sequence BIGINT NOT NULL CHECK (sequence > 0), previous TEXT NOT NULL, hash TEXT NOT NULL,
            kind TEXT NOT NULL, body TEXT NOT NULL, PRIMARY KEY (job, sequence));
        """;
}
