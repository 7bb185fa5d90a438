using Contam.Jobs.Stores;
using Microsoft.Data.Sqlite;

namespace Contam.Jobs.Tests;

/// <summary>What somebody changes in the file without the program is found, and nothing is built on it.</summary>
public class An_edit_behind_the_back
{
    [Theory]
    [InlineData("UPDATE entries SET body = replace(body, 'on the slip', 'on the quay') WHERE sequence = 2", "entry 2 was changed after it was written")]
    [InlineData("DELETE FROM entries WHERE sequence = 2", "entry 2 is missing")]
    [InlineData("DELETE FROM entries WHERE sequence = 3", "its row in the list does not say what its entries come to: an entry is missing at the end, or the row was changed")]
    [InlineData("UPDATE jobs SET state = 'released'", "its row in the list does not say what its entries come to: an entry is missing at the end, or the row was changed")]
    public void Is_found_by_check(string edit, string found)
    {
        using JobBench bench = Edited(edit);
        Answer answer = bench.Job("check");
        Assert.Equal((1, $"job {Id(bench)}: {found}.\nSeen: 1 job, {(edit.StartsWith("DELETE", StringComparison.Ordinal) ? 2 : 3)} entries and 4 triggers.\n"), (answer.Exit, answer.Out));
    }

    [Fact]
    public void Of_a_kept_text_is_found_by_check()
    {
        using JobBench bench = Edited("UPDATE texts SET text = replace(text, 'pinion', 'pinyon')");
        Answer answer = bench.Job("check");
        Assert.Equal(1, answer.Exit);
        Assert.StartsWith($"job {Id(bench)}: a text that a job in ", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Is_not_built_on_and_the_rest_can_be_saved()
    {
        using JobBench bench = Edited("UPDATE entries SET body = replace(body, 'on the slip', 'on the quay') WHERE sequence = 2");
        Answer tick = bench.Job("tick", "1");
        Assert.Equal(2, tick.Exit);
        Assert.EndsWith("is not as it was written: entry 2 was changed after it was written. Nothing was changed. contam job check says more, contam job export saves what can be read.\n", tick.Error, StringComparison.Ordinal);
        Answer export = bench.Job("export");
        Assert.Equal(1, export.Exit);
        An_export.AssertFits(export.Out);
        Assert.Contains("on the quay", export.Out, StringComparison.Ordinal);
        File.WriteAllText(bench.At("job.json"), export.Out);
        Answer import = bench.Call("job", "import", bench.At("job.json"), "--shop", bench.At("other.db"));
        Assert.Equal((2, "contam: FOLDER/job.json is not taken in: entry 2 was changed after it was written. Ask for a fresh export.\n"), (import.Exit, import.Error));
    }

    [Fact]
    public void That_cut_off_the_last_entry_is_not_built_on()
    {
        using JobBench bench = Edited("DELETE FROM entries WHERE sequence = 3");
        Answer tick = bench.Job("tick", "2");
        Assert.Equal(2, tick.Exit);
        Assert.Contains(" is not as it was written: an entry is missing at its end. Nothing was changed.", tick.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("DROP TRIGGER entries_stay", "the trigger entries_stay is gone: what it guards could be changed.\n")]
    [InlineData("DROP TRIGGER entries_remain; DROP TRIGGER ledger_remain", "the trigger entries_remain is gone: what it guards could be changed.\nthe trigger ledger_remain is gone: what it guards could be changed.\n")]
    public void That_took_a_trigger_away_is_found_by_check(string edit, string found)
    {
        using JobBench bench = JobBench.WithJob();
        Sql(bench, edit);
        Answer answer = bench.Job("check");
        Assert.Equal(1, answer.Exit);
        Assert.StartsWith(found, answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void That_deleted_a_whole_job_is_found_by_check()
    {
        using JobBench bench = JobBench.WithJob();
        string id = bench.Read().Id;
        Assert.Equal(0, bench.Job([.. bench.OpenWords]).Exit);
        Sql(bench, $"DROP TRIGGER entries_remain; DELETE FROM entries WHERE job = '{id}'; DELETE FROM jobs WHERE id = '{id}'; CREATE TRIGGER entries_remain BEFORE DELETE ON entries BEGIN SELECT RAISE(ABORT, 'entries are only ever added'); END");
        Assert.Equal((1, $"job {id} was opened here and is gone, with every entry.\nSeen: 1 job, 1 entry and 4 triggers.\n"), bench.Job("check") is var check ? (check.Exit, check.Out) : default);
    }

    [Fact]
    public void That_releases_a_dirty_engine_is_found_by_check_however_well_it_hangs_together()
    {
        using JobBench bench = JobBench.WithJob();
        using (JobBook book = JobBook.Open(bench.Shop, ShopUse.Write))
        {
            JobRecord job = book.Read(book.List()[0].Id);
            book.TryAdd(job, new Decision([new Entries.Released { At = DateTimeOffset.UnixEpoch, By = "Eve", Sheet = Entries.EntryChain.Sha256("run it") }], ["run it"]));
        }

        Answer answer = bench.Job("check");
        Assert.Equal(1, answer.Exit);
        Assert.Contains("entry 2: it releases the engine although step 1 is open: ", answer.Out, StringComparison.Ordinal);
        int firstRun = bench.Read().State.Steps.All.First(step => !step.IsBeforeRelease).Number;
        Assert.Equal(1, bench.Job("tick", JobBench.Number(firstRun), "--job", bench.Read().Id, "--anyway", "it is released").Exit);
    }

    private static void Sql(JobBench bench, string text)
    {
        using var connection = new SqliteConnection($"Data Source={bench.Shop};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = text;
        command.ExecuteNonQuery();
    }

    private static string Id(JobBench bench)
    {
        using Contam.Jobs.Stores.IJobStore store = Contam.Jobs.Stores.Shops.Open(bench.Shop, mayCreate: false);
        return store.List()[0].Id;
    }

    private static JobBench Edited(string edit)
    {
        JobBench bench = JobBench.WithJob();
        bench.Job("note", "on the slip until Friday");
        bench.Job("tick", "1");
        using var connection = new SqliteConnection($"Data Source={bench.Shop};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        // Whoever edits behind the back puts the triggers back, so that the edit itself must be found.
        command.CommandText = "SELECT group_concat(sql, ';') FROM sqlite_master WHERE type = 'trigger' AND tbl_name = 'entries'";
        string triggers = (string)command.ExecuteScalar()!;
        command.CommandText = $"DROP TRIGGER entries_stay; DROP TRIGGER entries_remain; {edit}; {triggers}";
        command.ExecuteNonQuery();
        return bench;
    }
}
