using Contam.Jobs.History;
using Contam.Jobs.Stores;
using Contam.Jobs.Tests.Stores;
using Contam.Support;

namespace Contam.Jobs.Tests;

/// <summary>How often debris was found at a part, over all jobs, and what that does to the weight of a look.</summary>
public class A_history
{
    private const string Gearcase = JobBench.Gearcase;

    [Fact]
    public void Counts_the_first_look_of_each_job_and_says_what_it_does_not_count()
    {
        using JobBench bench = Shop();
        Answer answer = bench.Job("history", "--part", "lower-plug");
        Assert.Equal(
            """
            lower-plug: looked at in 3 jobs whose debris could come here, and found in 2.
              1 of 1      metal, forward-gear failed, outboard-gearcase
              1 of 2      metal, pinion failed, outboard-gearcase

            NOT COUNTED
              2     where the debris came from is not known; found in 2
              1     a further look at the same engine; found in 1

            """,
            answer.Out);
        Assert.Equal((0, ""), (answer.Exit, answer.Error));
    }

    [Fact]
    public void Counts_nothing_that_was_seen_after_the_work()
    {
        using JobBench bench = JobBench.WithJob();
        bench.TickTo(bench.StepAt(StepAction.Clean, "gear-housing", Phase.CleanOut));
        Assert.Equal(0, bench.Job("found", "gear-housing=metal", "--later").Exit);
        Assert.Equal(
            """
            gear-housing: no look in any job says how often debris comes here.

            NOT COUNTED
              1     the part had been worked on before the look; found in 1

            """,
            bench.Job("history", "--part", "gear-housing").Out);
    }

