using System.Text.Json;
using Contam.Reports.Text;
using Contam.Support;
using Json.Schema;

namespace Contam.Cli.Tests.Gauge;

/// <summary>A call of the command in this process: what it ended with and what it wrote.</summary>
internal sealed record Called(int Exit, string Out, string Error)
{
    public const string Gearcase = "outboard-gearcase";
    public const string Diesel = "harbour-diesel-i4";

    /// <summary>Calls <c>contam COMMAND FAMILY …</c> on a shipped family.</summary>
    public static Called With(string command, string family, params string[] rest)
    {
        using var answers = new StringWriter { NewLine = "\n" };
        using var errors = new StringWriter { NewLine = "\n" };
        int exit = ContamCommand.Run([command, RepositoryFiles.At($"systems/families/{family}.yaml"), .. rest], new Shell(answers, errors, TextLook.Plain));
        return new Called(exit, answers.ToString(), errors.ToString());
    }

    /// <summary>The same with <c>--format json</c>, held against the command's schema first.</summary>
    public static (int Exit, JsonElement Answer) Json(string command, string family, params string[] rest)
    {
        Called called = With(command, family, [.. rest, "--format", "json"]);
        Assert.Equal("", called.Error);
        JsonElement answer = JsonDocument.Parse(called.Out).RootElement;
        EvaluationResults results = SchemaOf(command).Evaluate(answer, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(results.IsValid, string.Join("\n", (results.Details ?? []).Where(one => one.Errors is not null).SelectMany(one => one.Errors!.Select(error => $"{one.InstanceLocation}: {error.Value}"))));
        return (called.Exit, answer);
    }

    /// <summary>What a call that is wrong use says.</summary>
    public static string Refusal(string command, string family, params string[] rest)
    {
        Called called = With(command, family, rest);
        Assert.Equal((2, ""), (called.Exit, called.Out));
        return called.Error;
    }

    /// <summary>The figure of this name.</summary>
    public static double Figure(JsonElement answer, string name) =>
        answer.GetProperty("figures").EnumerateArray().Single(figure => figure.GetProperty("name").GetString() == name).GetProperty("value").GetDouble();

    /// <summary>The names of the figures, in order.</summary>
    public static string[] Names(JsonElement answer) => [.. answer.GetProperty("figures").EnumerateArray().Select(figure => figure.GetProperty("name").GetString()!)];

    private static readonly Dictionary<string, JsonSchema> Schemas = new(StringComparer.Ordinal);

    // A schema may be read once only, for the library registers it by its name.
    private static JsonSchema SchemaOf(string command)
    {
        lock (Schemas)
        {
            if (!Schemas.TryGetValue(command, out JsonSchema? schema))
                Schemas[command] = schema = JsonSchema.FromText(File.ReadAllText(RepositoryFiles.At($"systems/schema/{command}.schema.json")));
            return schema;
        }
    }
}
