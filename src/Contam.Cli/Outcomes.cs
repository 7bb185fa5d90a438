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
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            shell.Error.Write($"contam: this is a fault of contam, not of what you gave it. Please report it with the command and its files: {ShopWords.WithoutPassword(fault.Message)}\n");
            shell.Error.Write(CommonOptions.WantsStack(call) ? ShopWords.WithoutPassword(fault.ToString()) + "\n" : "  Run again with --stack to see where in the program it happened.\n");
            return ExitCode.Fault;
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
