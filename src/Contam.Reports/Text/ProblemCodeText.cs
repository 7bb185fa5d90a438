using Contam.Problems;

namespace Contam.Reports.Text;

/// <summary>What stands behind the codes of problems, for people.</summary>
public static class ProblemCodeText
{
    /// <summary>The page of one code: what it means, an example, the mend, and for a lint how to say that it is meant so.</summary>
    public static void Write(ProblemCode code, TextWriter writer, TextLook look)
    {
        ArgumentNullException.ThrowIfNull(code);
        var page = new TextPage(writer, look);
        page.Subheading($"{code.Code} ({ProblemCodeMarkdown.Sort(code)})");
        page.Paragraph(code.Meaning, indent: 2);
        page.Heading("Example");
        foreach (string line in code.Example.Split('\n'))
            page.Verbatim(line, indent: 2);
        page.Heading("What to do");
        page.Paragraph(code.Mend, indent: 2);
        if (code.MayBeMeant is { } reason)
        {
            page.Heading("Where it is meant so");
            page.Paragraph(ProblemCodeMarkdown.WhereMeant(code.Code), indent: 2);
            page.Verbatim($"meant: {{{code.Code}: {reason}}}", indent: 4);
        }
    }

    /// <summary>Every code with what it means, the errors first.</summary>
    public static void WriteAll(TextWriter writer, TextLook look)
    {
        var page = new TextPage(writer, look);
        foreach ((string heading, IEnumerable<ProblemCode> codes) in ProblemCodeMarkdown.Sections())
        {
            page.Heading(heading);
            foreach (ProblemCode code in codes)
                page.Row(2, (code.Code, 22), (code.Meaning, 0));
        }
    }
}