    [Fact]
    public void Counts_a_suspect_as_the_source_only_when_it_was_seen_to_have_failed()
    {
        using var bench = new JobBench();
        string id = Open(bench, "--found lower-plug=metal");
        Assert.Contains("no look in any job says", bench.Job("history", "--part", "lower-plug").Out, StringComparison.Ordinal);
        Assert.Equal(0, bench.Job("found", "clutch-dog=metal", "--failed", "--yes", "--job", id).Exit);
        Assert.Contains("1 of 1      metal, clutch-dog failed", bench.Job("history", "--part", "lower-plug").Out, StringComparison.Ordinal);
        Assert.Contains("1     the part itself had failed; found in 1\n", bench.Job("history", "--part", "clutch-dog").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Counts_no_failure_that_is_said_to_have_shed_nothing_as_a_source()
    {
        using var bench = new JobBench();
        OpenSaid(bench, "--failed pinion=nothing --found lower-plug=metal");
        OpenSaid(bench, "--failed pinion=nothing --failed forward-gear=metal --found lower-plug=metal");
        Assert.Equal(
            """
            lower-plug: looked at in 1 job whose debris could come here, and found in 1.
              1 of 1      metal, pinion and forward-gear failed, outboard-gearcase

            NOT COUNTED
              1     where the debris came from is not known; found in 1

            """,
            bench.Job("history", "--part", "lower-plug").Out);
    }

    [Theory]
    [InlineData("--failed injection-pump --debris metal", 0)]
    [InlineData("--failed injection-pump=metal:50um", 1)]
    public void Goes_by_the_size_that_the_job_says_was_seen(string failed, int counted)
    {
        using var bench = new JobBench();
        Assert.Equal(0, bench.Job(["open", RepositoryFiles.At("systems/families/harbour-diesel-i4.yaml"), .. failed.Split(' '), "--found", "turbo-turbine=metal", "--customer", "Quay 4", "--engine", "port", "--technician", "Ada"]).Exit);
        Assert.Contains(counted == 0 ? "1     by the family the debris could not come here at full size; found in 1\n" : "1 of 1      metal, injection-pump failed", bench.Job("history", "--part", "turbo-turbine").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Does_not_count_a_place_that_the_debris_cannot_come_to_but_tells_of_a_find_there()
    {
        using var bench = new JobBench();
        Open(bench, "--failed pinion --clean water-pump");
        Open(bench, "--failed pinion --found water-pump=metal");
        Assert.EndsWith("  2     by the family the debris could not come here at full size; found in 1\n", bench.Job("history", "--part", "water-pump").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--failed pinion", 2, 1)]
    [InlineData("--failed forward-gear", 1, 1)]
    [InlineData("--family outboard-gearcase --debris metal", 3, 2)]
    [InlineData("--family harbour-diesel-i4", 0, 0)]
    [InlineData("--debris water", 0, 0)]
    public void Is_narrowed_and_fits_its_schema(string narrowed, int looks, int found)
    {
        using JobBench bench = Shop();
        string json = bench.Job(["history", "--part", "lower-plug", "--format", "json", .. narrowed.Split(' ')]).Out;
        An_export.AssertFits(json, "history");
        Assert.Contains($"\"part\": \"lower-plug\",\n  \"looks\": {looks},\n  \"found\": {found},\n", json, StringComparison.Ordinal);
        Assert.DoesNotContain("Quay", json, StringComparison.Ordinal);
    }

    [Fact]
    public void Changes_the_shares_of_suspects_and_says_on_how_many_looks_they_rest()
    {
        using JobBench bench = Shop();
        string[] call = ["suspects", Gearcase, "--debris", "metal", "--clean", "lower-plug"];
        string without = bench.Call(call).Out;
        Answer with = bench.Call([.. call, "--use-history", "--shop", bench.Shop]);
        Assert.Equal((0, ""), (with.Exit, with.Error));
        Assert.NotEqual(without, with.Out);
        // The word fair, 0.6, as ten looks, and two finds in three looks: (6 + 2) / (10 + 3) = 0.6154.
        Assert.EndsWith(
            """
            THE SHOP'S OWN LOOKS
              This rests on 3 looks for metal in 3 jobs of this family. Beside them each
              word (good, fair, poor) counts as 10 looks.
              Drain plug with magnet      metal found in 2 of 3; the family says fair;
                                          together 61.5 %

            """,
            with.Out);
        string json = bench.Call([.. call, "--use-history", "--shop", bench.Shop, "--format", "json"]).Out;
        An_export.AssertFits(json, "suspects");
        Assert.Contains("a look there showed it in 2 of 3 jobs here, which with its word makes 61.5 %.", json, StringComparison.Ordinal);
        Assert.Contains("\"chance\": 0.615384615\n", json, StringComparison.Ordinal);
        Assert.DoesNotContain("history", bench.Call([.. call, "--format", "json"]).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Takes_a_place_that_often_missed_off_the_stop_line()
    {
        using var bench = new JobBench();
        string[] call = ["stop-line", Gearcase, "--failed", "pinion", "--debris", "metal"];
        Assert.Contains("--clean gear-housing", bench.Call(call).Out, StringComparison.Ordinal);
        // The word good, 0.9, as ten looks, and two that found nothing where metal could have come: 9 / 12 = 0.75, which is only fair.
        Open(bench, "--failed pinion --clean gear-housing");
        Open(bench, "--failed pinion --clean gear-housing");
        Answer with = bench.Call([.. call, "--use-history", "--shop", bench.Shop]);
        Assert.DoesNotContain("--clean gear-housing", with.Out, StringComparison.Ordinal);
        Assert.Contains("metal found in 0 of 2; the family says good;", with.Out, StringComparison.Ordinal);
        Assert.Contains("counts as fair here", with.Out.Replace("\n                              ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        string json = bench.Call([.. call, "--use-history", "--shop", bench.Shop, "--format", "json"]).Out;
        An_export.AssertFits(json, "stop-line");
        Assert.Contains("\"countsAs\": \"fair\"", json, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_job_of_the_family_leaves_every_answer_as_it_is()
    {
        using JobBench bench = Shop();
        string[] call = ["suspects", "systems/families/harbour-diesel-i4.yaml", "--found", "oil-filter=metal"];
        string without = bench.Call(call).Out;
        string with = bench.Call([.. call, "--use-history", "--shop", bench.Shop]).Out;
        Assert.Equal(without + "\nTHE SHOP'S OWN LOOKS\n  No job of this family has a look for metal that says how surely one shows it.\n  The words of the family stand.\n", with);
    }

    [Fact]
    public void Goes_into_a_trace_too()
    {
        using JobBench bench = Shop();
        Answer answer = bench.CallAtTerminal("stop\n", "trace", Gearcase, "--debris", "metal", "--clean", "lower-plug", "--use-history", "--shop", bench.Shop);
        Assert.Contains("--use-history --shop ", answer.Out, StringComparison.Ordinal);
        Assert.Equal(0, answer.Exit);
    }

    [Fact]
    public void Is_not_asked_for_by_naming_a_shop_alone()
    {
        using var bench = new JobBench();
        Assert.Equal(
            (2, "contam: --shop says where the counts are that --use-history weighs with. Add --use-history, or leave --shop out.\n"),
            bench.Call("suspects", Gearcase, "--debris", "metal", "--shop", bench.Shop) is var answer ? (answer.Exit, answer.Error) : default);
    }

    [Fact]
    public void That_was_tampered_with_by_the_kind_of_an_entry_is_found_by_check()
    {
        using JobBench bench = Shop();
        using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={bench.Shop};Pooling=False"))
        {
            connection.Open();
            using Microsoft.Data.Sqlite.SqliteCommand command = connection.CreateCommand();
            command.CommandText = "DROP TRIGGER entries_stay; UPDATE entries SET kind = 'noted' WHERE kind = 'looked'";
            command.ExecuteNonQuery();
        }

        Answer answer = bench.Job("check");
        Assert.Equal(1, answer.Exit);
        Assert.Contains(": the kind of an entry is not the one that its text names.\nSeen: ", answer.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Is_the_same_on_however_many_cores()
    {
        using JobBench bench = ShopOfSeveralFamilies();
        using IJobStore store = Shops.Open(bench.Shop, mayCreate: false);
        string alone = Written(1);
        Assert.Equal(16, alone.Split('\n').Length);
        for (int turn = 0; turn < 20; turn++)
            Assert.Equal(alone, Written(turn % 2 == 0 ? -1 : 8));

        string Written(int atOnce) => string.Join('\n', ShopHistory.Of(new JobBook(store), (_, _) => true, atOnce)
            .Select(look => $"{look.Job.Id} {look.Seen.Part} {look.Seen.Debris} {look.Seen.Found} {string.Join(',', look.Failed)} {look.Worth}"));
    }

    [Fact]
    public void Asks_the_store_one_thing_at_a_time()
    {
        using JobBench bench = ShopOfSeveralFamilies();
        using IJobStore store = Shops.Open(bench.Shop, mayCreate: false);
        (int within, int most, int asked) = (0, 0, 0);
        var book = new JobBook(new WatchedStore(store)
        {
            BeforeText = () =>
            {
                most = Math.Max(most, Interlocked.Increment(ref within));
                asked++;
                for (int i = 0; i < 1_000; i++)
                    Thread.Yield();
                Interlocked.Decrement(ref within);
            },
        });
        ShopHistory.Of(book, (_, _) => true, atOnce: 8);
        Assert.Equal(1, most);
        Assert.InRange(asked, 6, 100);
    }

    [Fact]
    public void Says_what_the_store_says_where_it_cannot_be_asked()
    {
        using JobBench bench = ShopOfSeveralFamilies();
        using IJobStore store = Shops.Open(bench.Shop, mayCreate: false);
        var book = new JobBook(new WatchedStore(store) { BeforeText = () => throw new ShopException(ShopFault.Locked, "somebody has it") });
        Assert.Equal(ShopFault.Locked, Assert.Throws<ShopException>(() => ShopHistory.Of(book, (_, _) => true)).Fault);
    }

    /// <summary>Jobs for three families, some of which look twice.</summary>
    private static JobBench ShopOfSeveralFamilies()
    {
        var bench = new JobBench();
        foreach (string failed in (string[])["pinion", "forward-gear", "pinion"])
            Open(bench, $"--failed {failed} --clean upper-plug --found lower-plug=metal");
        foreach (string clean in (string[])["oil-filter", "oil-cooler", "crankcase"])
            Open(bench, $"--failed oil-pump --clean {clean} --found sump=metal", "systems/families/harbour-diesel-i4.yaml");
        foreach (string failed in (string[])["trim-pump", "trim-pump"])
            Open(bench, $"--failed {failed} --found reservoir=metal --clean valve-block", "systems/families/stern-trim-unit.yaml");
        return bench;
    }

    /// <summary>Two pinions (a clean plug on which metal was found later, and a find), a forward gear, and two jobs from a find alone.</summary>
    private static JobBench Shop()
    {
        var bench = new JobBench();
        string first = Open(bench, "--failed pinion --clean lower-plug");
        Assert.Equal(0, bench.Job("found", "lower-plug=metal", "--yes", "--job", first).Exit);
        Open(bench, "--failed pinion --found lower-plug=metal");
        Open(bench, "--failed forward-gear --found lower-plug=metal");
        Open(bench, "--found lower-plug=metal");
        Open(bench, "--found lower-plug=metal --found upper-plug=metal");
        return bench;
    }

    private static string Open(JobBench bench, string asked, string family = Gearcase) => OpenSaid(bench, $"--debris metal {asked}", family);

    private static string OpenSaid(JobBench bench, string asked, string family = Gearcase)
    {
        Answer opened = bench.Job(["open", RepositoryFiles.At(family), .. asked.Split(' '), "--customer", "Quay 4", "--engine", "port", "--technician", "Ada"]);
        Assert.Equal((0, ""), (opened.Exit, opened.Error));
        return opened.Out.Split(' ')[1];
    }
}
