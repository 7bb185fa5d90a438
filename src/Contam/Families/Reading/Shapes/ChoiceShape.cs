using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>One of a few words.</summary>
/// <param name="called">What the words are, for instance <c>how likely</c>.</param>
/// <param name="choices">The words, in the order in which people are told of them, each with what it is read as.</param>
internal sealed class ChoiceShape<T>(string called, params ImmutableArray<(string Word, T Value)> choices) : Shape<T>
    where T : notnull
{
    /// <inheritdoc/>
    public override string Due => $"{called} ({Wording.OneOf(choices.Select(choice => choice.Word))})";

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
            ?? choices.FirstOrDefault(choice => string.Equals(choice.Word, text.Value, StringComparison.OrdinalIgnoreCase)).Word
            ?? NearName.Beginning(text.Value, choices.Select(choice => choice.Word));
        context.Problems.Add(ShapeProblems.BadChoice(context.PlaceOf(text), text.Value, called, choices.Select(choice => choice.Word), near));
        return false;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema) => schema.Texts("enum", choices.Select(choice => choice.Word));
}
