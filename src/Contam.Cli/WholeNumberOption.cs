using System.CommandLine;
using System.Globalization;
using Contam.Problems;

namespace Contam.Cli;

/// <summary>Options that take a whole number.</summary>
internal static class WholeNumberOption
{
    /// <summary>Whoever gives anything but a whole number between these, both included, is told what is taken.</summary>
    public static void MustBeFrom(this Option<int> option, int least, int most)
    {
        // Whoever asks a result for its number where it is none gets an exception from the parser library, so the number is read here.
        option.CustomParser = result =>
        {
            string text = result.Tokens is [var token] ? token.Value : "";
            if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= least && number <= most)
                return number;
            result.AddError(string.Create(CultureInfo.InvariantCulture, $"{option.Name} takes a whole number from {least} to {most}, got {Wording.Quoted(text)}."));
            return least;
        };
    }
}
