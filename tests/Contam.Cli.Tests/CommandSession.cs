using Contam.Reports.Text;
using Contam.Support;

namespace Contam.Cli.Tests;

/// <summary>A call of the command, in this process, in the root of the repository; nothing of the machine is seen.</summary>
internal sealed record CommandSession(int Exit, string Out, string Error)
{
    /// <summary>Calls the command with these words; words are parted by spaces.</summary>
    public static CommandSession Of(string words, int width = 80) => Of(words.Split(' ', StringSplitOptions.RemoveEmptyEntries), width);

    /// <summary>Calls the command in a folder of its own that goes again, with these lines typed one after another. <c>FILE</c> stands for the findings file in that folder.</summary>
    public static (CommandSession Session, string Kept) Typing(string words, string findings, params string[] lines)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");
        try
        {
            string file = Path.Combine(folder.FullName, "found.yaml");
            if (findings.Length > 0)
                File.WriteAllText(file, findings);
            CommandSession session = Of([.. words.Split(' ').Select(word => word == "FILE" ? file : word)], 80, string.Concat(lines.Select(line => line + "\n")));
            // Nothing but the file itself is left behind.
            Assert.All(folder.GetFiles(), left => Assert.Equal("found.yaml", left.Name));
            return (session with { Out = session.Out.Replace(file, "FILE", StringComparison.Ordinal), Error = session.Error.Replace(file, "FILE", StringComparison.Ordinal) }, File.Exists(file) ? File.ReadAllText(file) : "");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    public static CommandSession Of(string[] words, int width = 80, string typed = "")
    {
        // The runner sets the folder of the tests when it begins, so this is said anew at each call; it is always the same.
        Environment.CurrentDirectory = RepositoryFiles.At("");
        using var answers = new StringWriter { NewLine = "\n" };
        using var rest = new StringWriter { NewLine = "\n" };
        int exit = ContamCommand.Run(words, new Shell(answers, rest, TextLook.Plain with { Width = width }) { In = new StringReader(typed) });
        return new CommandSession(exit, answers.ToString(), rest.ToString());
    }

    /// <summary>Calls the command about a family of this text, in a folder of its own that goes again; the file is called <c>engine.yaml</c> in what is answered.</summary>
    public static CommandSession About(string family, Func<string, string> words, int width = 80) => About(System.Text.Encoding.UTF8.GetBytes(family), words, width);

    public static CommandSession About(byte[] family, Func<string, string> words, int width = 80)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");
        try
        {
            string file = Path.Combine(folder.FullName, "engine.yaml");
            File.WriteAllBytes(file, family);
            CommandSession session = Of(words(file), width);
            return session with { Out = session.Out.Replace(file, "engine.yaml", StringComparison.Ordinal), Error = session.Error.Replace(file, "engine.yaml", StringComparison.Ordinal) };
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
