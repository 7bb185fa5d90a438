using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Support.Notation;

/// <summary>
/// Reads a system, or a system with its question, from a few readable lines:
/// <code>
/// pump[sheds metal 400] > filter[holds metal 30 abs] > rail[inplace] > tank
/// fuel: rail >?ring-pack> sump; tank &lt;> breather; ring-pack
/// @failed pump
/// @asked metal
/// </code>
/// Grammar; lines end at a newline or at <c>;</c>, and <c>#</c> begins a comment:
/// <code>
/// line      = [circuit ":"] part { arrow part }  |  "@" directive
/// part      = id [ "[" attribute { " " attribute } "]" ]      parts stand in order of first mention; attributes may be given once
/// arrow     = ">"                      neighbours on a run
///           | ">" modifiers ">"        a link one way        | "&lt;" modifiers ">"   a link both ways (modifiers may be left out)
///           | "~"                      a link that no engine state opens
/// modifiers = "-" (a plain link) | { "?" id (only if that part failed) | "(" µm ")" (passage) | "/" state { "+" state } (when; "never" for none) }
/// attribute = "part" | "filter" | "block" (the kind)  |  "inplace" (alone: a block) | "removable"
///           | "critical" (cleared by nothing) | "two-looks" | "abs" | "nominal" | "bypass" | "repeat" (x-3 is number 3 of x)
///           | "sheds" debris [µm] ["rare" | "occasional"]  |  "holds" debris (µm | "all")
///           | "passage=" µm | "clearance=" µm | "access=" id { "+" id } | "seals=" name { "+" name }
///           | "sendout=" [days] | "look=" ("good" | "fair" | "poor") [":" minutes]
///           | task "=" minutes         task: inspect, remove, flush, clean, test, replace, refit
/// directive = "failed" { id [ "=" ("nothing" | debris { "+" debris } [ ":" µm ]) ] }        what it shed; else all that is asked about
///           | "asked" debris… | "found" id debris [µm] | "clean" id debris
///           | "states" state… | "technicians" number | "clean-findings" ("accept" | "never")
///           | "debris" name ("hard" | "soft") ("sized" | "unsized")            before its first use
///           | "rule" { "part=" id | "kind=" kind | "debris=" debris | ("exposed=" | "guarded=" | "failed=") treatment { "+" treatment } }
///           | "times" kind { task "=" minutes }
/// </code>
/// The circuit is <c>flow</c> where none is named. Where no debris is asked for, it is metal.
/// </summary>
public static partial class CaseReader
{
    /// <summary>The circuit of a line that names none.</summary>
    public const string DefaultCircuit = "flow";

    /// <summary>The system alone.</summary>
    /// <exception cref="FormatException">The text does not follow the grammar; the message names the line.</exception>
    public static Family System(string text) => Read(text).Family;

    /// <summary>The system and its question.</summary>
    /// <exception cref="FormatException">The text does not follow the grammar; the message names the line.</exception>
    public static TestCase Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var draft = new CaseDraft();
        string[] lines = text.Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            int comment = lines[i].IndexOf('#', StringComparison.Ordinal);
            string line = comment < 0 ? lines[i] : lines[i][..comment];
            foreach (string statement in line.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
                Place(i + 1, () => Statement(draft, statement));
        }

        return draft.Finish();
    }

    private static void Place(int line, Action read)
    {
        try
        {
            read();
        }
        catch (FormatException problem)
        {
            throw new FormatException($"line {line}: {problem.Message}", problem);
        }
    }

    private static void Statement(CaseDraft draft, string statement)
    {
        if (statement[0] == '@')
        {
            string[] words = Words(statement[1..]);
            DirectiveReader.Read(draft, words[0], words[1..]);
            return;
        }

        Match circuit = CircuitPrefix().Match(statement);
        string rest = circuit.Success ? statement[circuit.Length..] : statement;
        ReadChain(draft, circuit.Success ? circuit.Groups[1].Value : DefaultCircuit, rest);
    }

    private static void ReadChain(CaseDraft draft, string circuit, string text)
    {
        PartId? from = null;
        string? arrow = null;
        foreach (Match token in Tokens(text))
        {
            if (token.Groups["arrow"].Success)
            {
                if (from is null || arrow is not null)
                    throw new FormatException($"a part is due before '{token.Value}'");
                arrow = token.Value;
                continue;
            }

            if (from is not null && arrow is null)
                throw new FormatException($"an arrow is due before '{token.Value}'");
            var part = new PartId(token.Groups["id"].Value);
            draft.Mention(part, token.Groups["attributes"].Success ? Words(token.Groups["attributes"].Value) : []);
            if (arrow is not null)
                draft.Join(ArrowReader.Read(arrow, from!.Value, part, circuit));
            (from, arrow) = (part, null);
        }

        if (arrow is not null)
            throw new FormatException($"a part is due after '{arrow}'");
    }

    private static List<Match> Tokens(string text)
    {
        var tokens = new List<Match>();
        int at = 0;
        while (at < text.Length)
        {
            Match token = Token().Match(text, at);
            if (!token.Success || token.Index != at)
                throw new FormatException($"'{text[at..]}' is neither a part nor an arrow");
            if (!token.Groups["space"].Success)
                tokens.Add(token);
            at += token.Length;
        }

        return tokens;
    }

    private static string[] Words(string text) =>
        text.Split(' ', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    [GeneratedRegex(@"^([a-z][a-z0-9-]*):\s+")]
    private static partial Regex CircuitPrefix();

    [GeneratedRegex(@"\G(?:(?<space>\s+)|(?<arrow>~|>[?(/-][^>]*>|<[^>]*>|>)|(?<id>[a-z][a-z0-9-]*)(?:\[(?<attributes>[^\]]*)\])?)")]
    private static partial Regex Token();
}
