using System.CommandLine;
using Contam.Jobs.Stores;

namespace Contam.Cli;

/// <summary>Runs a parsed call and turns what happens into an exit status. The library's own handling of errors and exceptions ends with 1, which here means "no".</summary>
internal static class Outcomes
{
    /// <param name="root">The commands.</param>
    /// <param name="args">The words of the call.</param>
    /// <param name="shell">The world outside.</param>
    /// <param name="prepare">What is set by options that every command understands, before it runs.</param>
    public static int Run(RootCommand root, string[] args, Shell shell, Action<ParseResult> prepare)
    {
        ParseResult? call = null;
        try
        {
            call = root.Parse(MistypedWords.WithHelp(root, args));
            if (call.Errors.Count > 0 || MistypedWords.Of(call).Any())
                return Complain(call, shell);
            prepare(call);
            return call.Invoke(new InvocationConfiguration { Output = shell.Out, Error = shell.Error, EnableDefaultExceptionHandler = false });
        }
        catch (WrongUseException wrong)
        {
            shell.Error.Write($"contam: {ShopWords.WithoutPassword(wrong.Message)}\n");
            return ExitCode.WrongUse;
        }
        catch (ShopException shop)
        {
            shell.Error.Write($"contam: {Reports.Text.TextPage.Harmless(ShopWords.WithoutPassword(shop.Message))}\n");
            return ExitCode.WrongUse;
        }
        catch (Exception fault) when (fault is not (OutOfMemoryException or CannotPrintException))
        {
            shell.Error.Write($"contam: this is a fault of contam, not of what you gave it. Please report it with the command and its files: {ShopWords.WithoutPassword(fault.Message)}\n");
            shell.Error.Write(call is not null && CommonOptions.WantsStack(call) ? ShopWords.WithoutPassword(fault.ToString()) + "\n" : "  Run again with --stack to see where in the program it happened.\n");
            return ExitCode.Fault;
        }
    }

    /// <summary>Runs a call and brings what it said out of the process. Where that cannot be, it says what was recorded all the same, so that nobody does it twice.</summary>
    public static int Printed(Shell shell, Func<int> run)
    {
        try
        {
            int exit = run();
            shell.Out.Flush();
            return exit;
        }
        catch (CannotPrintException cannot)
        {
            string why = Reports.Text.TextPage.Harmless(cannot.Message).TrimEnd('.');
            shell.Error.Write(shell.Recorded.Entry > 0
                ? FormattableString.Invariant($"contam: recorded as entry {shell.Recorded.Entry}, but could not be printed: {why}. Do not do it again; contam job show says what is there.\n")
                : $"contam: the answer could not be printed: {why}. Make room, or let it go somewhere else.\n");
            return ExitCode.WrongUse;
        }
    }

    private static int Complain(ParseResult call, Shell shell)
    {
        string[] mistyped = [.. MistypedWords.Of(call)];
        // The parser's own account of a word that is not known says no more than that.
        IEnumerable<string> all = mistyped.Length > 0 ? mistyped : call.Errors.Select(MistypedWords.InOwnWords);
        foreach (string message in all)
            shell.Error.Write($"contam: {ShopWords.WithoutPassword(message)}\n");
        shell.Error.Write($"  {MistypedWords.NamesTo(call.CommandResult.Command)} --help shows how it is used.\n");
        return ExitCode.WrongUse;
    }
}

/// <summary>The call cannot be carried out as it is; the message says what is wrong and what to do.</summary>
internal sealed class WrongUseException(string message) : Exception(message);
