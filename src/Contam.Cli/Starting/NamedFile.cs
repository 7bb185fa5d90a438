using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;
using Contam.Problems;
using Contam.Treatment.Reading;

namespace Contam.Cli.Starting;

/// <summary>What a person named where a file is asked for: a file, or something that comes with the command, by its name alone. A file goes first.</summary>
internal static class NamedFile
{
    /// <summary>The shipped family of this name, where no file bears it; else <c>null</c>.</summary>
    public static string? ShippedFamily(string named) => Shipped(named, ShippedFiles.Families);

    /// <summary>The shipped module of this name, where no file bears it; else <c>null</c>.</summary>
    public static string? ShippedModule(string named) => Shipped(named, ShippedFiles.Modules);

    /// <summary>The shipped standard of this name, where no file bears it; else <c>null</c>.</summary>
    public static string? ShippedStandard(string named) => Shipped(named, ShippedFiles.Standards);

    /// <summary>The family in this file, or the shipped one of this name.</summary>
    public static Outcome<Family> Family(string named, Catalogue catalogue, ReadLimits limits)
    {
        if (ShippedFamily(named) is { } shipped)
            return FamilyReader.ReadShipped(shipped, ShippedFiles.Family(shipped), catalogue, ShippedModules.All, limits);
        Outcome<Family> outcome = FamilyReader.ReadFile(named, catalogue, limits, ShippedModules.All);
        return outcome with { Problems = [.. outcome.Problems.Select(problem => WithNear(problem, named, ShippedFiles.Families))] };
    }

    /// <summary>The texts of the built-in standard and, behind them, of the one that is named; they are kept whole with a job.</summary>
    public static ImmutableArray<SourceCopy> StandardSources(string? named) => named switch
    {
        null => BuiltInStandards.Sources,
        StandardPair.House when !Path.Exists(named) => BuiltInStandards.Sources,
        _ when ShippedStandard(named) is { } shipped => [.. BuiltInStandards.Sources, new SourceCopy(shipped + ".yaml", ShippedFiles.Standard(shipped))],
        _ => [.. BuiltInStandards.Sources, new SourceCopy(Path.GetFileName(named), InputFile.ReadText(named))],
    };

    /// <summary>A file that is not there may have been meant for something that is shipped.</summary>
    public static Problem WithNear(Problem problem, string named, string[] shipped) =>
        problem is { Code: ProblemCodes.FileMissing, Place: null } && NearName.Of(NameOf(named), shipped) is { } near
            ? problem with { Mend = $"check the name and the folder; one that comes with contam is called `{near}`" }
            : problem;

    private static string? Shipped(string named, string[] names) => names.Contains(named) && !Path.Exists(named) ? named : null;

    private static string NameOf(string named) => Path.GetFileName(named) is var name && name.EndsWith(".yaml", StringComparison.Ordinal) ? name[..^".yaml".Length] : name;
}
