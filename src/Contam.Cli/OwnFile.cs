using System.Text.Json;
using Contam.Families.Reading.Sheets;
using Contam.Reports.Text;

namespace Contam.Cli;

/// <summary>A JSON file that a call of this command wrote, given back to another.</summary>
internal static class OwnFile
{
    /// <summary>What it holds.</summary>
    /// <param name="file">Where it is.</param>
    /// <param name="read">Reads its text.</param>
    /// <param name="due">What it should be, for instance <c>a plan</c>.</param>
    /// <param name="from">How such a file is made, for instance <c>contam plan --format json</c>.</param>
    /// <exception cref="WrongUseException">It cannot be read, or is something else.</exception>
    public static T Read<T>(string file, Func<string, T> read, string due, string from)
    {
        string name = TextPage.Harmless(file);
        if (OtherForm.OfFile(file) is { } form)
            throw new WrongUseException($"{name} is not {due}: it is {form}. Give a file written by {from}.");
        try
        {
            return read(InputFile.ReadText(file));
        }
        catch (JsonException isAnother)
        {
            string why = FileSort.Says(file) is { } sort ? $"it is {sort}" : JsonWords.Of(isAnother);
            throw new WrongUseException($"{name} is not {due}: {why}. Give a file written by {from}.");
        }
    }
}
