using System.Diagnostics;
using System.Globalization;

namespace Contam.Fuzz;

/// <summary>Several processes at once, each with a seed of its own. Branch counters belong to a process, so threads would count into one another.</summary>
internal static class Workers
{
    /// <summary>Runs them; answers 1 where one of them found a fault.</summary>
    public static int Run(string[] args, Call call)
    {
        var workers = new List<Process>();
        for (int i = 0; i < call.Threads; i++)
        {
            string[] own = ["--threads", "1", "--seed", (call.Seed + i).ToString(CultureInfo.InvariantCulture)];
            if (call.Work is string work)
                own = [.. own, "--work", Path.Combine(work, i.ToString(CultureInfo.InvariantCulture))];
            workers.Add(Process.Start(new ProcessStartInfo(Environment.ProcessPath!, [Environment.GetCommandLineArgs()[0], .. args, .. own]))!);
        }

        foreach (Process worker in workers)
            worker.WaitForExit();
        return workers.Any(worker => worker.ExitCode != 0) ? 1 : 0;
    }
}
