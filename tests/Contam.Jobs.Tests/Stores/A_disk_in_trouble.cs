using Contam.Jobs.Stores;

namespace Contam.Jobs.Tests.Stores;

/// <summary>Real trouble with a real disk, met by real processes of the command: a clear message, and nothing lost.</summary>
[System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
public sealed class A_disk_in_trouble : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");

    public A_disk_in_trouble()
    {
        // So that another user gets at what is in it.
        File.SetUnixFileMode(folder.FullName, Everybody);
    }

    private const UnixFileMode Everybody = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.GroupRead | UnixFileMode.GroupExecute | UnixFileMode.OtherRead | UnixFileMode.OtherExecute;

    public void Dispose()
    {
        File.SetUnixFileMode(folder.FullName, Everybody);
        folder.Delete(recursive: true);
    }

    [Fact]
    public void That_is_full_says_so_and_keeps_every_acknowledged_entry()
    {
        string at = Path.Combine(folder.FullName, "small");
        using RealDisk disk = RealDisk.Small(at, kilobytes: 3_000);
        string shop = Path.Combine(at, "shop.db");
        string filler = Path.Combine(at, "filler");
        File.WriteAllBytes(filler, new byte[400_000]);
        using JobBench bench = JobBench.WithJob(place: shop);
        string id = bench.Read().Id;
        Answer answer = RealDisk.Run(RealDisk.AsUsual("job", "note", "-", "--shop", shop), Enumerable.Range(0, 5_000).Select(note => $"{note} {new string('n', 900)}"));
        Assert.Equal((2, $"contam: there is no room left for {shop}. Nothing was written, and what was there is whole. Make room on the disk, then do it again.\n"), (answer.Exit, answer.Error));
        int acknowledged = answer.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length;
        Assert.InRange(acknowledged, 100, 4_999);
        // While it is still full: what is there can be read, and is whole.
        Assert.Equal((0, $"Everything is as it was written: 1 job, {acknowledged + 1} entries and 4 triggers.\n"), bench.Job("check") is var check ? (check.Exit, check.Out) : default);
        Assert.Equal(acknowledged + 1, bench.Read().Entries.Length);
        File.WriteAllText(bench.At("saved.json"), bench.Job("export", "--job", id).Out);
        Assert.Equal(0, bench.Call("job", "import", bench.At("saved.json"), "--shop", bench.At("elsewhere.db")).Exit);
        File.Delete(filler);
        Assert.Equal((0, $"Entry {acknowledged + 2}.\n"), bench.Job("note", "there is room again") is var note ? (note.Exit, note.Out) : default);
    }

    [Fact]
    public void That_is_full_before_the_first_job_says_so()
    {
        string at = Path.Combine(folder.FullName, "small");
        using RealDisk disk = RealDisk.Small(at, kilobytes: 300);
        string shop = Path.Combine(at, "shop.db");
        File.WriteAllBytes(Path.Combine(at, "filler"), new byte[290_000]);
        using var bench = new JobBench(shop);
        bench.WritePlan();
        Assert.Equal((2, $"contam: there is no room left for {shop}. Nothing was written, and what was there is whole. Make room on the disk, then do it again.\n"), bench.Open() is var answer ? (answer.Exit, answer.Error) : default);
    }

    [Fact]
    public void That_refuses_to_write_says_so_and_keeps_every_acknowledged_entry()
    {
        using JobBench bench = JobBench.WithJob(place: Path.Combine(folder.FullName, "shop.db"));
        Answer answer = RealDisk.Run(RealDisk.WithFilesUpTo(600, "job", "note", "-", "--shop", bench.Shop), Enumerable.Range(0, 5_000).Select(note => $"{note} {new string('n', 900)}"));
        Assert.Equal(2, answer.Exit);
        Assert.Equal($"contam: {bench.Shop} cannot be read or written: the disk reports an error. Nothing that was acknowledged is lost by contam. Copy the file and those beside it to another disk, then run contam job check on the copy.\n", answer.Error);
        int acknowledged = answer.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length;
        Assert.InRange(acknowledged, 10, 4_999);
        Assert.Equal(0, bench.Job("check").Exit);
        Assert.Equal(acknowledged + 1, bench.Read().Entries.Length);
    }

    [Fact]
    public void Where_this_user_may_only_read_the_file_shows_it_and_writes_nothing()
    {
        using JobBench bench = JobBench.WithJob(place: Path.Combine(folder.FullName, "shop.db"));
        byte[] before = File.ReadAllBytes(bench.Shop);
        File.SetUnixFileMode(bench.Shop, UnixFileMode.UserRead | UnixFileMode.GroupRead | UnixFileMode.OtherRead);
        if (!Environment.IsPrivilegedProcess)
            File.SetUnixFileMode(folder.FullName, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        Answer list = RealDisk.Run(RealDisk.AsNobody("job", "list", "--shop", bench.Shop));
        Assert.Equal((0, ""), (list.Exit, list.Error));
        Assert.Contains("Quay 4, port gearcase: pinion, metal", list.Out, StringComparison.Ordinal);
        Answer note = RealDisk.Run(RealDisk.AsNobody("job", "note", "on the slip", "--shop", bench.Shop));
        Assert.Equal((2, $"contam: {bench.Shop} may be read but not written. Nothing was written. Make file and folder writable, or name another file with --shop.\n"), (note.Exit, note.Error));
        Assert.Equal(before, File.ReadAllBytes(bench.Shop));
    }

    [Fact]
    public void Where_this_user_may_not_even_read_says_so()
    {
        using JobBench bench = JobBench.WithJob(place: Path.Combine(folder.FullName, "shop.db"));
        File.SetUnixFileMode(bench.Shop, UnixFileMode.None);
        Answer answer = RealDisk.Run(RealDisk.AsNobody("job", "list", "--shop", bench.Shop));
        Assert.Equal((2, "", $"contam: {bench.Shop} cannot be opened. Check its name, its folder, and whether you may write there.\n"), (answer.Exit, answer.Out, answer.Error));
    }

    [Fact]
    public void Where_this_user_may_not_make_a_file_says_so()
    {
        File.SetUnixFileMode(folder.FullName, UnixFileMode.UserRead | UnixFileMode.UserExecute | UnixFileMode.OtherRead | UnixFileMode.OtherExecute);
        using var bench = new JobBench();
        bench.WritePlan();
        File.SetUnixFileMode(Path.GetDirectoryName(bench.At("plan.json"))!, Everybody);
        foreach (string shop in new[] { Path.Combine(folder.FullName, "shop.db"), Path.Combine(folder.FullName, "new", "shop.db") })
        {
            Answer answer = RealDisk.Run(RealDisk.AsNobody(["job", .. bench.OpenWords, "--shop", shop]));
            Assert.Equal((2, "", $"contam: {shop} cannot be opened. Check its name, its folder, and whether you may write there.\n"), (answer.Exit, answer.Out, answer.Error));
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    public void That_lost_the_end_of_the_file_says_what_is_damaged_and_saves_the_rest(int part)
    {
        using JobBench bench = JobBench.WithJob(place: Path.Combine(folder.FullName, "shop.db"));
        string id = bench.Read().Id;
        Assert.Equal(0, bench.JobAtTerminal(string.Concat(Enumerable.Range(0, 300).Select(note => $"{note} {new string('n', 900)}\n")), "note", "-").Exit);
        using (FileStream file = File.OpenWrite(bench.Shop))
            file.SetLength(file.Length * (part - 1) / part / 4096 * 4096);
        Answer check = bench.Job("check");
        Assert.Equal((1, ""), (check.Exit, check.Error));
        Assert.DoesNotContain("Everything is as it was written", check.Out, StringComparison.Ordinal);
        Answer export = bench.Job("export", "--job", id);
        Assert.Equal(1, export.Exit);
        An_export.AssertFits(export.Out);
        Assert.Contains("The export holds what can be read.", export.Error, StringComparison.Ordinal);
        Assert.Contains($"{'n'}{new string('n', 800)}", export.Out, StringComparison.Ordinal);
        Answer note = bench.Job("note", "one more", "--job", id);
        Assert.Equal(2, note.Exit);
    }

    [Fact]
    public void With_a_damaged_page_is_named_by_check_and_the_rest_is_exported()
    {
        using JobBench bench = JobBench.WithJob(place: Path.Combine(folder.FullName, "shop.db"));
        string id = bench.Read().Id;
        Assert.Equal(0, bench.JobAtTerminal(string.Concat(Enumerable.Range(0, 100).Select(note => $"{note} {new string('n', 900)}\n")), "note", "-").Exit);
        byte[] bytes = File.ReadAllBytes(bench.Shop);
        int page = bytes.AsSpan().LastIndexOf(System.Text.Encoding.UTF8.GetBytes(new string('n', 400))) / 4096;
        bytes.AsSpan(page * 4096, 4096).Fill(0xFF);
        File.WriteAllBytes(bench.Shop, bytes);
        Answer check = bench.Job("check");
        Assert.Equal(1, check.Exit);
        Assert.Contains($"job {id}: ", check.Out, StringComparison.Ordinal);
        Assert.Contains(" of 101 entries cannot be read: ", check.Out, StringComparison.Ordinal);
        Answer export = bench.Job("export", "--job", id);
        Assert.Equal(1, export.Exit);
        An_export.AssertFits(export.Out);
        int saved = export.Out.Split("\"sequence\": ").Length - 1;
        Assert.InRange(saved, 80, 100);
    }
}
