using System.Globalization;
using Contam.Support;
using Contam.Support.Generation;
using FsCheck;
using FsCheck.Fluent;
using Microsoft.FSharp.Core;

namespace Contam.Properties;

/// <summary>
/// Holds a rule against many random cases. The cases are the same in every run, so that a build fails or passes for good;
/// <c>CONTAM_SEED=7 CONTAM_RUNS=20000 dotnet run --project tests/Contam.Properties</c> tries others, and more of them.
/// </summary>
internal static class ForEvery
{
    /// <summary>How many cases a rule is held against where nothing else is said.</summary>
    internal const int Usual = 1000;

    private const ulong UsualSeed = 20260301;

    /// <summary>Holds a rule, which throws where it is broken, against cases of up to <paramref name="mostParts"/> parts. A broken one is shrunk before it is shown.</summary>
    internal static void Case(Action<TestCase> rule, int runs = Usual, int mostParts = Cases.MostParts)
    {
        var replay = new Replay(new Rnd(Seed), FSharpOption<int>.None);
        Config config = Config.QuickThrowOnFailure
            .WithMaxTest(Runs(runs))
            .WithReplay(FSharpOption<Replay>.Some(replay))
            .WithQuietOnSuccess(true);
        Check.One(config, Prop.ForAll(Cases.UpTo(mostParts), rule));
    }

    /// <summary>How many cases a rule is held against that is usually held against so many.</summary>
    internal static int Runs(int usual) => Number("CONTAM_RUNS") is { } asked ? (int)asked : usual;

    /// <summary>The seed of the run, for rules that draw something of their own.</summary>
    internal static ulong Seed => Number("CONTAM_SEED") ?? UsualSeed;

    /// <summary>A source of chance for one case: the same for the same case, whatever was tried before it.</summary>
    internal static Random ChanceFor(TestCase asked)
    {
        unchecked
        {
            ulong hash = 14695981039346656037 ^ Seed;
            foreach (char letter in asked.ToString())
                hash = (hash ^ letter) * 1099511628211;
            return new Random((int)hash);
        }
    }

    private static ulong? Number(string variable) =>
        ulong.TryParse(Environment.GetEnvironmentVariable(variable), NumberStyles.None, CultureInfo.InvariantCulture, out ulong number) ? number : null;
}
