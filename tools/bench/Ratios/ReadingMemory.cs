using System.Diagnostics;
using System.Globalization;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;
using Contam.Treatment.Reading;

namespace Contam.Bench.Ratios;

/// <summary>
/// Peak memory of reading a family from disk: the least managed heap in which a process of its own can do it, in sizes of the file. The runtime is
/// told to fail where the heap, what nobody has collected yet included, would grow beyond a limit; from one that is roomy the limit is lowered until it
/// fails. (Looking for it by halves would find a lucky one: a little below a limit that fails may be one that does not.) It is a little more than the
/// peak of what is alive, never less, and does not hang on how much a machine's cache tempts the collector to leave lying.
/// </summary>
internal static class ReadingMemory
{
    private const int Roomy = 60;

    private static readonly ReadLimits Limitless = new() { FileBytes = int.MaxValue, Values = int.MaxValue, Parts = int.MaxValue, Joints = int.MaxValue };

    /// <summary>The peak for a family of so many parts, to a quarter of the file.</summary>
    public static double Peak(int parts) => With(parts, file =>
    {
        int quarters = 4 * Roomy;
        if (!CanRead(file, quarters / 4.0))
            throw new InvalidOperationException($"a family of {parts} parts cannot be read in {Roomy} sizes of its file");
        while (CanRead(file, (quarters - 1) / 4.0))
            quarters--;
        return quarters / 4.0;
    });

    /// <summary>Whether a family of so many parts can be read in a heap of so many sizes of its file.</summary>
    public static bool IsEnough(int parts, double sizes) => With(parts, file => CanRead(file, sizes));

    /// <summary>Reads one family, in the process that <see cref="Peak"/> starts; the exit code.</summary>
    public static int ReadOnce(string file)
    {
        try
        {
            return FamilyReader.ReadFile(file, BuiltInStandards.HouseOverKinds.CatalogueOf(), Limitless).Value is null ? 2 : 0;
        }
        catch (OutOfMemoryException)
        {
            return 1;
        }
    }

    private static T With<T>(int parts, Func<string, T> read)
    {
        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, Systems.File(parts));
            return read(file);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static bool CanRead(string file, double sizes)
    {
        long heap = (long)(sizes * new FileInfo(file).Length);
        var start = new ProcessStartInfo(Environment.ProcessPath!, ["read-once", file]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["DOTNET_GCHeapHardLimit"] = "0x" + heap.ToString("X", CultureInfo.InvariantCulture);
        using Process process = Process.Start(start)!;
        // Both are read, or a process that runs out of memory would stand still with a full pipe.
        Task said = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        said.Wait();
        process.WaitForExit();
        return process.ExitCode switch
        {
            0 => true,
            2 => throw new InvalidOperationException("the made-up family is not sound"),
            // Out of memory where it could be caught, or ended by the runtime.
            _ => false,
        };
    }
}
