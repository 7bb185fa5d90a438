using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using Contam.Families;

namespace Contam.Bench.Ratios;

/// <summary>The reachability of the C graph library that Debian packages for Python (python3-igraph), called on the same joints.</summary>
internal static class CSearch
{
    private const string Python = "/usr/bin/python3";

    /// <summary>The median time of a search in nanoseconds, and how many parts it reaches; <c>null</c> where the library is not installed.</summary>
    public static (int Reached, double Time)? From(Family family)
    {
        if (!IsThere())
            return null;
        string file = Path.GetTempFileName();
        try
        {
            var numbers = new int[1 + (2 * family.Joints.Length)];
            numbers[0] = family.Parts.Length;
            for (int joint = 0; joint < family.Joints.Length; joint++)
                (numbers[1 + (2 * joint)], numbers[2 + (2 * joint)]) = (family.JointFrom[joint], family.JointTo[joint]);
            File.WriteAllBytes(file, MemoryMarshal.AsBytes<int>(numbers));
            string[] words = Run(Path.Combine("tools", "bench", "Ratios", "c-search"), file).Split(' ');
            return (int.Parse(words[0], CultureInfo.InvariantCulture), double.Parse(words[1], CultureInfo.InvariantCulture));
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static bool IsThere()
    {
        if (!File.Exists(Python))
            return false;
        using Process process = Process.Start(new ProcessStartInfo(Python, ["-c", "import igraph"]) { RedirectStandardError = true })!;
        process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0;
    }

    private static string Run(string program, string file)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, [file]) { RedirectStandardOutput = true })!;
        string said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? said : throw new InvalidOperationException($"{program} ended with {process.ExitCode}");
    }
}
