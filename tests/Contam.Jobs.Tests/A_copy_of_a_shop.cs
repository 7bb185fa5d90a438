using Contam.Jobs.Documents;
using Contam.Jobs.Stores;
using Contam.Jobs.Tests.Stores;
using Microsoft.Data.Sqlite;

namespace Contam.Jobs.Tests;

/// <summary>The whole shop in a file elsewhere, and the way back from it.</summary>
public class A_copy_of_a_shop
{
    [Fact]
    public void Is_the_shop_and_goes_back_to_one()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickTo(12);
        string copy = bench.At("copy.db");
        Answer made = bench.Job("backup", copy);
        Assert.Equal((0, "FOLDER/copy.db holds all of FOLDER/shop.db: 1 job, 13 entries and 4 triggers.\n", ""), (made.Exit, Named(bench, made.Out), made.Error));
        AssertSame(bench, copy);

        string back = bench.At("back.db");
        Answer restored = bench.Call("job", "restore", copy, "--shop", back);
        Assert.Equal((0, "FOLDER/back.db holds all of FOLDER/copy.db: 1 job, 13 entries and 4 triggers.\n", ""), (restored.Exit, Named(bench, restored.Out), restored.Error));
        AssertSame(bench, back);
        // Work goes on in it.
        Assert.Equal(0, bench.Call("job", "tick", "13", "--shop", back).Exit);
        Assert.Equal(0, bench.Call("job", "check", "--shop", back).Exit);
    }

    [Fact]
    public void Goes_from_a_lost_server_to_a_new_one()
    {
        PostgresServer server = PostgresServer.Get();
        using JobBench bench = JobBench.WithJob(place: server.NewDatabase());
        bench.TickTo(12);
        string copy = bench.At("copy.db");
        Assert.Equal(0, bench.Job("backup", copy).Exit);
        AssertSame(bench, copy);
        string other = server.NewDatabase();
        Answer restored = bench.Call("job", "restore", copy, "--shop", other);
        Assert.Equal((0, ""), (restored.Exit, restored.Error));
        AssertSame(bench, other);
        Assert.Equal(0, bench.Call("job", "tick", "13", "--shop", other).Exit);
        Answer again = bench.Call("job", "restore", copy, "--shop", other);
        Assert.Equal(2, again.Exit);
        Assert.Contains(" has jobs already. Nothing was changed.", again.Error, StringComparison.Ordinal);
        Assert.Equal(0, bench.Call("job", "check", "--shop", other).Exit);
    }

    [Fact]
    public void Takes_the_place_of_nothing()
    {
        using JobBench bench = JobBench.WithJob();
        string copy = bench.At("copy.db");
        File.WriteAllText(copy, "a letter");
        Answer onto = bench.Job("backup", copy);
        Answer itself = bench.Job("backup", bench.Shop);
        Answer into = bench.Call("job", "restore", bench.Shop, "--shop", bench.Shop);
        Assert.All(new[] { onto, itself, into }, answer =>
        {
            Assert.Equal(2, answer.Exit);
            Assert.EndsWith(" is there already. Nothing was changed. Name a new file: a copy never takes the place of another.\n", answer.Error, StringComparison.Ordinal);
        });
        Assert.Equal("a letter", File.ReadAllText(copy));
        Assert.Equal(0, bench.Job("check").Exit);
    }

    [Theory]
    [InlineData("systems/families/outboard-gearcase.yaml", "is no shop file")]
    [InlineData("no-such.db", "there is no shop file")]
    public void Is_made_from_nothing_but_a_shop(string file, string why)
    {
        using JobBench bench = JobBench.WithJob();
        Answer answer = bench.Call("job", "restore", file, "--shop", bench.At("back.db"));
        Assert.Equal(2, answer.Exit);
        Assert.Contains(why, answer.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(bench.At("back.db")));
    }

    [Fact]
    public void Says_what_was_changed_behind_the_back_and_is_kept_all_the_same()
    {
        using JobBench bench = JobBench.WithJob();
        bench.Job("note", "on the slip");
        Execute(bench.Shop, "DROP TRIGGER entries_stay; UPDATE entries SET body = replace(body, 'on the slip', 'on the quay') WHERE sequence = 2");
        Answer answer = bench.Job("backup", bench.At("copy.db"));
        Assert.Equal(1, answer.Exit);
        Assert.Contains(": entry 2 was changed after it was written.\n", answer.Out, StringComparison.Ordinal);
        Assert.Contains(": entry 2 was changed after it was written.\n", bench.Call("job", "check", "--shop", bench.At("copy.db")).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Keeps_the_entries_of_a_job_that_is_gone_in_a_file_and_says_why_not_on_a_server()
    {
        using JobBench bench = JobBench.WithJob();
        Execute(bench.Shop, "PRAGMA foreign_keys = OFF; DELETE FROM jobs");
        Answer answer = bench.Job("backup", bench.At("copy.db"));
        Assert.Equal(1, answer.Exit);
        Assert.Equal(bench.Job("check").Out, bench.Call("job", "check", "--shop", bench.At("copy.db")).Out);
        Answer server = bench.Call("job", "restore", bench.At("copy.db"), "--shop", PostgresServer.Get().NewDatabase());
        Assert.Equal(2, server.Exit);
        Assert.Contains(" has entries of a job that is gone, which no server takes. Nothing was changed.", server.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void That_finds_no_room_leaves_nothing_behind()
    {
        using JobBench bench = JobBench.WithJob();
        string at = bench.At("small");
        using RealDisk disk = RealDisk.Small(at, kilobytes: 60);
        Answer answer = bench.Job("backup", Path.Combine(at, "copy.db"));
        Assert.Equal(2, answer.Exit);
        Assert.Contains("there is no room left for ", answer.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(at));
        Assert.Equal(0, bench.Job("check").Exit);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Is_what_stood_at_one_moment_while_others_write(bool isOnServer)
    {
        using JobBench bench = JobBench.WithJob(place: isOnServer ? PostgresServer.Get().NewDatabase() : null);
        string id = bench.Read().Id;
        using var from = (SqlJobStore)Shops.Open(bench.Shop, ShopUse.Read);
        using JobBook other = JobBook.Open(bench.Shop, ShopUse.Write);
        long said = 0;
        long entries = 0;
        from.ReadAll((table, row) =>
        {
            if (table.Name == "jobs")
            {
                said = Convert.ToInt64(row[1], System.Globalization.CultureInfo.InvariantCulture);
                // Somebody writes while it is read, and does not wait.
                Assert.Null(other.Note(id, "on the slip", new Signature(new DateTimeOffset(2026, 5, 4, 12, 0, 0, TimeSpan.Zero), "Bo")).Refusal);
            }

            if (table.Name == "entries")
                entries++;
        });
        Assert.Equal((1, 1), (said, entries));
        Assert.Equal(2, bench.Read().Entries.Length);
    }

    [Fact]
    public void Is_told_from_any_other_by_its_rows_in_whatever_order()
    {
        RowsSeen sent = Seen(["a", "bc"], ["d", "e"]);
        Assert.True(sent.IsSameAs(Seen(["d", "e"], ["a", "bc"])));
        Assert.False(sent.IsSameAs(Seen(["a", "bc"])));
        Assert.False(sent.IsSameAs(Seen(["a", "bc"], ["d", "f"])));
        Assert.False(sent.IsSameAs(Seen(["ab", "c"], ["d", "e"])));
        Assert.False(sent.IsSameAs(Seen(["a", "bc"], ["d", "e"], ["g", "h"])));
    }

    private static RowsSeen Seen(params string[][] rows)
    {
        var seen = new RowsSeen();
        foreach (string[] row in rows)
            seen.Add(ShopTable.Ledger, row);
        return seen;
    }

    private static void AssertSame(JobBench bench, string other)
    {
        foreach (string[] words in new[] { ["list"], new[] { "export", "--job", bench.Read().Id }, ["check"] })
            Assert.Equal(bench.Job(words).Out, bench.Call(["job", .. words, "--shop", other]).Out);
    }

    private static string Named(JobBench bench, string text) => text.Replace(Path.GetDirectoryName(bench.At("x"))!, "FOLDER", StringComparison.Ordinal);

    private static void Execute(string file, string statement)
    {
        using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // Every text stands in this file.
        command.CommandText = statement;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
