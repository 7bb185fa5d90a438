using System.CommandLine;
using Contam.Families;
using Contam.Measurement.Wording;

namespace Contam.Cli;

/// <summary>The arguments of <c>contam gauge</c>, and which of them bear on which measure.</summary>
internal sealed class GaugeArguments
{
    public Argument<string> Family { get; } = FailureArguments.FamilyArgument();

    public Argument<string?> Limit { get; } = new("LIMIT") { Description = "a limit of the family", Arity = ArgumentArity.ZeroOrOne };

    public Argument<string[]> Readings { get; } = new("READINGS") { Description = "the readings, each with its unit, all in one unit", Arity = ArgumentArity.ZeroOrMore };

    public Option<string?> Standard { get; } = FailureArguments.StandardOption();

    public Option<string?> Uncertainty { get; } = new("--uncertainty") { Description = "how far one reading of the meter may be off, for instance 0.01mm", HelpName = "FIGURE" };

    public Option<string?> Minutes { get; } = new("--minutes") { Description = "hold: how long it was watched", HelpName = "MINUTES" };

    public Option<string?> TemperatureFrom { get; } = new("--temperature-from") { Description = "hold: how warm the air in it was at the start", HelpName = "TEMPERATURE" };

    public Option<string?> TemperatureTo { get; } = new("--temperature-to") { Description = "hold: how warm it was at the end", HelpName = "TEMPERATURE" };

    public Option<string?> Volume { get; } = new("--volume") { Description = "hold: the volume under test, for the leak (default: what the family says)", HelpName = "VOLUME" };

    public Option<bool> WaterGotIn { get; } = new("--water-got-in") { Description = "hold: water was found in what is tested" };

    public Option<string?> CountedIn { get; } = new("--counted-in") { Description = "cleanliness: the sample in which the particles were counted", HelpName = "VOLUME" };

    public Option<string?> Oil { get; } = new("--oil") { Description = "water: what the oil is for: engine, hydraulic, turbine, transformer", HelpName = "engine|hydraulic|turbine|transformer" };

    public Option<string?> Saturation { get; } = new("--saturation") { Description = "water: what the fluid dissolves by its maker, for instance 400ppm", HelpName = "SHARE" };

    public void AddTo(Command command)
    {
        command.Arguments.Add(Family);
        AddWithoutFamilyTo(command);
        command.Options.Add(Standard);
    }

    /// <summary>For a command that has its family from elsewhere.</summary>
    public void AddWithoutFamilyTo(Command command)
    {
        Oil.AcceptOnlyFromAmong("engine", "hydraulic", "turbine", "transformer");
        command.Arguments.Add(Limit);
        command.Arguments.Add(Readings);
        foreach (Option option in new Option[] { Uncertainty, Minutes, TemperatureFrom, TemperatureTo, Volume, WaterGotIn, CountedIn, Oil, Saturation })
            command.Options.Add(option);
    }

    /// <summary>An option that says nothing about what is measured is a mistake, and not to be passed over.</summary>
    public void RefuseStrangers(ParseResult call, Limit limit)
    {
        bool isHold = limit.Measures is Measure.PressureDrop or Measure.VacuumDrop;
        (Option Option, bool Fits, string For)[] all =
        [
            (Minutes, isHold, "a hold of pressure or vacuum"),
            (TemperatureFrom, isHold, "a hold of pressure or vacuum"),
            (TemperatureTo, isHold, "a hold of pressure or vacuum"),
            (Volume, isHold, "a hold of pressure or vacuum"),
            (WaterGotIn, isHold, "a hold of pressure or vacuum"),
            (CountedIn, limit.Measures == Measure.Cleanliness, "cleanliness"),
            (Oil, limit.Measures == Measure.WaterContent, "water content"),
            (Saturation, limit.Measures == Measure.WaterContent, "water content"),
            (Uncertainty, limit.Measures != Measure.Cleanliness, "readings of a meter; for particles say --counted-in"),
        ];
        foreach ((Option option, bool fits, string meantFor) in all)
        {
            if (!fits && call.GetResult(option) is { Implicit: false })
                throw new WrongUseException($"{option.Name} is for {meantFor}, and {limit.Id} measures {MeasureText.Of(limit.Measures)}. Leave it out.");
        }
    }
}
