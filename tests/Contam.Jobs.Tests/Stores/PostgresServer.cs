using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Npgsql;

namespace Contam.Jobs.Tests.Stores;

/// <summary>
/// A real PostgreSQL server from the system's own packages, in a folder of its own, for this run of the tests alone. It ends, and its folder goes, when the
/// test process lets go of its end of the pipe, however that process ends. Each test has a database of its own.
/// </summary>
internal sealed class PostgresServer
{
    public const string User = "contam";

    public const string Password = "s3cret/w@rd";

    // The server refuses to run as root. mktemp makes the folder as the user that it does run as.
    private const string Script = """
        set -e
        export LC_ALL=C
        d=$(mktemp -d /tmp/contam-server.XXXXXX)
        trap 'rm -rf "$d"' EXIT
        printf %s "$3" > "$d/word"
        "$1/initdb" -D "$d/data" --encoding=UTF8 --locale=C --username=contam --auth-local=trust --auth-host=scram-sha-256 --pwfile="$d/word" > /dev/null
        "$1/postgres" -D "$d/data" -k "$d" -h 127.0.0.1 -p "$2" 2> "$d/log" &
        server=$!
        until "$1/pg_isready" -q -h "$d" -p "$2"; do kill -0 $server || { cat "$d/log"; exit 1; }; sleep 0.05; done
        echo "$d"
        cat > /dev/null
        kill -INT $server
        wait $server
        """;

    private static readonly Lazy<(PostgresServer? Server, string WhyNot)> One = new(Start);

    private static int databases;

    private readonly Process holder;

    private PostgresServer(Process holder, string folder, int port)
    {
        this.holder = holder;
        Folder = folder;
        Port = port;
    }

    /// <summary>The folder of its socket, through which no password is asked for.</summary>
    public string Folder { get; }

    public int Port { get; }

    /// <summary>The server; where there is none the test is skipped and says why, and fails where <c>CI=true</c>.</summary>
    public static PostgresServer Get()
    {
        if (One.Value.Server is { } server)
            return server;
        RealMachine.SkipUnlessInCi(One.Value.WhyNot);
        throw new UnreachableException();
    }

    /// <summary>A database of its own, as a place for <c>--shop</c>.</summary>
    public string NewDatabase(string options = "")
    {
        string name = string.Create(CultureInfo.InvariantCulture, $"bench{Interlocked.Increment(ref databases)}");
        Execute("postgres", $"CREATE DATABASE {name} {options}");
        return Address(name);
    }

    /// <summary>The address of a database through the socket.</summary>
    public string Address(string database, string user = User) => string.Create(CultureInfo.InvariantCulture, $"postgres://{user}@localhost:{Port}/{database}?host={Folder}");

    /// <summary>The address of a database through the network, where a password is asked for.</summary>
    public string NetworkAddress(string database, string? password, string user = User) =>
        string.Create(CultureInfo.InvariantCulture, $"postgres://{user}{(password is null ? "" : ":" + Uri.EscapeDataString(password))}@127.0.0.1:{Port}/{database}");

    /// <summary>The name of the database in an address.</summary>
    public static string DatabaseOf(string address) => address.Split('/')[3].Split('?')[0];

    public NpgsqlConnection Connect(string database)
    {
        var connection = new NpgsqlConnection(string.Create(CultureInfo.InvariantCulture, $"Host={Folder};Port={Port};Username={User};Database={database};Pooling=false"));
        connection.Open();
        return connection;
    }

    public void Execute(string database, string text)
    {
        using NpgsqlConnection connection = Connect(database);
        using NpgsqlCommand command = connection.CreateCommand();
        command.CommandText = text;
        command.ExecuteNonQuery();
    }

    private static (PostgresServer? Server, string WhyNot) Start()
    {
        string? programs = Directory.Exists("/usr/lib/postgresql") ? Directory.EnumerateDirectories("/usr/lib/postgresql").Order(StringComparer.Ordinal).Select(folder => Path.Combine(folder, "bin")).LastOrDefault(folder => File.Exists(Path.Combine(folder, "initdb"))) : null;
        if (programs is null)
            return (null, "there is no PostgreSQL server here; on Debian: apt-get install postgresql");
        int port = FreePort();
        string[] call = ["sh", "-c", Script, "server", programs, port.ToString(CultureInfo.InvariantCulture), Password];
        if (Environment.IsPrivilegedProcess)
            call = ["runuser", "-u", "postgres", "--", .. call];
        var process = Process.Start(new ProcessStartInfo(call[0], call[1..]) { RedirectStandardInput = true, RedirectStandardOutput = true, WorkingDirectory = "/tmp" })!;
        string said = process.StandardOutput.ReadLine() ?? "";
        return Directory.Exists(said) ? (new PostgresServer(process, said, port), "") : (null, $"the PostgreSQL server here does not start: {said}");
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
