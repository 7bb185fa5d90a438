using System.Globalization;
using Contam.Jobs.Stores;
using Contam.Jobs.Tests.Stores;

namespace Contam.Jobs.Tests.Walks;

/// <summary>
/// No walk reaches "may be run" with anything dirty, off, away, unread or undecided. <c>CONTAM_WALKS=10000</c> walks as many on a store in memory, a hundredth
/// of them on a file (four at least); without it there are no walks. <c>CONTAM_WALK=7</c> begins with that number.
/// </summary>
public class Any_walk_of_a_record
{
    private const int Commands = 200;

    private static int Walks => Number("CONTAM_WALKS", 20);

    private static int First => Number("CONTAM_WALK", 1);

    [Fact]
    public void Releases_no_engine_that_must_not_be_run()
    {
        Any_walk_of_a_record.OnlyWhereAsked();
        int releases = 0;
        int accepted = 0;
        int corners = 0;
        (int Said, int Void) looks = (0, 0);
        for (int number = First; number < First + Walks; number++)
        {
            using var store = new MemoryStore();
            using Walk walk = Go(number, store);
            releases += walk.Releases;
            accepted += walk.Accepted;
            corners += walk.Corners;
            looks = (looks.Said + walk.Looks.Said, looks.Void + walk.Looks.Void);
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{Walks} walks: {accepted} commands accepted, {releases} releases, {corners} corners, {looks.Said} outcomes of looks, {looks.Void} clean looks void");
        // What never gets anywhere proves nothing.
        Assert.True(releases >= Walks, $"{releases} releases on {Walks} walks");
        Assert.True(Walks < 20 || (looks.Said > 0 && (Walks < 200 || looks.Void > 0)), $"{looks.Said} outcomes of looks, {looks.Void} of them void, on {Walks} walks");
        Assert.True(accepted >= Walks * Commands / 4, $"{accepted} commands accepted on {Walks} walks");
    }

    [Fact]
    public void Releases_none_on_a_file_either()
    {
        Any_walk_of_a_record.OnlyWhereAsked();
        DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");
        try
        {
            using IJobStore store = Shops.Open(Path.Combine(folder.FullName, "shop.db"), mayCreate: true);
            for (int number = First; number < First + Math.Max(4, Walks / 100); number++)
                Go(number, store).Dispose();
            Assert.Empty(Documents.ShopCheck.Of(new JobBook(store)).Wrong);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Walks are long; they are walked where the variable asks for them.</summary>
    internal static void OnlyWhereAsked() => Assert.SkipUnless(Environment.GetEnvironmentVariable("CONTAM_WALKS") is not null, "CONTAM_WALKS is not set");

    internal static Walk Go(int number, IJobStore store)
    {
        try
        {
            return Walk.Go(number, Commands, store);
        }
        catch (WalkException fault)
        {
            throw new WalkException($"walk {number} ({nameof(First)} with CONTAM_WALK={number} CONTAM_WALKS=1): {fault.Message}\n{SmallFamily.Text(number)}");
        }
    }

    private static int Number(string name, int otherwise) => int.TryParse(Environment.GetEnvironmentVariable(name), NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : otherwise;
}

/// <summary>The same on a server.</summary>
public sealed class Any_walk_of_a_record_on_a_server
{
    private readonly PostgresServer server = PostgresServer.Get();

    [Fact]
    public void Releases_no_engine_that_must_not_be_run()
    {
        Any_walk_of_a_record.OnlyWhereAsked();
        using IJobStore store = Shops.Open(server.NewDatabase(), mayCreate: true);
        for (int number = 1; number <= 4; number++)
            Any_walk_of_a_record.Go(number, store).Dispose();
        Assert.Empty(Documents.ShopCheck.Of(new JobBook(store)).Wrong);
    }
}
