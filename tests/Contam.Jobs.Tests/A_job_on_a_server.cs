using Contam.Jobs.Tests.Stores;

namespace Contam.Jobs.Tests;

/// <summary>The commands with a shop on a server: nothing else is different.</summary>
public class A_job_on_a_server
{
    [Fact]
    public void Goes_from_open_to_release_and_back_out_as_the_same_document()
    {
        using JobBench bench = JobBench.WithJob(place: PostgresServer.Get().NewDatabase());
        // Nothing is cleaned or renewed yet, so that every part can still be looked at for the water.
        bench.TickTo(30);
        Assert.Equal(0, bench.Job("found", "forward-gear=water", "--yes").Exit);
        bench.TickAll();
        Assert.Equal(0, bench.Job("measure", "gearcase-pressure-hold", "10psi", "9.9psi", "--minutes", "10").Exit);
        Assert.Equal(0, bench.Job("measure", "gearcase-vacuum-hold", "0.30bar", "0.295bar", "--minutes", "5").Exit);
        Assert.Equal((0, 0), (bench.Job("release", "--by", "Bo").Exit, bench.Job("check").Exit));
        string id = bench.Read().Id;
        File.WriteAllText(bench.At("job.json"), bench.Job("export", "--job", id).Out);
        string file = bench.At("file.db");
        Assert.Equal(0, bench.Call("job", "import", bench.At("job.json"), "--shop", file).Exit);
        Assert.Equal(File.ReadAllText(bench.At("job.json")), bench.Call("job", "export", "--job", id, "--shop", file).Out);
        Assert.Equal(bench.Job("list").Out, bench.Call("job", "list", "--shop", file).Out);
    }

    [Fact]
    public void Is_checked_like_one_in_a_file()
    {
        PostgresServer server = PostgresServer.Get();
        using JobBench bench = JobBench.WithJob(place: server.NewDatabase());
        bench.Job("note", "on the slip");
        server.Execute(PostgresServer.DatabaseOf(bench.Shop), "SET session_replication_role = replica; UPDATE contam.entries SET body = replace(body, 'on the slip', 'on the quay') WHERE sequence = 2");
        Answer answer = bench.Job("check");
        Assert.Equal(1, answer.Exit);
        Assert.Contains(": entry 2 was changed after it was written.\n", answer.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false, "parts", "systems/families/outboard-gearcase.yaml")]
    [InlineData(false, "job", "list", "--shop", "FILE")]
    [InlineData(true, "job", "list", "--shop", "postgres://ada@127.0.0.1:1/shop")]
    public void Alone_loads_the_provider_of_a_server(bool loads, params string[] words)
    {
        using JobBench bench = JobBench.WithJob();
        LoadedAssemblies loaded = LoadedAssemblies.By(bench, words.Select(word => word == "FILE" ? bench.Shop : word));
        Assert.Equal(loads ? 2 : 0, loaded.Exit);
        Assert.Equal(loads, loaded.Names.Contains("Npgsql"));
    }
}
