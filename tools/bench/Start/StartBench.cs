using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using Contam.Bench.Ratios;

namespace Contam.Bench.Start;

/// <summary>
/// A whole <c>plan</c> of the largest shipped family and the help, from the start of the program to its end, against the start and end of an empty program of the same make: native against
/// native, portable against portable. What is measured is what <c>tools/release</c> has made, and what it makes for other platforms, made for this one. All take turns, so that a machine that slows down slows all of them.
/// What is measured is time of the processors, in the program and in the system for it: other work on the machine adds little to that.
/// </summary>
internal static class StartBench
{
    private const int Runs = 31;

    /// <summary>
    /// The most that a person is to wait, in starts of an empty native program, which takes 2 to 3 ms on a machine of today. The help: 30 ms. A whole
    /// plan: 100 ms would be 33, but it took 14.8 when the start was written for speed alone, and half as much again is the most.
    /// </summary>
    private const double MostForPlan = 22.2, MostForHelp = 10;

    private static readonly string[] Plan = ["plan", Path.GetFullPath("systems/families/quay-diesel-v8.yaml"), "--failed", "main-bearing-1", "--debris", "metal"];

    /// <summary>
    /// Measures what is in this folder of a release and keeps the ratios; how many times the empty program's time, so less is better. Answers whether
    /// the native ones are within what a person is to wait.
    /// </summary>
    public static bool Run(string released)
    {
        string native = Path.GetFullPath(Path.Combine(released, "native", "contam"));
        if (!File.Exists(native))
            throw new FileNotFoundException($"{native} is not there; tools/release {released} makes it.");
        DirectoryInfo work = Directory.CreateTempSubdirectory("contam-start");
        try
        {
            string portable = Unpacked(Path.Combine(released, "packages"), Path.Combine(work.FullName, "any"));
            string compiled = CompiledBeforehand(Path.Combine(work.FullName, "compiled"));
            (string emptyNative, string emptyPortable) = EmptyPrograms(work.FullName);
            Contender[] contenders =
            [
                new("an empty native program", emptyNative, []),
                new("plan, native", native, Plan),
                new("an empty portable program", "dotnet", [emptyPortable]),
                new("plan, portable", "dotnet", [portable, .. Plan]),
                new("plan, compiled beforehand", "dotnet", [compiled, .. Plan]),
                new("help, native", native, ["--help"]),
            ];

            // Once each without a watch, for the files to be in memory; both must say the same.
            string[] said = [.. contenders.Select(one => one.Run().Said)];
            if (said[1].Length == 0 || said[1] != said[3] || said[1] != said[4])
                throw new InvalidOperationException("the native, the portable and the compiled command do not print the same plan");
            var took = contenders.ToDictionary(one => one.Name, _ => new double[Runs]);
            for (int run = 0; run < Runs; run++)
            {
                foreach (Contender one in contenders)
                    took[one.Name][run] = one.Run().Milliseconds;
            }

            double[] medians = [.. contenders.Select(one => took[one.Name].Order().ElementAt(Runs / 2))];
            foreach ((Contender one, double median) in contenders.Zip(medians))
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{one.Name}: {median:0.0} ms, {took[one.Name].Min():0.0} to {took[one.Name].Max():0.0}, {Runs} runs"));
            KeyValuePair<string, double>[] ratios =
            [
                new("whole native plan, times an empty native program", medians[1] / medians[0]),
                new("native help, times an empty native program", medians[5] / medians[0]),
                new("whole portable plan, times an empty portable program", medians[3] / medians[2]),
                new("whole plan compiled beforehand, times an empty portable program", medians[4] / medians[2]),
            ];
            foreach ((string name, double ratio) in ratios)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: {ratio:0.00}"));
            KeptRatios.Put(ratios);
            return IsWithin(ratios[0], MostForPlan) & IsWithin(ratios[1], MostForHelp);
        }
        finally
        {
            work.Delete(recursive: true);
        }
    }

    private static bool IsWithin(KeyValuePair<string, double> ratio, double most)
    {
        if (ratio.Value <= most)
            return true;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{ratio.Key} is {ratio.Value:0.00}, more than {most:0.00}"));
        return false;
    }

    /// <summary>The command that the portable tool package holds.</summary>
    private static string Unpacked(string packages, string to)
    {
        string package = Directory.GetFiles(packages, "Contam.Cli.any.*.nupkg").Single();
        ZipFile.ExtractToDirectory(package, to);
        return Directory.GetFiles(to, "Contam.Cli.dll", SearchOption.AllDirectories).Single();
    }

    /// <summary>The command as other platforms get it, for this one: what tools/release has made for them does not run here.</summary>
    private static string CompiledBeforehand(string to)
    {
        _ = new Contender("publish", "dotnet", ["publish", "src/Contam.Cli", "-c", "Release", "--use-current-runtime", "-p:ReleasedFor=another", "-p:PublishAot=false", "-p:RunAnalyzers=false", "--artifacts-path", to + "-work", "-o", to]).Run();
        return Path.Combine(to, "Contam.Cli.dll");
    }

    /// <summary>A program that does nothing, with the invariant culture that contam has too, so that it is no slower than it must be.</summary>
    private static (string Native, string Portable) EmptyPrograms(string work)
    {
        string source = Path.Combine(work, "empty");
        Directory.CreateDirectory(source);
        File.WriteAllText(Path.Combine(source, "Program.cs"), "return;\n");
        File.WriteAllText(Path.Combine(source, "empty.csproj"), """
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework><InvariantGlobalization>true</InvariantGlobalization></PropertyGroup>
            </Project>

            """);
        string native = Path.Combine(work, "empty-native"), portable = Path.Combine(work, "empty-portable");
        _ = new Contender("publish", "dotnet", ["publish", source, "-c", "Release", "--use-current-runtime", "-p:PublishAot=true", "--artifacts-path", native + "-work", "-o", native]).Run();
        _ = new Contender("publish", "dotnet", ["publish", source, "-c", "Release", "--artifacts-path", portable + "-work", "-o", portable]).Run();
        return (Path.Combine(native, "empty"), Path.Combine(portable, "empty.dll"));
    }

    private sealed record Contender(string Name, string Program, string[] Words)
    {
        /// <summary>What it prints, and how long the processors work for it from its start to its end.</summary>
        public (string Said, double Milliseconds) Run()
        {
            var start = new ProcessStartInfo(Program, Words) { RedirectStandardOutput = true };
            double before = ChildrenTime.Milliseconds;
            using Process process = Process.Start(start)!;
            string said = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            double took = ChildrenTime.Milliseconds - before;
            return process.ExitCode == 0 ? (said, took) : throw new InvalidOperationException($"{Program} {string.Join(' ', Words)} ended with {process.ExitCode}: {said}");
        }
    }
}
