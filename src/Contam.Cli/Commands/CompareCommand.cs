using System.Collections.Immutable;
using System.CommandLine;
using Contam.Audits;
using Contam.Families;
using Contam.Reports.Text;
using Contam.Treatment.Reading;

namespace Contam.Cli.Commands;

/// <summary><c>contam compare</c>: the same failures under two families or two standards.</summary>
internal sealed class CompareCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly Argument<string> first = new("A") { Description = "a family, or a standard (house for the one that is built in)" };
    private readonly Argument<string> second = new("B") { Description = "another, or another version of the same" };
    private readonly Option<string[]> failed = FailureArguments.FailedOption("compare this failure alone (default: every failure that both have)");
    private readonly Option<string[]> debris = FailureArguments.ListOption("--debris", "metal[,rubber]", "what the parts shed of which --failed does not say (default: all that the first family says they shed)");
    private readonly Option<string?> standard = FailureArguments.StandardOption();
    private readonly Option<int> jobs = AuditCommand.JobsOption();
    private readonly Option<string> format = ComparisonOutput.FormatOption();

    public Command Build()
    {
        var command = new Command(
            "compare",
            """
            Two families, two standards, or two versions of one, side by side: for every failure that both have, what is the
            same, what differs, and which rule or joint makes the difference. Parts are the same where their ids are.

            Examples:
              contam compare systems/families/harbour-diesel-i4.yaml systems/families/genset-diesel-i6.yaml --failed injection-pump --debris metal
              contam compare house our-shop.yaml
            """);
        command.Arguments.Add(first);
        command.Arguments.Add(second);
        foreach (Option option in new Option[] { failed, debris, standard, jobs, format })
            command.Options.Add(option);
        command.SetAction(Run);
        return command;
    }

    private int Run(ParseResult call)
    {
        string one = call.GetValue(first)!, other = call.GetValue(second)!;
        bool isStandard = IsStandard(one);
        if (isStandard != IsStandard(other))
            throw new WrongUseException($"{TextPage.Harmless(isStandard ? one : other)} is a standard and {TextPage.Harmless(isStandard ? other : one)} is none. Name two families or two standards.");
        ComparisonAnswer? comparison = isStandard ? Standards(one, other, call) : Families(one, other, call);
        if (comparison is null)
            return ExitCode.WrongUse;
        ComparisonOutput.Write(comparison, call.GetValue(format), call, shell);
        return ExitCode.Yes;
    }

    private static bool IsStandard(string named) => named == StandardPair.House || Starting.NamedFile.ShippedStandard(named) is not null || FileSort.Of(named) == FileSort.Standard;

    private ComparisonAnswer? Standards(string one, string other, ParseResult call)
    {
        if (call.GetValue(standard) is not null || call.GetValue(failed)!.Length > 0 || call.GetValue(debris)!.Length > 0)
            throw new WrongUseException("two standards are compared on every failure of the shipped families; --failed, --debris and --standard are for two families. contam standard diff takes families of your own.");
        return StandardPair.Compare(one, other, [], call.GetValue(jobs), shell, loading);
    }

    private ComparisonAnswer? Families(string one, string other, ParseResult call)
    {
        if (loading.Standard(call.GetValue(standard)) is not { } rules || loading.Family(one, rules) is not { } older || loading.Family(other, rules) is not { } newer)
            return null;
        var sides = (First: new ComparedSide(older, rules), Second: new ComparedSide(newer, rules));
        // Two versions of one bear one id; then their files tell them apart.
        (string firstName, string secondName) = older.Id == newer.Id ? (older.File, newer.File) : (older.Id, newer.Id);
        Catalogue catalogue = rules.CatalogueOf();
        string[] named = call.GetValue(debris)!;
        if (call.GetValue(failed) is { Length: > 0 } asked)
        {
            var names = new QuestionNames(older, catalogue);
            var typed = TypedFailures.Read(asked, names);
            foreach (PartId part in typed.Parts)
                _ = new QuestionNames(newer, catalogue).Part(part.Value);
            (ImmutableArray<PartFailure> failures, ImmutableArray<Debris> shed) = typed.Asked(named, [], [], names);
            TypedFailures.MustShed(shed, "nothing spreads in either, and there is nothing to compare");
            var question = new ComparedQuestion(failures, shed);
            return new ComparisonAnswer(firstName, secondName, [Comparing.One(sides.First, sides.Second, question)]);
        }

        ComparisonAnswer all = Comparing.All([sides], firstName, secondName, call.GetValue(jobs), new Progress(shell, "failures").Tell);
        if (named.Length == 0)
            return all;
        var wanted = named.Select(name => new QuestionNames(older, catalogue).Debris(name)).Select(sort => sort.Name).ToHashSet(StringComparer.Ordinal);
        return all with
        {
            Failures = [.. all.Failures.Where(failure => failure.Name.Debris.All(wanted.Contains))],
            OnlyFirst = [.. all.OnlyFirst.Where(name => name.Debris.All(wanted.Contains))],
            OnlySecond = [.. all.OnlySecond.Where(name => name.Debris.All(wanted.Contains))],
        };
    }
}
