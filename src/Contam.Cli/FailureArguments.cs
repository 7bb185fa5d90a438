using System.Collections.Immutable;
using System.CommandLine;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Cli;

/// <summary>What a question about a failure is asked with, read and checked.</summary>
internal sealed record FailureQuestion(Family Family, ShopStandard Standard, ImmutableArray<PartFailure> Failures, ImmutableArray<Debris> Debris)
{
    public ImmutableArray<Finding> Findings { get; init; } = [];
}

/// <summary>The arguments that name a family and a failure; the same for every command that asks about one.</summary>
internal sealed class FailureArguments
{
    public Argument<string> Family { get; } = FamilyArgument();

    public Option<string[]> Failed { get; } = FailedOption("a part that has failed, and what it shed (a size: the largest piece seen from it); parts alone, as a list, shed what --debris says");

    public Option<string[]> Debris { get; } = ListOption("--debris", "metal[,rubber]", "what the parts shed of which --failed does not say (default: all that the family says they shed)");

    public Option<string[]> Found { get; } = ListOption("--found", "PART=DEBRIS[:SIZE][,LOOKS]", "debris was found at this part; how it looks: flakes, slivers, grains or fuzz, magnetic or not-magnetic", splits: false);

    public Option<string[]> Clean { get; } = ListOption("--clean", "PART[=DEBRIS]", "this part was looked at and found clean", splits: false);

    public Option<string?> FindingsFile { get; } = new("--findings") { Description = "a YAML list of findings: {part, debris, found, size, form, magnetic, cannot-tell, by, when}", HelpName = "FILE" };

    public Option<string?> Standard { get; } = StandardOption();

    public void AddTo(Command command)
    {
        command.Arguments.Add(Family);
        foreach (Option option in new Option[] { Failed, Debris, Found, Clean, FindingsFile, Standard })
            command.Options.Add(option);
    }

    /// <summary>For a command that asks what was seen, not what has failed.</summary>
    public void AddFindingsTo(Command command)
    {
        command.Arguments.Add(Family);
        foreach (Option option in new Option[] { Debris, Found, Clean, FindingsFile, Standard })
            command.Options.Add(option);
    }

    /// <summary>For a command that asks about a failure alone, not about what was seen.</summary>
    public void AddFailureTo(Command command)
    {
        command.Arguments.Add(Family);
        foreach (Option option in new Option[] { Failed, Debris, Standard })
            command.Options.Add(option);
    }

    /// <summary>A share, written as <c>90%</c>, above 0 and at most 1.</summary>
    public static double ShareOf(string name, string text) => Typed.Share(name, text).OfOne is > 0 and <= 1 and var share
        ? share
        : throw new WrongUseException($"{name}: more than 0 % and at most 100 % was expected, got {Problems.Wording.Quoted(text)}.");

    public static Argument<string> FamilyArgument() => new("FAMILY") { Description = "a family file" };

    public static Option<string?> StandardOption() => new("--standard") { Description = "a shop's own standard, laid over the house standard", HelpName = "FILE" };

    internal static Option<string[]> FailedOption(string description) => ListOption("--failed", "PART[,PART] or PART=metal[:SIZE][,rubber] or PART=nothing", description, splits: false);

    internal static Option<string[]> ListOption(string name, string form, string description, bool splits = true) => new(name)
    {
        Description = description,
        HelpName = form,
        Arity = ArgumentArity.OneOrMore,
        AllowMultipleArgumentsPerToken = false,
        DefaultValueFactory = _ => [],
        CustomParser = result => [.. result.Tokens.SelectMany(token => splits ? token.Value.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) : [token.Value])],
    };
}
