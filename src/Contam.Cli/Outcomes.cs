using System.CommandLine;
using System.CommandLine.Parsing;
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
        ParseResult call = root.Parse(args);
        if (call.Errors.Count > 0)
            return Complain(call, shell);
        try
        {
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
            shell.Error.Write(CommonOptions.WantsStack(call) ? ShopWords.WithoutPassword(fault.ToString()) + "\n" : "  Run again with --stack to see where in the program it happened.\n");
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
        foreach (ParseError error in call.Errors)
            shell.Error.Write($"contam: {ShopWords.WithoutPassword(error.Message)}\n");
        string command = string.Join(' ', NamesTo(call.CommandResult));
        shell.Error.Write($"  {command} --help shows how it is used.\n");
        return ExitCode.WrongUse;
    }

    private static List<string> NamesTo(CommandResult command)
    {
        var names = new List<string>();
        for (SymbolResult? at = command; at is not null; at = at.Parent)
        {
            if (at is CommandResult one)
                names.Add(one.Command is RootCommand ? ContamCommand.Name : one.Command.Name);
        }

        names.Reverse();
        return names;
    }
}

/// <summary>The call cannot be carried out as it is; the message says what is wrong and what to do.</summary>
internal sealed class WrongUseException(string message) : Exception(message);
