using System.Globalization;
using Contam.Reports.Text;

namespace Contam.Reports.Markup;

/// <summary>
/// Writes HTML and SVG. What is given to it as text or as the value of an attribute comes out as that text and as nothing else: <c>&lt;</c>,
/// <c>&gt;</c>, <c>&amp;</c> and both quotes are character references, and what a terminal would obey is a question mark. There is no way to write
/// text that is not escaped; names of elements and attributes, styles and scripts are the program's own, and are refused where they could end
/// their element.
/// </summary>
/// <param name="writer">Where it goes.</param>
public sealed class MarkupWriter(TextWriter writer)
{
    private readonly Stack<string> open = new();

    /// <summary>The first line of an HTML document.</summary>
    public MarkupWriter DocumentType()
    {
        writer.Write("<!DOCTYPE html>\n");
        return this;
    }

    /// <summary>Opens an element.</summary>
    /// <param name="element">Its name.</param>
    /// <param name="attributes">Names and values; an attribute whose value is null is left out.</param>
    /// <exception cref="ArgumentException">A name has other characters than letters, digits, hyphens and colons.</exception>
    public MarkupWriter Open(string element, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Begin(element, attributes);
        writer.Write('>');
        open.Push(element);
        return this;
    }

    /// <summary>Closes the element opened last.</summary>
    /// <exception cref="InvalidOperationException">None is open.</exception>
    public MarkupWriter Close()
    {
        writer.Write($"</{open.Pop()}>");
        return this;
    }

    /// <summary>An element with nothing in it, such as <c>meta</c> or <c>path</c>.</summary>
    /// <inheritdoc cref="Open"/>
    public MarkupWriter Empty(string element, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Begin(element, attributes);
        writer.Write("/>");
        return this;
    }

    /// <summary>An element with only a text in it.</summary>
    /// <inheritdoc cref="Open"/>
    /// <param name="element">Its name.</param>
    /// <param name="text">What a person reads in it.</param>
    /// <param name="attributes">Names and values; an attribute whose value is null is left out.</param>
    public MarkupWriter Leaf(string element, string text, params ReadOnlySpan<(string Name, string? Value)> attributes) =>
        Open(element, attributes).Text(text).Close();

    /// <summary>A text that a person reads.</summary>
    public MarkupWriter Text(string text)
    {
        foreach (char one in TextPage.Harmless(text))
            Escape(one);
        return this;
    }

    /// <summary>A new line in the file, which a reader does not see.</summary>
    public MarkupWriter Line()
    {
        writer.Write('\n');
        return this;
    }

    /// <summary>A style sheet of the program's own.</summary>
    /// <exception cref="ArgumentException">It holds <c>&lt;</c>.</exception>
    public MarkupWriter Style(string sheet) => Own("style", sheet, "<");

    /// <summary>A script of the program's own.</summary>
    /// <exception cref="ArgumentException">It holds <c>&lt;/</c> or <c>&lt;!</c>.</exception>
    public MarkupWriter Script(string source) => Own("script", source, "</", "<!");

    /// <summary>A number of pixels or points with at most two digits after the point, the same in every culture.</summary>
    public static string Number(double value) => (Math.Round(value, 2) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);

    private MarkupWriter Own(string element, string source, params ReadOnlySpan<string> ends)
    {
        foreach (string end in ends)
        {
            if (source.Contains(end, StringComparison.Ordinal))
                throw new ArgumentException($"a {element} may not hold {end}", nameof(source));
        }

        writer.Write($"<{element}>{source}</{element}>");
        return this;
    }

    private void Begin(string element, ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        Name(element);
        writer.Write('<');
        writer.Write(element);
        foreach ((string name, string? value) in attributes)
        {
            if (value is null)
                continue;
            Name(name);
            writer.Write($" {name}=\"");
            Text(value);
            writer.Write('"');
        }
    }

    private static void Name(string name)
    {
        bool isName = name.Length > 0 && char.IsAsciiLetter(name[0]) && name.All(one => char.IsAsciiLetterOrDigit(one) || one is '-' or ':');
        if (!isName)
            throw new ArgumentException($"'{name}' is not a name of an element or attribute", nameof(name));
    }

    private void Escape(char one)
    {
        switch (one)
        {
            case '<': writer.Write("&lt;"); break;
            case '>': writer.Write("&gt;"); break;
            case '&': writer.Write("&amp;"); break;
            case '"': writer.Write("&quot;"); break;
            case '\'': writer.Write("&#39;"); break;
            default: writer.Write(one); break;
        }
    }
}
