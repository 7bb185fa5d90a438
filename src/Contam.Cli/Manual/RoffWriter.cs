using System.Globalization;
using System.Text;
using Contam.Reports.Text;

namespace Contam.Cli.Manual;

/// <summary>Writes a manual page in roff with the macros of <c>man</c>. Text is always escaped: no word of it is taken for a request.</summary>
internal sealed class RoffWriter(TextWriter to)
{
    public void Title(string name, string version) => to.Write($".TH {Quoted(name.ToUpperInvariant())} 1 \"\" {Quoted($"{name} {version}")} \"User Commands\"\n");

    public void Section(string name) => to.Write($".SH {Quoted(name)}\n");

    public void Part(string name) => to.Write($".SS {Quoted(name)}\n");

    public void Paragraph(string text) => to.Write($".PP\n{Escape(text)}\n");

    /// <summary>A term and what it means.</summary>
    public void Term(string name, string form, string meaning) => to.Write($".TP\n{Bold(name)}{(form.Length > 0 ? " " + Italic(form) : "")}\n{Escape(meaning)}\n");

    /// <summary>A line that begins with words to be typed as they are.</summary>
    public void Synopsis(string typed, string rest) => to.Write($".PP\n{Bold(typed)} {Italic(rest)}\n");

    /// <summary>Lines that stand as they are.</summary>
    public void Example(IEnumerable<string> lines)
    {
        to.Write(".PP\n.RS 4\n.nf\n");
        foreach (string line in lines)
            to.Write(Escape(line) + "\n");
        to.Write(".fi\n.RE\n");
    }

    private static string Bold(string text) => $"\\fB{Escape(text)}\\fR";

    private static string Italic(string text) => $"\\fI{Escape(text)}\\fR";

    private static string Quoted(string text) => $"\"{Escape(text)}\"";

    /// <summary>
    /// Text as roff shows it unchanged: in ASCII, backslashes and the characters that roff draws otherwise by name, a hyphen as the one that is typed, and with nothing at its
    /// beginning that makes a request of it.
    /// </summary>
    public static string Escape(string text)
    {
        var escaped = new StringBuilder();
        string harmless = TextPage.Harmless(text);
        if (harmless.Length == 0 || harmless[0] is '.' or '\'' or ' ')
            escaped.Append("\\&");
        foreach (Rune one in harmless.EnumerateRunes())
        {
            escaped.Append(one.Value switch
            {
                '\\' => "\\(rs",
                '-' => "\\-",
                '"' => "\\(dq",
                '\'' => "\\(aq",
                '`' => "\\(ga",
                '^' => "\\(ha",
                '~' => "\\(ti",
                >= ' ' and < 127 => one.ToString(),
                _ => $"\\[u{one.Value.ToString("X4", CultureInfo.InvariantCulture)}]",
            });
        }

        return escaped.ToString();
    }
}
