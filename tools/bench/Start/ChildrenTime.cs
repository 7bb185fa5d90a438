using System.Runtime.InteropServices;

namespace Contam.Bench.Start;

/// <summary>How long the processors have worked for the programs that this one started and that have ended. On Linux and macOS alone.</summary>
internal static class ChildrenTime
{
    private const int OfChildren = -1;

    /// <summary>In milliseconds, in the programs and in the system for them.</summary>
    public static double Milliseconds
    {
        get
        {
            // Two times in seconds and microseconds, then fourteen figures that nobody asks for here.
            long[] usage = new long[18];
            if (Usage(OfChildren, usage) != 0)
                throw new InvalidOperationException("the system does not say how long its processors worked");
            return (1000 * (usage[0] + usage[2])) + ((int)usage[1] / 1000.0) + ((int)usage[3] / 1000.0);
        }
    }

    // POSIX getrusage(2).
    [DllImport("libc", EntryPoint = "getrusage")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Usage(int who, [Out] long[] usage);
}
