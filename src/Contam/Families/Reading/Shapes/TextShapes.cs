using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>Free text, on one line or several.</summary>
internal sealed class WordsShape : Shape<string>
{
    /// <inheritdoc/>
    public override string Due => "a text";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, [MaybeNullWhen(false)] out string value)
    {
        value = null;
        if (TextOf(node, context) is not TextNode text)
            return false;
        int hidden = text.Value.AsSpan().IndexOfAnyInRange('\0', '\u001F') < 0 ? -1 : FirstControl(text.Value);
        if (hidden >= 0)
        {
            context.Problems.Add(SheetProblems.ControlCharacter(context.PlaceOf(node), text.Value[hidden]));
            return false;
        }

        value = text.Value.Trim();
        return true;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema) => schema.Type("string");

    // Escapes in double quotes can bring in what the file itself may not hold.
    private static int FirstControl(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            if (char.IsControl(text[i]) && text[i] is not ('\n' or '\t'))
                return i;
        }

        return -1;
    }
}

/// <summary>One of a few words.</summary>
/// <param name="called">What the words are, for instance <c>how likely</c>.</param>
/// <param name="choices">The words, in the order in which people are told of them, each with what it is read as.</param>
internal sealed class ChoiceShape<T>(string called, params ImmutableArray<(string Word, T Value)> choices) : Shape<T>
    where T : notnull
{
    /// <inheritdoc/>
    public override string Due => $"{called}: {Wording.OneOf(choices.Select(choice => choice.Word))}";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, [MaybeNullWhen(false)] out T value)
    {
        value = default;
        if (TextOf(node, context) is not TextNode text)
            return false;
        foreach ((string word, T meant) in choices)
        {
            if (word == text.Value)
            {
                value = meant;
                return true;
            }
        }

        string? near = context.Problems.NearTo(text.Value.ToLowerInvariant(), choices.Select(choice => choice.Word))
            ?? choices.FirstOrDefault(choice => string.Equals(choice.Word, text.Value, StringComparison.OrdinalIgnoreCase)).Word;
        context.Problems.Add(ShapeProblems.BadChoice(context.PlaceOf(text), text.Value, called, choices.Select(choice => choice.Word), near));
        return false;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema) => schema.Texts("enum", choices.Select(choice => choice.Word));
}

/// <summary><c>true</c> or <c>false</c>.</summary>
internal sealed class FlagShape : Shape<bool>
{
    /// <inheritdoc/>
    public override string Due => "true or false";

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, out bool value)
    {
        value = false;
        if (TextOf(node, context) is not TextNode text)
            return false;
        value = text.Value == "true";
        if (text.IsPlain && text.Value is "true" or "false")
            return true;
        context.Problems.Add(ShapeProblems.BadFlag(context.PlaceOf(text), text.Value));
        return false;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema) => schema.Type("boolean");
}
