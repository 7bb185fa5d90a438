using Contam.Families;
using Contam.Reports.Text;

namespace Contam.Cli;

/// <summary>What a person answers who was asked to look.</summary>
internal enum TraceAnswerKind
{
    Found,
    Clean,
    CannotTell,
    Stop,
}

/// <summary>An answer read.</summary>
/// <param name="Kind">What was said.</param>
/// <param name="Finding">The finding, where it is one.</param>
internal sealed record TraceAnswer(TraceAnswerKind Kind, Finding? Finding)
{
    private static readonly string[] Words = ["found", "clean", "cannot tell", "stop"];

    /// <summary>Reads an answer; no line at all is the end of the input, which stops.</summary>
    /// <exception cref="WrongUseException">It is none; the message says what is.</exception>
    public static TraceAnswer Read(string? line, PartId part, Debris debris)
    {
        if (line is null)
            return new TraceAnswer(TraceAnswerKind.Stop, null);
        string text = line.Trim();
        int end = text.IndexOfAny([' ', ',', ':', '\t']);
        string word = (end < 0 ? text : text[..end]).ToLowerInvariant();
        string rest = end < 0 ? "" : text[(end + 1)..];
        switch (word)
        {
            case "found" or "f":
                return new TraceAnswer(TraceAnswerKind.Found, QuestionNames.Described(new Finding(part, debris, Found: true), rest.Replace(':', ' ').Replace('\t', ' ')));
            case "clean" or "c" when rest.Trim().Length == 0:
                return new TraceAnswer(TraceAnswerKind.Clean, new Finding(part, debris, Found: false));
            case "?" when rest.Trim().Length == 0:
            case "cannot" when rest.Trim() is "" or "tell":
                return new TraceAnswer(TraceAnswerKind.CannotTell, null);
            case "stop" or "s" when rest.Trim().Length == 0:
                return new TraceAnswer(TraceAnswerKind.Stop, null);
            default:
                throw new WrongUseException($"{(text.Length == 0 ? "Nothing" : TextPage.Harmless(text))} is no answer.{Typed.Near(text.ToLowerInvariant(), Words)} Write found, clean, cannot tell or stop; after found may stand a size and looks, for instance: found 120um flakes not-magnetic.");
        }
    }
}
