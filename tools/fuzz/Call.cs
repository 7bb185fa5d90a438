using System.Globalization;

namespace Contam.Fuzz;

/// <summary>What the program was called with.</summary>
internal sealed record Call
{
    /// <summary>How long it runs at most.</summary>
    public double Seconds { get; private set; } = 60;

    /// <summary>How many texts are read at most, those of earlier runs on the same <see cref="Work"/> folder included.</summary>
    public long Executions { get; private set; } = long.MaxValue;

    /// <summary>Where chance begins.</summary>
    public int Seed { get; private set; } = 1;

    /// <summary>How many processes work at once.</summary>
    public int Threads { get; private set; } = 1;

    /// <summary>The texts to begin with.</summary>
    public string Corpus { get; private set; } = "tools/fuzz/corpus";

    /// <summary>Where a long run keeps what it found and how far it is, so that it can be gone on with; <c>null</c> for nowhere.</summary>
    public string? Work { get; private set; }

    /// <summary>Where texts that show a fault of the reader are put.</summary>
    public string Findings { get; private set; } = "tools/fuzz/findings";

    /// <summary>A text to read once, thoroughly; the folder that it is in says its sort.</summary>
    public string? Replay { get; private set; }

    /// <summary>Where to write the fewest of the known texts that together take every known branch.</summary>
    public string? Distil { get; private set; }

    /// <summary>The arguments read.</summary>
    public static Call Of(string[] args)
    {
        var call = new Call();
        for (int i = 0; i + 1 < args.Length; i += 2)
        {
            string value = args[i + 1];
            switch (args[i])
            {
                case "--seconds": call.Seconds = double.Parse(value, CultureInfo.InvariantCulture); break;
                case "--executions": call.Executions = long.Parse(value, CultureInfo.InvariantCulture); break;
                case "--seed": call.Seed = int.Parse(value, CultureInfo.InvariantCulture); break;
                case "--threads": call.Threads = int.Parse(value, CultureInfo.InvariantCulture); break;
                case "--corpus": call.Corpus = value; break;
                case "--work": call.Work = value; break;
                case "--findings": call.Findings = value; break;
                case "--replay": call.Replay = value; break;
                case "--distil": call.Distil = value; break;
                default: throw new ArgumentException($"there is no option {args[i]}");
            }
        }

        return args.Length % 2 == 0 ? call : throw new ArgumentException($"{args[^1]} needs a value");
    }
}
