using System.CommandLine;

namespace Contam.Cli;

/// <summary>The arguments of <c>contam flush</c>.</summary>
internal sealed class FlushArguments
{
    public Argument<string> Family { get; } = FailureArguments.FamilyArgument();

    public Option<string> Circuit { get; } = new("--circuit") { Description = "the circuit that is flushed", HelpName = "CIRCUIT", Required = true };

    public Option<string?> Temperature { get; } = Text("--temperature", "TEMPERATURE", "how warm the fluid is at its coldest place (default: 40 °C, or 60 °C for a fluid thicker than 20 cSt)");

    public Option<string?> Re { get; } = Text("--re", "NUMBER", "the Reynolds number wanted in every bore (default 4000)");

    public Option<string?> Flow { get; } = Text("--flow", "FLOW", "what the pump gives (default: the least that is enough in every bore)");

    public Option<string[]> Parts { get; } = new("--parts")
    {
        Description = "only these parts' bores (default: all of the circuit)",
        HelpName = "PART[,PART]",
        DefaultValueFactory = _ => [],
        CustomParser = result => [.. result.Tokens.SelectMany(token => token.Value.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))],
    };

    public Option<string?> Viscosity { get; } = Text("--viscosity", "FIGURE", "another fluid than the circuit's: 15cSt when flushing, or two points 40C:32cSt,100C:5.4cSt");

    public Option<string?> Volume { get; } = Text("--volume", "VOLUME", "what goes round (default: what the circuit's parts say they hold)");

    public Option<string?> Dilution { get; } = Text("--dilution", "SHARE", "how much of the old fluid may be left, for instance 1%");

    public Option<string?> Beta { get; } = Text("--beta", "BETA", "the filter's beta: 200 (at 4 µm(c)), or by size 4:75,6:200,14:1000");

    public Option<string?> FromCode { get; } = Text("--from-code", "CODE", "the cleanliness now, for instance 22/20/17");

    public Option<string?> ToCode { get; } = Text("--to-code", "CODE", "the cleanliness wanted, for instance 18/16/13");

    public Option<string?> Standard { get; } = FailureArguments.StandardOption();

    public void AddTo(Command command)
    {
        command.Arguments.Add(Family);
        foreach (Option option in new Option[] { Circuit, Temperature, Re, Flow, Parts, Viscosity, Volume, Dilution, Beta, FromCode, ToCode, Standard })
            command.Options.Add(option);
    }

    private static Option<string?> Text(string name, string form, string description) => new(name) { Description = description, HelpName = form };
}
