using Contam.Reports.Text;

namespace Contam.Cli;

/// <summary>Everything that a command may know of the world outside: where answers go, where everything else goes, and how wide and colourful the place is.</summary>
/// <param name="Out">Where answers go.</param>
/// <param name="Error">Where everything else goes.</param>
/// <param name="Look">How text on <paramref name="Out"/> looks.</param>
internal sealed record Shell(TextWriter Out, TextWriter Error, TextLook Look)
{
    /// <summary>What is typed or piped in.</summary>
    public TextReader In { get; init; } = TextReader.Null;

    /// <summary>Whether a person sits at both ends, who can be asked.</summary>
    public bool CanAsk { get; init; }

    /// <summary>The clock.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>What was written into a record so far by this call.</summary>
    public RecordedSoFar Recorded { get; } = new();

    /// <summary>The environment variable of this name, or <c>null</c>.</summary>
    public Func<string, string?> Setting { get; init; } = _ => null;

    /// <summary>The shell of this process. A pipe, <c>NO_COLOR</c> and <c>TERM=dumb</c> give plain text.</summary>
    public static Shell OfProcess()
    {
        var utf8 = new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        var answers = new StreamWriter(new PrintedStream(Console.OpenStandardOutput(), mustPrint: true), utf8, bufferSize: 8192) { NewLine = "\n", AutoFlush = false };
        var rest = new StreamWriter(new PrintedStream(Console.OpenStandardError(), mustPrint: false), utf8) { NewLine = "\n", AutoFlush = true };
        var typed = new StreamReader(Console.OpenStandardInput(), utf8);
        if (Console.IsOutputRedirected)
            return new Shell(answers, rest, TextLook.Plain) { In = typed, Setting = Environment.GetEnvironmentVariable };
        bool isPlain = Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 } || Environment.GetEnvironmentVariable("TERM") is "dumb" or null or "";
        return new Shell(answers, rest, TextLook.Plain with { Width = WidthOfTerminal(), HasColour = !isPlain })
        {
            In = typed,
            CanAsk = !Console.IsInputRedirected,
            Setting = Environment.GetEnvironmentVariable,
        };
    }

    private static int WidthOfTerminal()
    {
        try
        {
            return Console.WindowWidth is > 0 and var width ? Math.Min(width, 120) : TextLook.Plain.Width;
        }
        catch (IOException)
        {
            // A terminal that does not say how wide it is.
            return TextLook.Plain.Width;
        }
    }
}
