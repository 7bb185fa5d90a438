using System.Diagnostics.CodeAnalysis;
using System.Text;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>Where an id may hold <c>-#</c>, which stands for the number of a repeated part.</summary>
internal enum RepeatMark
{
    /// <summary>Nowhere.</summary>
    Nowhere,

    /// <summary>At its end.</summary>
    AtEnd,

    /// <summary>Anywhere but at its beginning.</summary>
    Anywhere,
}

/// <summary>An id: words of lower-case letters and digits, single hyphens between them, beginning with a letter.</summary>
/// <param name="called">What it is called in a message, for instance <c>the id of a part</c>.</param>
/// <param name="example">One that could stand here.</param>
/// <param name="mark">Where it may hold <c>-#</c>.</param>
internal sealed class IdShape(string called, string example, RepeatMark mark = RepeatMark.Nowhere) : Shape<string>
{
    /// <summary>Longer ids are refused.</summary>
    public const int Longest = 100;

    /// <summary>The regular expression of such ids, for the schema.</summary>
    public string Pattern { get; } = mark switch
    {
        RepeatMark.AtEnd => "^[a-z][a-z0-9]*(-[a-z0-9]+)*(-#)?$",
        RepeatMark.Anywhere => "^[a-z][a-z0-9]*(-([a-z0-9]+|#))*$",
        _ => "^[a-z][a-z0-9]*(-[a-z0-9]+)*$",
    };

    /// <inheritdoc/>
    public override string Due => $"{called} such as `{example}`";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, [MaybeNullWhen(false)] out string value)
    {
        value = null;
        if (TextOf(node, context) is not TextNode text)
            return false;
        if (!IsId(text.Value))
        {
            context.Problems.Add(PartsIn(text.Value, context) is { } parts ? ShapeProblems.CommaMissing(context.PlaceOf(text), text.Value, parts) : ShapeProblems.BadId(context.PlaceOf(text), text.Value, called, mark != RepeatMark.Nowhere, Mended(text.Value)));
            return false;
        }

        value = text.Value;
        return true;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema)
    {
        schema.Type("string");
        schema.Text("pattern", Pattern);
        schema.Number("maxLength", Longest);
    }

    /// <summary>The words of a text where each is the id of a part of this file, so that commas are missing between them; else <c>null</c>.</summary>
    private static string[]? PartsIn(string text, SheetContext context)
    {
        string[] words = text.Length > 10 * Longest ? [] : text.Split([' ', ';', '>', '/', '|'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return words.Length > 1 && words.All(word => context.Sheet.Describes(FamilyKeys.Parts.Name, word)) ? words : null;
    }

    /// <summary>Whether a text is such an id.</summary>
    public bool IsId(string id)
    {
        if (id.Length is 0 or > Longest || !char.IsAsciiLetterLower(id[0]))
            return false;
        for (int i = 1; i < id.Length; i++)
        {
            bool endsWord = i + 1 == id.Length || id[i + 1] == '-';
            bool fits = id[i] switch
            {
                '-' => id[i - 1] != '-' && i + 1 < id.Length,
                '#' => id[i - 1] == '-' && endsWord && (mark == RepeatMark.Anywhere || (mark == RepeatMark.AtEnd && i + 1 == id.Length)),
                char c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c),
            };
            if (!fits)
                return false;
        }

        return true;
    }

    /// <summary>The id that was likely meant, or <c>null</c>.</summary>
    public string? Mended(string text)
    {
        if (text.Length > Longest)
            return null;
        var kept = new StringBuilder();
        bool gap = false;
        foreach (char c in text)
        {
            char lower = char.ToLowerInvariant(c);
            bool fits = char.IsAsciiLetterLower(lower) || char.IsAsciiDigit(lower);
            if (fits && gap && kept.Length > 0)
                kept.Append('-');
            if (fits)
                kept.Append(lower);
            gap = !fits;
        }

        if (mark != RepeatMark.Nowhere && text.EndsWith('#'))
            kept.Append("-#");
        string mended = kept.ToString();
        return IsId(mended) ? mended : null;
    }
}
