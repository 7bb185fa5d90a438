using System.CommandLine;

namespace Contam.Cli.Commands;

/// <summary><c>contam standard</c>: what has to do with a shop's standard.</summary>
internal sealed class StandardCommand(Shell shell, Loading loading) : ICommandSource
{
    private readonly Argument<string> older = new("OLD") { Description = "a standard, or house for the one that is built in" };
    private readonly Argument<string> newer = new("NEW") { Description = "a standard, or house for the one that is built in" };
    private readonly Argument<string[]> families = new("FAMILIES") { Description = "family files and folders (default: the families that come with contam)", Arity = ArgumentArity.ZeroOrMore };
    private readonly Option<int> jobs = AuditCommand.JobsOption();
    private readonly Option<string> format = ComparisonOutput.FormatOption();

    public Command Build()
    {
        var diff = new Command(
            "diff",
            """
            What a change of the standard does to every plan: how many plans change, by how many bench hours (at most, sure, to
            be expected), how much hangs on looks, and for each the parts whose treatment changes with the rules that make it so.

            Examples:
              contam standard diff house our-shop.yaml
              contam standard diff our-shop.yaml our-shop-new.yaml systems/families/harbour-diesel-i4.yaml
            """);
        diff.Arguments.Add(older);
        diff.Arguments.Add(newer);
        diff.Arguments.Add(families);
        diff.Options.Add(jobs);
        diff.Options.Add(format);
        diff.SetAction(Run);
        return new Command(
            "standard",
            """
            A shop's standard, laid over the house standard.

            Example:
              contam standard diff house our-shop.yaml
            """)
        {
            diff,
        };
    }

    private int Run(ParseResult call)
    {
        if (StandardPair.Compare(call.GetValue(older)!, call.GetValue(newer)!, call.GetValue(families)!, call.GetValue(jobs), shell, loading) is not { } comparison)
            return ExitCode.WrongUse;
        ComparisonOutput.Write(comparison, call.GetValue(format), call, shell);
        return ExitCode.Yes;
    }
}
