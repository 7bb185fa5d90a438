using Contam.Jobs.Stores;
using Microsoft.Data.Sqlite;

namespace Contam.Jobs.Tests.Stores;

/// <summary>Jobs in one file: the contract, and what can be wrong with a file.</summary>
public sealed class A_shop_file : StoreContract
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");

    private string At => Path.Combine(folder.FullName, "shop.db");

    public override void Dispose() => folder.Delete(recursive: true);

    private protected override IJobStore Open() => SqliteJobStore.Open(At, mayCreate: true);

    [Fact]
    public void Refuses_to_change_or_take_out_an_entry()
    {
        using IJobStore store = Open();
        store.Create(First("a0000001"));
        Assert.Contains("entries are only ever added", Assert.Throws<SqliteException>(() => Sql("UPDATE entries SET body = ''")).Message, StringComparison.Ordinal);
        Assert.Contains("entries are only ever added", Assert.Throws<SqliteException>(() => Sql("DELETE FROM entries")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Refuses_an_entry_of_no_job()
    {
        using IJobStore store = Open();
        Assert.Throws<SqliteException>(() => Sql("PRAGMA foreign_keys = ON; INSERT INTO entries VALUES ('none', 1, '', '', '', '')"));
    }

    [Fact]
    public void That_is_not_there_is_said_so() =>
        Says(ShopFault.Missing, $"there is no shop file {At} yet. contam job open makes it; another one is named with --shop FILE.", () => SqliteJobStore.Open(At, mayCreate: false));

    [Fact]
    public void That_is_a_folder_is_said_so() =>
        Says(ShopFault.Missing, $"{folder.FullName} is a folder. Name a file in it with --shop.", () => SqliteJobStore.Open(folder.FullName, mayCreate: true));

    [Fact]
    public void Of_a_later_version_is_left_alone()
    {
        Open().Dispose();
        Sql("PRAGMA user_version = 99");
        byte[] before = File.ReadAllBytes(At);
        Says(ShopFault.Newer, $"{At} was written by a later contam (its tables are version 99, this one knows 4). Nothing was changed. Use the later contam, or name another file with --shop.", () => Open());
        Assert.Equal(before, File.ReadAllBytes(At));
    }

    [Fact]
    public void Of_an_earlier_version_is_brought_on_with_what_is_in_it()
    {
        using (SqliteConnection old = Connect())
        {
            using SqliteCommand make = old.CreateCommand();
            make.CommandText = Migrations.ForSqlite[0] + "; PRAGMA user_version = 1; INSERT INTO texts VALUES ('x', 'kept')";
            make.ExecuteNonQuery();
        }

        using IJobStore store = Open();
        Assert.Equal("kept", store.Text("x"));
        store.Create(First("a0000001"));
        Assert.Throws<SqliteException>(() => Sql("DELETE FROM entries"));
    }

    [Fact]
    public void That_is_no_shop_file_is_left_alone()
    {
        File.WriteAllText(At, new string('x', 5000));
        Says(ShopFault.Damaged, $"{At} is no shop file, or its beginning is damaged. Nothing was changed. Name another with --shop, or put the last good copy in its place.", () => Open());
        Assert.Equal(new string('x', 5000), File.ReadAllText(At));
    }

    [Fact]
    public void Held_by_somebody_else_is_said_so_and_nothing_is_lost()
    {
        using IJobStore store = SqliteJobStore.Open(At, mayCreate: true, new SqliteOptions { Patience = TimeSpan.FromMilliseconds(1) });
        store.Create(First("a0000001"));
        using (SqliteConnection other = Connect())
        {
            using SqliteTransaction held = other.BeginTransaction(deferred: false);
            Says(ShopFault.Locked, $"{At} is held by somebody else, who does not let go of it. Nothing was written. See who has it open, then do it again.", () => store.Append("a0000001", head => Next(head, "a note")));
            Assert.Single(store.Entries("a0000001", out _));
        }

        Assert.NotNull(store.Append("a0000001", head => Next(head, "a note")));
    }

    [Fact]
    public void That_may_only_be_read_is_read_and_not_written()
    {
        using (IJobStore writable = Open())
            writable.Create(First("a0000001"));
        using IJobStore store = SqliteJobStore.Open(At, mayCreate: false, new SqliteOptions { OnlyRead = true });
        Assert.Single(store.List());
        Says(ShopFault.ReadOnly, $"{At} may be read but not written. Nothing was written. Make file and folder writable, or name another file with --shop.", () => store.Append("a0000001", head => Next(head, "a note")));
    }

    [Fact]
    public void Without_room_left_keeps_what_it_has()
    {
        using (IJobStore roomy = Open())
            roomy.Create(First("a0000001"));
        using IJobStore store = SqliteJobStore.Open(At, mayCreate: false, new SqliteOptions { MostPages = 1 });
        string large = new('x', 100_000);
        Says(ShopFault.Full, $"there is no room left for {At}. Nothing was written, and what was there is whole. Make room on the disk, then do it again.", () => store.Append("a0000001", head => Next(head, large)));
        Assert.Single(store.Entries("a0000001", out _));
        Assert.Empty(store.CheckPlace());
    }

    [Fact]
    public void With_a_damaged_page_gives_what_can_be_read_and_says_what_cannot()
    {
        using (IJobStore store = Open())
        {
            store.Create(First("a0000001"));
            for (int note = 0; note < 200; note++)
                store.Append("a0000001", head => Next(head, new string('n', 500)));
        }

        Sql("PRAGMA wal_checkpoint(TRUNCATE)");
        byte[] bytes = File.ReadAllBytes(At);
        // The last page full of notes; the first one is the root of them all by now, and holds them no more.
        int page = bytes.AsSpan().LastIndexOf(System.Text.Encoding.UTF8.GetBytes(new string('n', 400))) / 4096;
        bytes.AsSpan(page * 4096, 4096).Fill(0xFF);
        File.WriteAllBytes(At, bytes);
        using IJobStore damaged = Open();
        Assert.NotEmpty(damaged.CheckPlace());
        int left = damaged.Entries("a0000001", out string? damage).Length;
        Assert.InRange(left, 100, 200);
        Assert.StartsWith($"{201 - left} of 201 entries cannot be read: ", damage, StringComparison.Ordinal);
    }

    [Fact]
    public void Is_readable_by_its_owner_alone_with_the_files_beside_it()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "permissions of Unix");
        string deep = Path.Combine(folder.FullName, "data", "contam", "shop.db");
        using IJobStore store = Shops.Open(deep, mayCreate: true);
        store.Create(First("a0000001"));
        Assert.Equal(["shop.db", "shop.db-shm", "shop.db-wal"], Directory.GetFiles(Path.GetDirectoryName(deep)!).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        if (!OperatingSystem.IsWindows())
        {
            foreach (string file in Directory.GetFiles(Path.GetDirectoryName(deep)!))
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(Path.GetDirectoryName(deep)!));
        }
    }

    [Fact]
    public async Task Is_made_once_whoever_is_first()
    {
        await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Task.Run(() => Open().Dispose(), TestContext.Current.CancellationToken)));
        using IJobStore store = Open();
        Assert.Empty(store.List());
        Assert.DoesNotContain(Directory.GetFiles(folder.FullName), file => file.EndsWith(".new", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(ShopUse.Read)]
    [InlineData(ShopUse.Write)]
    [InlineData(ShopUse.Create)]
    public void Of_something_else_is_named_and_left_alone(ShopUse use)
    {
        Sql("CREATE TABLE letters (text TEXT); INSERT INTO letters VALUES ('mine'); PRAGMA user_version = 1");
        byte[] before = File.ReadAllBytes(At);
        Says(ShopFault.Refused, $"{At} is a database of something else, not a shop's. Nothing was changed. Name another file with --shop.", () => Shops.Open(At, use));
        Assert.Equal(before, File.ReadAllBytes(At));
        Assert.Single(Directory.GetFiles(folder.FullName));
    }

    [Theory]
    [InlineData("PRAGMA user_version = 0")]
    [InlineData("PRAGMA application_id = 7")]
    public void Whose_mark_was_changed_is_said_so(string edit)
    {
        Open().Dispose();
        Sql(edit);
        Says(ShopFault.Damaged, $"{At} has the tables of a shop, but what marks it as one was changed (application id or version). Nothing was changed. Put the last good copy in its place.", () => Open());
    }

    [Theory]
    [InlineData(ShopUse.Read)]
    [InlineData(ShopUse.Create)]
    public void That_was_emptied_is_said_so(ShopUse use)
    {
        File.WriteAllBytes(At, []);
        Says(ShopFault.Damaged, $"{At} is there and empty: no shop is in it, or it was emptied. Nothing was changed. Put the last good copy in its place; if there never was one, remove the file or name another with --shop.", () => Shops.Open(At, use));
        Assert.Empty(File.ReadAllBytes(At));
    }

    [Fact]
    public void Of_an_earlier_version_is_read_without_a_change()
    {
        using (SqliteConnection old = Connect())
        {
            using SqliteCommand make = old.CreateCommand();
            make.CommandText = $"{Migrations.ForSqlite[0]}; {Migrations.ForSqlite[1]}; PRAGMA user_version = 2";
            make.ExecuteNonQuery();
        }

        byte[] before = File.ReadAllBytes(At);
        using (IJobStore store = Shops.Open(At, ShopUse.Read))
        {
            Assert.Empty(store.List());
            Assert.Empty(store.CheckPlace());
            Assert.Equal(ShopFault.ReadOnly, Assert.Throws<ShopException>(() => store.Create(First("a0000001"))).Fault);
        }

        Assert.Equal(before, File.ReadAllBytes(At));
    }

    private static void Says(ShopFault fault, string message, Func<object?> work)
    {
        ShopException said = Assert.Throws<ShopException>(() => { (work() as IDisposable)?.Dispose(); });
        Assert.Equal((fault, message), (said.Fault, said.Message));
    }

    private SqliteConnection Connect()
    {
        SQLitePCL.Batteries_V2.Init();
        var connection = new SqliteConnection($"Data Source={At};Pooling=False");
        connection.Open();
        return connection;
    }

    private void Sql(string text)
    {
        using SqliteConnection connection = Connect();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = text;
        command.ExecuteNonQuery();
    }
}
