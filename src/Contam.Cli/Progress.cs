using System.Globalization;

namespace Contam.Cli;

/// <summary>Says on standard error how far long work has come: first after a second, then each time twice as much time has gone by. Called from any thread.</summary>
/// <param name="shell">Where it is said, and the clock.</param>
/// <param name="what">What is counted, in the plural.</param>
internal sealed class Progress(Shell shell, string what)
{
    private readonly Lock gate = new();
    private readonly long start = shell.Clock.GetTimestamp();
    private TimeSpan next = TimeSpan.FromSeconds(1);

    public void Tell(int done, int all)
    {
        if (done >= all)
            return;
        lock (gate)
        {
            TimeSpan gone = shell.Clock.GetElapsedTime(start);
            if (gone < next)
                return;
            next = gone * 2;
            shell.Error.Write(string.Create(CultureInfo.InvariantCulture, $"{done} of {all} {what} done\n"));
        }
    }
}
