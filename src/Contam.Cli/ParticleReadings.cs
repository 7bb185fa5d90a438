using System.Globalization;
using Contam.Families.Quantities;
using Contam.Measurement.Cleanliness;
using Contam.Problems;

namespace Contam.Cli;

/// <summary>A cleanliness code, or the particle counts that it is made of.</summary>
internal static class ParticleReadings
{
    private const string Forms = "Write a code (19/16/13), three counts a volume at 4, 6 and 14 µm(c) and larger (3000/mL 500/mL 7/mL), or three counts with the sample they were counted in (8500 1200 9 --counted-in 10mL).";

    /// <summary>The code, and the counts per mL where they are known.</summary>
    public static (CleanlinessCode Code, ParticleCounts? Counts) Of(string[] typed, string? countedIn)
    {
        if (countedIn is not null)
            return Counted(typed, countedIn);
        if (typed.Length == 1 && typed[0].Count(one => one == '/') == 2)
            return (Typed.Take(CodeText.Read(typed[0])), null);
        if (typed.Length != 3)
            throw new WrongUseException($"one code or three counts were expected, got {typed.Length.ToString(CultureInfo.InvariantCulture)}. {Forms}");
        var counts = new ParticleCounts(PerVolume(0, typed[0]), PerVolume(1, typed[1]), PerVolume(2, typed[2]));
        return (Typed.Take(CleanlinessCode.Of(counts)), counts);
    }

    private static (CleanlinessCode Code, ParticleCounts? Counts) Counted(string[] typed, string countedIn)
    {
        Volume sample = Typed.Volume("--counted-in", countedIn);
        if (typed.Length != 3)
            throw new WrongUseException($"three counts were expected, got {typed.Length.ToString(CultureInfo.InvariantCulture)}. {Forms}");
        long[] counted = [.. typed.Select(WholeNumber)];
        CleanlinessCode code = Typed.Take(CleanlinessCode.OfCounted(counted[0], counted[1], counted[2], sample));
        double millilitres = sample.CubicMetres * 1e6;
        return (code, new ParticleCounts(new(counted[0] / millilitres), new(counted[1] / millilitres), new(counted[2] / millilitres)));
    }

    private static long WholeNumber(string text, int index) =>
        long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out long count)
            ? count
            : throw new WrongUseException($"{What(index)}: a whole number of particles was expected, got {Wording.Quoted(text)}. {Forms}");

    private static ParticleConcentration PerVolume(int index, string text)
    {
        int stroke = text.IndexOf('/', StringComparison.Ordinal);
        if (stroke < 0)
            throw new WrongUseException($"{What(index)}: {Wording.Quoted(text)} does not say in what volume. {Forms}");
        double count = Typed.Number(What(index), text[..stroke], "3000/mL");
        string volume = text[(stroke + 1)..];
        double millilitres = Typed.Volume(What(index), volume.Length > 0 && char.IsAsciiDigit(volume[0]) ? volume : "1" + volume).CubicMetres * 1e6;
        return new ParticleConcentration(count / millilitres);
    }

    private static string What(int index) => $"the count at {(index == 0 ? 4 : index == 1 ? 6 : 14).ToString(CultureInfo.InvariantCulture)} µm(c)";
}
