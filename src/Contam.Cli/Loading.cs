using System.Collections.Immutable;
using System.CommandLine;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Lints;
using Contam.Problems;
using Contam.Reports.Text;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Cli;

/// <summary>Reads what a call names. What is wrong with it goes to standard error; then the answer is <c>null</c>.</summary>
internal sealed class Loading(Shell shell)
{
    /// <summary>How much is taken in from a file.</summary>
    public ReadLimits Limits { get; set; } = ReadLimits.Default;

    /// <summary>The house standard, or the shop's own laid over it.</summary>
    public ShopStandard? Standard(string? file)
    {
        if (file is null)
            return BuiltInStandards.HouseOverKinds;
        return Take(StandardReader.ReadFile(file, limits: Limits))?.Over(BuiltInStandards.HouseOverKinds);
    }

    public Family? Family(string file, ShopStandard standard) => Take(FamilyReader.ReadFile(file, standard.CatalogueOf(), Limits));

    /// <summary>Everything that a question about a failure names.</summary>
    public FailureQuestion? Read(ParseResult call, FailureArguments arguments)
    {
        if (Standard(call.GetValue(arguments.Standard)) is not { } standard)
            return null;
        if (Family(call.GetValue(arguments.Family)!, standard) is not { } family)
            return null;
        var names = new QuestionNames(family, standard.CatalogueOf());
        ImmutableArray<PartId> failed = [.. call.GetValue(arguments.Failed)!.Select(names.Part)];
        ImmutableArray<Debris> asked = names.Asked(call.GetValue(arguments.Debris)!, failed, call.GetValue(arguments.Found)!);
        ImmutableArray<Finding> findings = [.. call.GetValue(arguments.Found)!.Select(names.Found), .. call.GetValue(arguments.Clean)!.SelectMany(text => names.Clean(text, asked))];
        if (call.GetValue(arguments.FindingsFile) is { } file)
        {
            if (Take(FindingsReader.ReadFile(file, family, standard.CatalogueOf(), asked)) is not { } sheet)
                return null;
            findings = [.. findings, .. sheet.Findings];
            failed = [.. failed, .. sheet.Failed];
        }

        if (failed.IsEmpty && !findings.Any(finding => finding.Found && asked.Contains(finding.Debris)))
            throw new WrongUseException("nothing has failed and nothing was found. Name the failed part with --failed PART, or say where debris was found with --found PART=DEBRIS.");
        return new FailureQuestion(family, standard, [.. failed.Distinct()], asked) { Findings = findings };
    }

    /// <summary>What is wrong with a file, be it a family or a standard, and what is likely forgotten in a family that can be read.</summary>
    public ImmutableArray<Problem> Check(string file, ShopStandard standard)
    {
        if (FileSort.Of(file) == FileSort.Standard)
            return StandardReader.ReadFile(file, limits: Limits).Problems;
        Outcome<Family> outcome = FamilyReader.ReadFile(file, standard.CatalogueOf(), Limits);
        return outcome.Value is { } family ? [.. outcome.Problems, .. Linting.Look(family, standard)] : outcome.Problems;
    }

    private T? Take<T>(Outcome<T> outcome)
        where T : class
    {
        // A warning is said too, but does not stand in the way.
        if (outcome.Problems.Length > 0)
            ProblemText.Write(outcome.Problems, shell.Error, TextLook.Plain);
        return outcome.Value;
    }
}
