using Contam.Jobs.Entries;
using Contam.Support;

namespace Contam.Jobs.Tests;

/// <summary>Whose engine it is stands in the record, and where it was asked for; nowhere else. Nothing leaves the machine.</summary>
public class What_is_nobodys_business
{
    private const string Customer = "Zebedee Marchbanks";
    private const string Engine = "hull 77-QX";
    private const string Family = JobBench.Gearcase;

    [Fact]
    public void Goes_into_no_plan_picture_or_answer_that_is_not_the_record()
    {
        using JobBench bench = Shop();
        string plan = bench.Job("found", "forward-gear=water", "--yes").Out;
        JobRecord job = bench.Read();
        using Contam.Jobs.Stores.IJobStore store = Contam.Jobs.Stores.Shops.Open(bench.Shop, mayCreate: false);
        var kept = new JobBook(store);
        string[] history = ["--use-history", "--shop", bench.Shop];
        string[] answers =
        [
            plan,
            .. job.Bodies.OfType<Replanned>().Select(one => kept.Text(one.Plan)),
            kept.Text(job.State.Opened.Plan),
            .. job.State.Opened.Family.Concat(job.State.Opened.Standard).Select(file => file.Name + kept.Text(file.Sha256)),
            .. new[] { "text", "json", "markdown", "html", "csv" }.Select(format => Said(bench, "plan", Family, "--failed", "pinion", "--debris", "metal", "--format", format)),
            .. new[] { "mermaid", "svg", "dot" }.Select(format => Said(bench, "draw", Family, "--failed", "pinion", "--debris", "metal", "--format", format)),
            .. new[] { "text", "json" }.Select(format => Said(bench, ["suspects", Family, "--debris", "metal", "--clean", "lower-plug", "--format", format, .. history])),
            .. new[] { "text", "json" }.Select(format => Said(bench, ["stop-line", Family, "--failed", "pinion", "--debris", "metal", "--format", format, .. history])),
            .. new[] { "text", "json" }.Select(format => Said(bench, "job", "history", "--part", "forward-gear", "--format", format, "--shop", bench.Shop)),
            Said(bench, "job", "show", "--format", "json", "--shop", bench.Shop),
            Said(bench, "job", "release", "--shop", bench.Shop),
            Said(bench, "job", "check", "--shop", bench.Shop),
        ];
        Assert.All(answers, answer =>
        {
            Assert.NotEmpty(answer);
            Hides(answer);
            Assert.DoesNotContain(Path.GetDirectoryName(bench.Shop)!, answer, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Goes_into_no_error()
    {
        using JobBench bench = Shop();
        Assert.Equal(0, bench.Open().Exit);
        string[][] calls =
        [
            ["tick", "1"], ["tick", "999", "--job", "?"], ["tick", "12", "--job", "?"], ["untick", "1", "--because", "x", "--job", "?"], ["show", "--job", "zzz"], ["found", "nowhere=metal", "--job", "?"],
            ["found", "pinion=gold", "--job", "?"], ["measure", "nothing", "1mm", "--job", "?"], ["measure", "pinion-backlash", "x", "--job", "?", "--stack"], ["back", "pinion", "--job", "?"], ["ordered", "nothing", "--job", "?"],
            ["photo", "none.jpg", "--job", "?"], ["import", "none.json"], ["release", "--job", "?"], ["nonsense"],
        ];
        string id = bench.List().Single(job => job.Customer == Customer).Id;
        foreach (string[] call in calls)
        {
            Answer answer = bench.Job([.. call.Select(word => word == "?" ? id : word)]);
            Assert.NotEqual(0, answer.Exit);
            Hides(answer.Error);
        }

        // Damaged: what is said of it names the job by its id.
        using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={bench.Shop};Pooling=False"))
        {
            connection.Open();
            using Microsoft.Data.Sqlite.SqliteCommand command = connection.CreateCommand();
            command.CommandText = $"DROP TRIGGER entries_stay; UPDATE entries SET body = replace(body, 'Ada', 'Eve') WHERE job = '{id}'";
            command.ExecuteNonQuery();
        }

        foreach (string word in new[] { "show", "check", "export", "next" })
        {
            Answer answer = bench.Job(word == "check" ? [word] : [word, "--job", id, "--stack"]);
            Assert.NotEqual(0, answer.Exit);
            Assert.Contains(id, answer.Error + answer.Out, StringComparison.Ordinal);
            Hides(answer.Error);
        }
    }

    [Fact]
    public void Is_in_the_record_where_it_was_asked_for()
    {
        using JobBench bench = Shop();
        foreach (string[] call in new[] { new[] { "list" }, ["show"], ["next"], ["export"] })
            Assert.Contains(Customer, bench.Job(call).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(typeof(Families.Family), "")]
    [InlineData(typeof(Contam.Reports.Text.TextPage), "")]
    // What the provider of a database server throws where there is no server, and where the transport to it is refused. Neither opens a connection.
    [InlineData(typeof(JobBook), "System.Net.Sockets.SocketException System.Security.Authentication.AuthenticationException")]
    [InlineData(typeof(Cli.ContamCommand), "")]
    public void Cannot_leave_the_machine_by_code_of_ours(Type of, string allowed)
    {
        NamedTypes named = NamedTypes.In(of.Assembly);
        Assert.Equal(allowed.Split(' ', StringSplitOptions.RemoveEmptyEntries), named.OfNetworks);
        Assert.DoesNotContain("System.Diagnostics.Process", named.All);
        // The one way out is that provider, which is used where --shop names a server.
        Assert.Equal(of == typeof(JobBook), named.Assemblies.Contains("Npgsql"));
        Assert.Equal(of == typeof(Families.Family) ? ["open"] : Array.Empty<string>(), named.NativeFunctions);
    }

    [Fact]
    public void Is_looked_for_where_it_would_be_seen()
    {
        // This assembly listens on a port, starts processes and has a connection: were the look blind, the test above could not fail.
        NamedTypes named = NamedTypes.In(typeof(What_is_nobodys_business).Assembly);
        Assert.Contains("System.Net.Sockets.TcpListener", named.OfNetworks);
        Assert.Contains("System.Net.Security.SslStream", named.OfNetworks);
        Assert.Contains("System.Diagnostics.Process", named.All);
        Assert.Contains("Npgsql", named.Assemblies);
    }

    private static void Hides(string text)
    {
        foreach (string word in $"{Customer} {Engine}".Split(' ').Where(word => word != "hull"))
            Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase);
    }

    private static string Said(JobBench bench, params string[] words) => bench.Call(words) is var answer ? answer.Out + answer.Error : "";

    private static JobBench Shop()
    {
        var bench = new JobBench();
        bench.WritePlan();
        Assert.Equal(0, bench.Job("open", RepositoryFiles.At(Family), "--plan", bench.At("plan.json"), "--customer", Customer, "--engine", Engine, "--technician", "Ada").Exit);
        return bench;
    }
}
