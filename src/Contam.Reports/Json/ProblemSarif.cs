using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;
using Contam.Families;
using Contam.Problems;

namespace Contam.Reports.Json;

/// <summary>
/// What a check found, in the Static Analysis Results Interchange Format 2.1.0 (an OASIS standard), which editors and pipelines show beside the
/// lines. One rule for each code that was raised; the mend stands in the message and in the rule's help. Files are relative URIs: a file that was
/// named from the root of the machine is shown relative to the folder of the call, or by its name alone where it lies elsewhere.
/// </summary>
public static class ProblemSarif
{
    private static readonly JsonWriterOptions Look = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.Create(UnicodeRanges.All) };

    /// <summary>The log, closed by a newline.</summary>
    /// <param name="problems">What was found, in order.</param>
    /// <param name="folder">The folder of the call, against which rooted names are shown; empty for none.</param>
    public static string Write(IReadOnlyCollection<Problem> problems, string folder)
    {
        ArgumentNullException.ThrowIfNull(problems);
        ArgumentNullException.ThrowIfNull(folder);
        string[] rules = [.. problems.Select(problem => problem.Code).Distinct(StringComparer.Ordinal)];
        var names = new SarifNames(problems, folder);
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, Look))
        {
            json.WriteStartObject();
            json.WriteString("$schema", "https://json.schemastore.org/sarif-2.1.0.json");
            json.WriteString("version", "2.1.0");
            json.WriteStartArray("runs");
            json.WriteStartObject();
            Tool(json, rules);
            json.WriteString("columnKind", "utf16CodeUnits");
            json.WriteStartArray("results");
            foreach (Problem problem in problems)
                Result(json, problem, Array.IndexOf(rules, problem.Code), names);
            json.WriteEndArray();
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    private static void Tool(Utf8JsonWriter json, string[] rules)
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "contam");
        json.WriteStartArray("rules");
        foreach (string code in rules)
            Rule(json, ProblemCodes.Find(code) ?? throw new ArgumentException($"no code {code} is known"));
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Rule(Utf8JsonWriter json, ProblemCode code)
    {
        string meant = code.MayBeMeant is { } reason ? $"\n\n{ProblemCodeMarkdown.WhereMeant(code.Code)} `meant: {{{code.Code}: {reason}}}`" : "";
        json.WriteStartObject();
        json.WriteString("id", code.Code);
        Text(json, "shortDescription", code.Meaning);
        json.WriteStartObject("help");
        json.WriteString("text", $"{code.Meaning}\n\n{code.Example}\n\n{code.Mend}{meant}");
        json.WriteString("markdown", $"{code.Meaning}\n\n```yaml\n{code.Example}\n```\n\n{code.Mend}{meant}");
        json.WriteEndObject();
        json.WriteStartObject("defaultConfiguration");
        json.WriteString("level", LevelOf(code.Severity));
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Result(Utf8JsonWriter json, Problem problem, int rule, SarifNames names)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", problem.Code);
        json.WriteNumber("ruleIndex", rule);
        json.WriteString("level", LevelOf(problem.Severity));
        Text(json, "message", names.Shown(problem, problem.Mend.Length > 0 ? $"{problem.Text}. {char.ToUpperInvariant(problem.Mend[0])}{problem.Mend[1..]}" : problem.Text));
        if (problem.Place is { } place)
        {
            json.WriteStartArray("locations");
            Location(json, place, null, names);
            json.WriteEndArray();
        }

        if (!problem.Related.IsEmpty)
        {
            json.WriteStartArray("relatedLocations");
            for (int i = 0; i < problem.Related.Length; i++)
                Location(json, problem.Related[i], i, names);
            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static void Location(Utf8JsonWriter json, SourceSpan place, int? id, SarifNames names)
    {
        json.WriteStartObject();
        if (id is { } number)
            json.WriteNumber("id", number);
        json.WriteStartObject("physicalLocation");
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", names.UriOf(place.File));
        json.WriteEndObject();
        json.WriteStartObject("region");
        json.WriteNumber("startLine", place.Line);
        json.WriteNumber("startColumn", place.Column);
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Text(Utf8JsonWriter json, string name, string text)
    {
        json.WriteStartObject(name);
        json.WriteString("text", text);
        json.WriteEndObject();
    }

    private static string LevelOf(Severity severity) => severity == Severity.Error ? "error" : "warning";
}
