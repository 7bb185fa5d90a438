using System.Collections.Immutable;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>A list of runs. One run without brackets of its own, the usual slip, is told once and not for each of its parts.</summary>
internal sealed class RunsShape : Shape<ImmutableArray<Located<ImmutableArray<Located<string>>>>>
{
    private static readonly ListShape<ImmutableArray<Located<string>>> Runs = new(
        new ListShape<string>(PartKeys.Reference, "a list of parts in flow order") { AtLeast = 1, AllOrNothing = true }, "a list of runs");

    /// <inheritdoc/>
    public override string Due => Runs.Due;

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, out ImmutableArray<Located<ImmutableArray<Located<string>>>> value)
    {
        if (node is ListNode list && list.Items.Find(item => item is TextNode { IsNothing: false }) is TextNode part)
        {
            context.Problems.Add(ShapeProblems.RunWithoutBrackets(context.PlaceOf(part), part.Value));
            value = [];
            return false;
        }

        return Runs.TryRead(node, context, out value);
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema) => Runs.WriteSchema(schema);
}
