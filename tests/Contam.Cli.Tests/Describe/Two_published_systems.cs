using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Contam.Cli.Tests.Describe;

/// <summary>
/// Two systems as published instructions have them, each described by question and answer alone and from a table alone. The two come to the same joints, and to the
/// work that the instruction asks for.
/// </summary>
public sealed partial class Two_published_systems : IDisposable
{
    // TM 5-3805-292-23 WP 0172: "Disassemble the components and clean system to remove contamination from hydrostatic system."
    // A closed loop of pump and motor; a charge pump makes up from the tank through the filter. "Case drains should be drained and flushed separately" (Navy aviation
    // structural-mechanic course).
    private static readonly string[] HydrostaticAnswers =
    [
        "hydraulic-unit", "drive", "hydraulic-oil", "oil tank", "suction hose", "charge pump", "charge filter", "drive pump", "high pressure hose", "drive hydraulic motor", "low pressure hose", "drive pump",
        "", "", "", "", "pump case drain hose", "oil cooler", "oil tank", "", "", "motor case drain hose", "oil cooler", "", "", "", "", "",
        "", "", "20 good draw a litre from the bottom", "", "", "", "metal", "", "", "metal 10 um", "?", "?", "", "", "",
        "metal common", "", "", "", "", "", "metal", "", "", "", "", "", "", "", "", "", "", "", "", "", "", "",
    ];

    private const string HydrostaticTable = """
        circuit,from,to,fluid
        drive,oil tank,suction hose,hydraulic-oil
        drive,suction hose,charge pump,
        drive,charge pump,charge filter,
        drive,charge filter,drive pump,
        drive,drive pump,high pressure hose,
        drive,high pressure hose,drive hydraulic motor,
        drive,drive hydraulic motor,low pressure hose,
        drive,low pressure hose,drive pump,
        drive,drive pump,pump case drain hose,
        drive,pump case drain hose,oil cooler,
        drive,oil cooler,oil tank,
        drive,drive hydraulic motor,motor case drain hose,
        drive,motor case drain hose,oil cooler,
        """;

    // TM 5-3810-295-34 and TM 5-3810-232-34, transmission after a failure: drain it all, clean every line, replace the filter elements, back-flush the cooler, clean sump
    // and strainer, take clutches and control valve apart.
    private static readonly string[] TransmissionAnswers =
    [
        "gearbox", "gear oil", "gear-oil", "gear sump", "suction strainer", "gear pump!", "gear filter", "control valve", "reverse clutch", "gear sump",
        "", "", "", "", "cooler feed hose", "gear oil cooler", "cooler return hose", "gear sump", "", "", "", "", "",
        "", "", "15 good let the oil run through a white cloth", "metal 150 um", "no", "no", "", "", "", "metal common", "", "", "metal 25 um", "no", "yes", "", "", "", "", "", "", "metal", "", "", "", "", "", "", "", "", "", "", "", "",
    ];

    private const string TransmissionTable = """
        circuit,from,to,fluid
        gear-oil,gear sump,suction strainer,gear-oil
        gear-oil,suction strainer,gear pump,
        gear-oil,gear pump,gear filter,
        gear-oil,gear filter,control valve,
        gear-oil,control valve,reverse clutch,
        gear-oil,reverse clutch,gear sump,
        gear-oil,control valve,cooler feed hose,
        gear-oil,cooler feed hose,gear oil cooler,
        gear-oil,gear oil cooler,cooler return hose,
        gear-oil,cooler return hose,gear sump,
        """;

    private readonly DirectoryInfo here = Directory.CreateTempSubdirectory("contam");

    public void Dispose() => here.Delete(recursive: true);

    [Fact]
    public void A_hydrostatic_drive_is_taken_apart_whole_case_drains_too()
    {
        int questions = Describe(HydrostaticAnswers);
        FromTable(HydrostaticTable);

        Assert.Equal(Joints("described/described.yaml"), Joints("tabled/tabled.yaml"));
        Assert.Equal(11, Reached("described/described.yaml", "drive-pump"));
        Assert.Equal(11, Reached("tabled/tabled.yaml", "drive-pump"));
        Assert.InRange(questions, 1, 7 * 11);
    }

    [Fact]
    public void A_transmission_is_cleaned_in_every_line_with_its_cooler()
    {
        int questions = Describe(TransmissionAnswers);
        FromTable(TransmissionTable);

        Assert.Equal(Joints("described/described.yaml"), Joints("tabled/tabled.yaml"));
        Assert.Equal(9, Reached("described/described.yaml", "reverse-clutch"));
        Assert.Equal(9, Reached("tabled/tabled.yaml", "reverse-clutch"));
        Assert.InRange(questions, 1, 7 * 9);
    }

    private int Describe(string[] answers)
    {
        CommandSession session = CommandSession.Of(["describe", At("described")], 80, string.Concat(answers.Select(answer => answer + "\n")));
        Assert.Equal((0, ""), (session.Exit, session.Error));
        Assert.DoesNotContain("Stopped.", session.Out, StringComparison.Ordinal);
        int questions = int.Parse(Questions().Match(session.Out).Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.Equal(answers.Length, questions);
        return questions;
    }

    private void FromTable(string table)
    {
        File.WriteAllText(At("joints.csv"), table);
        CommandSession session = CommandSession.Of(["start", At("tabled"), "--from", At("joints.csv")]);
        Assert.Equal((0, ""), (session.Exit, session.Error));
    }

    private string[] Joints(string family) => [.. CommandSession.Of(["parts", At(family), "--format", "csv", "--joints"]).Out.Split("\r\n").Order(StringComparer.Ordinal)];

    private int Reached(string family, string failed)
    {
        using JsonDocument plan = JsonDocument.Parse(CommandSession.Of(["plan", At(family), "--failed", failed, "--debris", "metal", "--format", "json"]).Out);
        return plan.RootElement.GetProperty("parts").GetArrayLength();
    }

    private string At(string path) => Path.Combine(here.FullName, path);

    [GeneratedRegex(@"\n(\d+) questions\. ")]
    private static partial Regex Questions();
}
