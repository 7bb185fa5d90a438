using System.CommandLine;
using System.CommandLine.Help;
using System.Reflection;

namespace Contam.Cli.Manual;

/// <summary>The manual page of the command, from the same words as its help.</summary>
internal static class ManPage
{
    private const string Short = "how far the debris of a failed engine part has gone, and what must be done";

    private static string Version => typeof(ManPage).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];

    /// <summary>Writes the page: every command and option that the help shows, in the help's order.</summary>
    public static void Write(RootCommand root, TextWriter to)
    {
        var page = new RoffWriter(to);
        page.Title(ContamCommand.Name, Version);
        page.Section("NAME");
        to.Write($"{RoffWriter.Escape(ContamCommand.Name)} \\- {RoffWriter.Escape(Short)}\n");
        page.Section("SYNOPSIS");
        page.Synopsis(ContamCommand.Name, "COMMAND [arguments] [options]");
        page.Section("DESCRIPTION");
        WriteDescription(page, root.Description);
        page.Section("COMMANDS");
        foreach (Command command in root.Subcommands.Where(command => !command.Hidden))
            WriteCommand(page, command, command.Name);
        page.Section("OPTIONS OF EVERY COMMAND");
        foreach (Option option in root.Options.Where(option => !option.Hidden))
            WriteOption(page, option);
        page.Section("EXIT STATUS");
        page.Term("0", "", "Done, and the answer is yes.");
        page.Term("1", "", "Done, and the answer is no: errors found, proof refused, reading rejected, step or release refused.");
        page.Term("2", "", "Wrong use, or a file that cannot be read.");
        page.Term("3", "", "A fault of contam.");
        page.Section("ENVIRONMENT");
        page.Term("CONTAM_SHOP", "", "The file or server that keeps the jobs, where no --shop names one.");
        page.Term("CONTAM_JOB", "", "The job that is meant, where no --job names one.");
        page.Term("CONTAM_BY", "", "Who makes an entry, where no --by says so.");
        page.Term("NO_COLOR", "", "Where it is set and not empty, text is plain; so it is in a pipe and where TERM is dumb.");
        page.Term("PGPASSWORD", "", "The password of a database server that keeps the jobs.");
    }

    private static void WriteCommand(RoffWriter page, Command command, string path)
    {
        page.Part(path);
        WriteDescription(page, command.Description);
        if (command.Subcommands.Count > 0)
        {
            foreach (Command below in command.Subcommands.Where(below => !below.Hidden))
                WriteCommand(page, below, $"{path} {below.Name}");
            return;
        }

        Argument[] arguments = [.. command.Arguments.Where(argument => !argument.Hidden)];
        page.Synopsis($"{ContamCommand.Name} {path}", string.Concat(arguments.Select(argument => UseOf(argument) + " ")) + "[options]");
        foreach (Argument argument in arguments)
            page.Term(argument.HelpName ?? argument.Name, "", argument.Description ?? "");
        foreach (Option option in command.Options.Where(option => !option.Hidden && option is not HelpOption))
            WriteOption(page, option);
    }

    private static string UseOf(Argument argument)
    {
        string name = (argument.HelpName ?? argument.Name) + (argument.Arity.MaximumNumberOfValues > 1 ? "..." : "");
        return argument.Arity.MinimumNumberOfValues == 0 ? $"[{name}]" : name;
    }

    private static void WriteOption(RoffWriter page, Option option)
    {
        string form = option.ValueType == typeof(bool) || option.Arity.MaximumNumberOfValues == 0 ? "" : option.HelpName ?? option.Name.TrimStart('-').ToUpperInvariant();
        string first = option is { HasDefaultValue: true } && option.ValueType == typeof(string) && option.GetDefaultValue() is string { Length: > 0 } value ? $" [default: {value}]" : "";
        page.Term(string.Join(", ", option.Aliases.Where(alias => alias.StartsWith('-')).Append(option.Name)), form, option.Description + (option.Required ? " (required)" : "") + first);
    }

    /// <summary>Paragraphs, and examples where lines are indented.</summary>
    private static void WriteDescription(RoffWriter page, string? text)
    {
        var example = new List<string>();
        var sentences = new List<string>();
        foreach (string line in (text ?? "").Split('\n').Append(""))
        {
            bool isExample = line.StartsWith("  ", StringComparison.Ordinal);
            // A line that begins with a small letter goes on with the sentence before.
            if (sentences.Count > 0 && (isExample || line.Length == 0 || !char.IsAsciiLetterLower(line[0])))
            {
                page.Paragraph(string.Join(' ', sentences));
                sentences.Clear();
            }

            if (example.Count > 0 && !isExample)
            {
                page.Example(example);
                example.Clear();
            }

            if (isExample)
                example.Add(line[2..]);
            else if (line.Length > 0)
                sentences.Add(line);
        }
    }
}
