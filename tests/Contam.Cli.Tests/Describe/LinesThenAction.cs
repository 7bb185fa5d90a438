using Contam.Reports.Text;

namespace Contam.Cli.Tests.Describe;

/// <summary>What is typed, line by line; before one of the lines something else happens.</summary>
internal sealed class LinesThenAction(string[] lines, int line, Action happens) : TextReader
{
    private int at;

    public override string? ReadLine()
    {
        if (at == line)
            happens();
        return at < lines.Length ? lines[at++] : null;
    }

    public static CommandSession Call(string[] words, TextReader typed)
    {
        using var answers = new StringWriter { NewLine = "\n" };
        using var rest = new StringWriter { NewLine = "\n" };
        int exit = ContamCommand.Run(words, new Shell(answers, rest, TextLook.Plain) { In = typed });
        return new CommandSession(exit, answers.ToString(), rest.ToString());
    }
}
