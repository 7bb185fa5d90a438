using System.Text.Json;
using Contam.Support;
using Json.Schema;

namespace Contam.Cli.Tests;

/// <summary>Every JSON answer fits its schema.</summary>
public class Answers_in_json
{
    private const string Diesel = "systems/families/harbour-diesel-i4.yaml";

    public static TheoryData<string, string> Calls => new()
    {
        { "plan", $"plan {Diesel} --failed injection-pump --debris metal --format json" },
        { "plan", $"plan {Diesel} --failed turbo-compressor --technicians 2 --format json" },
        { "plan", $"plan {Diesel} --failed injection-pump --debris metal,water --clean rail --found fuel-tank=water --format json" },
        { "plan", "plan systems/families/outboard-gearcase.yaml --failed pinion --debris metal --format json" },
        { "plan", "plan systems/families/estuary-v6-outboard.yaml --failed compressor --debris metal --format json" },
        { "parts", $"parts {Diesel} --format json" },
        { "check", $"check {Diesel} systems/standards/house.yaml --format json" },
        { "check", "check no-such-file.yaml --format json" },
        { "why", $"why {Diesel} --failed injection-pump --debris metal --part injector-3 --format json" },
        { "suspects", $"suspects {Diesel} --found oil-filter=metal:120um,flakes,not-magnetic --clean drain-plug --format json" },
        { "suspects", $"suspects {Diesel} --found oil-filter=metal --found rail=metal --found fuel-tank=water --debris metal --format json" },
        { "suspects", $"suspects {Diesel} --debris rubber --format json" },
        { "suspects", "suspects systems/families/outboard-gearcase.yaml --debris water --format json" },
        { "why", $"why {Diesel} --failed injection-pump --debris metal --part sump --format json" },
        { "why", $"why {Diesel} --failed injection-pump --debris metal --part injection-pump --format json" },
        { "stop-line", $"stop-line {Diesel} --failed injection-pump --debris metal --format json" },
        { "stop-line", $"stop-line {Diesel} --failed injection-pump --debris metal,water --clean rail=metal --found return-hose=water --format json" },
        { "stop-line", $"stop-line {Diesel} --failed exhaust-hose --debris metal --format json" },
        { "looks", $"looks {Diesel} --failed injection-pump --debris metal --format json" },
        { "looks", $"looks {Diesel} --failed injection-pump --debris metal,water --clean rail=metal --look-at return-hose --format json" },
        { "looks", "looks systems/families/estuary-v6-outboard.yaml --failed compressor --debris metal --format json" },
        { "looks", $"looks {Diesel} --failed injection-pump --debris metal --looks 0 --format json" },
        { "drill", $"drill {Diesel} --failed injection-pump --debris metal --format json" },
        { "drill", $"drill {Diesel} --failed injection-pump --debris metal --answers --seed 18446744073709551615 --format json" },
        { "drill", $"drill {Diesel} --failed exhaust-hose --debris metal,rubber --answers --format json" },
        { "drill", "drill systems/families/outboard-gearcase.yaml --failed pinion --debris metal --answers --format json" },
        { "stop-line", "stop-line systems/families/estuary-v6-outboard.yaml --failed compressor --debris metal --format json" },
    };

    [Theory]
    [MemberData(nameof(Calls))]
    public void Fit_their_schema(string schema, string words) => AssertFits(schema, CommandSession.Of(words).Out);

    [Fact]
    public void A_verified_plan_fits_too()
    {
        string file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        try
        {
            File.WriteAllText(file, CommandSession.Of($"plan {Diesel} --failed injection-pump --debris metal --format json").Out);
            CommandSession session = CommandSession.Of($"verify {file} {Diesel} --format json");
            Assert.Equal(0, session.Exit);
            AssertFits("verify", session.Out);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void A_schema_refuses_what_does_not_fit()
    {
        string plan = CommandSession.Of($"plan {Diesel} --failed injection-pump --debris metal --format json").Out;
        Assert.False(Evaluate("plan", plan.Replace("\"exposed\"", "\"soiled\"", StringComparison.Ordinal)).IsValid);
    }

    internal static void AssertFits(string schema, string json)
    {
        EvaluationResults results = Evaluate(schema, json);
        string[] faults = [.. (results.Details ?? []).Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))];
        Assert.True(results.IsValid, string.Join('\n', faults));
    }

    private static EvaluationResults Evaluate(string schema, string json)
    {
        JsonSchema rules = JsonSchema.FromText(File.ReadAllText(RepositoryFiles.At($"systems/schema/{schema}.schema.json")));
        using JsonDocument document = JsonDocument.Parse(json);
        return rules.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
    }
}
