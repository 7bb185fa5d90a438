using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Support.Notation;

/// <summary>Reads what follows an <c>@</c>, and the words that parts and directives share; the grammar stands at <see cref="CaseReader"/>.</summary>
internal static class DirectiveReader
{
    internal static void Read(CaseDraft draft, string directive, string[] words)
    {
        switch (directive)
        {
            case "failed":
                foreach (string word in words)
                    ReadFailure(draft, word);
                break;
            case "asked":
                draft.Asked.AddRange(words);
                break;
            case "found" or "clean":
                ReadFinding(draft, directive == "found", words);
                break;
            case "states":
                draft.States = States(words);
                break;
            case "technicians":
                draft.Technicians = (int)Number(Only(words));
                break;
            case "clean-findings":
                draft.CleanFindings = ReadWord<CleanFindings>(Only(words));
                break;
            case "debris":
                draft.OwnDebris.Add(ReadOwnDebris(words));
                break;
            case "rule":
                draft.Rules.Add(ReadRule(words, draft.Rules.Count + 1));
                break;
            case "times":
                draft.Times.Add((words[0], words[1..].Select(KeyAndValue).Aggregate(
                    TaskMinutes.None, (minutes, entry) => Minutes(minutes, entry.Key, entry.Value))));
                break;
            default:
                throw new FormatException($"'@{directive}' is not a directive");
        }
    }

    internal static (string Key, string Value) KeyAndValue(string word)
    {
        int equals = word.IndexOf('=', StringComparison.Ordinal);
        return equals < 0 ? throw new FormatException($"'{word}' has no '='") : (word[..equals], word[(equals + 1)..]);
    }

    internal static EngineStates States(IEnumerable<string> words) =>
        words.Aggregate(EngineStates.None, (states, word) => states | ReadWord<EngineStates>(word));

    internal static ParticleSize Size(string word) => ParticleSize.FromMicrometres(Number(word));

    internal static double Number(string word) =>
        double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && number >= 0
            ? number
            : throw new FormatException($"'{word}' is not a number from 0");

    internal static TaskMinutes Minutes(TaskMinutes minutes, string task, string value) => task switch
    {
        "inspect" => minutes with { Inspect = Number(value) },
        "remove" => minutes with { Remove = Number(value) },
        "flush" => minutes with { Flush = Number(value) },
        "clean" => minutes with { Clean = Number(value) },
        "test" => minutes with { Test = Number(value) },
        "replace" => minutes with { Replace = Number(value) },
        "refit" => minutes with { Refit = Number(value) },
        _ => throw new FormatException($"'{task}' takes no value"),
    };

    private static void ReadFailure(CaseDraft draft, string word)
    {
        string[] sides = word.Split('=', 2);
        var part = new PartId(sides[0]);
        if (!draft.Failed.Contains(part))
            draft.Failed.Add(part);
        if (sides.Length == 1)
            return;
        string[] shed = sides[1].Split(':', 2);
        draft.Own.Add(() => new PartFailure(part)
        {
            Debris = shed[0] == "nothing" ? [] : [.. shed[0].Split('+').Select(draft.DebrisOf)],
            UpTo = shed.Length == 2 ? Size(shed[1]) : null,
        });
    }

    private static void ReadFinding(CaseDraft draft, bool found, string[] words)
    {
        if (words.Length is < 2 or > 3)
            throw new FormatException("a finding names a part, a debris and perhaps a size");
        draft.Findings.Add(() => new Finding(draft.Known(new PartId(words[0])), draft.DebrisOf(words[1]), found)
        {
            Size = words.Length == 3 ? Size(words[2]) : null,
        });
    }

    private static Debris ReadOwnDebris(string[] words) => words switch
    {
        [string name, "hard" or "soft", "sized" or "unsized"] => new Debris(name, words[2] == "sized", words[1] == "hard"),
        _ => throw new FormatException("a debris is a name, hard or soft, sized or unsized"),
    };

    private static Rule ReadRule(string[] words, int number)
    {
        Dictionary<string, string> said = words.Select(KeyAndValue).ToDictionary(entry => entry.Key, entry => entry.Value, StringComparer.Ordinal);
        string[] known = ["part", "kind", "debris", "exposed", "guarded", "failed"];
        if (said.Keys.FirstOrDefault(key => !known.Contains(key)) is { } unknown)
            throw new FormatException($"'{unknown}' is not what a rule can say");
        return new Rule(
            new RuleFor(said.GetValueOrDefault("part"), said.GetValueOrDefault("kind"), said.GetValueOrDefault("debris")),
            Treatments(said.GetValueOrDefault("exposed")),
            Treatments(said.GetValueOrDefault("guarded")),
            Treatments(said.GetValueOrDefault("failed")),
            "",
            new SourceSpan("standard", number, 1));
    }

    private static ImmutableArray<TreatmentKind>? Treatments(string? value) =>
        value is null ? null : [.. value.Split('+').Select(ReadWord<TreatmentKind>)];

    private static T ReadWord<T>(string word)
        where T : struct, Enum =>
        word.Length > 0 && char.IsAsciiLetterLower(word[0]) && Enum.TryParse(word, ignoreCase: true, out T value)
            ? value
            : throw new FormatException($"'{word}' is not a {typeof(T).Name}");

    private static string Only(string[] words) => words.Length == 1 ? words[0] : throw new FormatException("one word is due");
}
