namespace Contam.Cli;

/// <summary>What the command ends with.</summary>
internal static class ExitCode
{
    /// <summary>Done, and the answer is yes.</summary>
    public const int Yes = 0;

    /// <summary>Done, and the answer is no: errors found, release refused, reading rejected, proof refused.</summary>
    public const int No = 1;

    /// <summary>Wrong use, or input that cannot be read.</summary>
    public const int WrongUse = 2;

    /// <summary>A fault of the program.</summary>
    public const int Fault = 3;
}
