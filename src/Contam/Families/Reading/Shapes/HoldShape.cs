using Contam.Families.Quantities;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading.Shapes;

/// <summary>What a part holds back: <c>all</c>, or what is larger than a length.</summary>
/// <param name="Above">The largest particle that still gets on.</param>
/// <param name="IsAll">Whether it was written as <c>all</c>.</param>
internal readonly record struct HoldSaid(ParticleSize Above, bool IsAll);

/// <summary><c>all</c>, or a length.</summary>
internal sealed class HoldShape : Shape<HoldSaid>
{
    private static readonly QuantityShape<ParticleSize> Size = new(Dimension.Length, ParticleSize.TryParse);

    /// <inheritdoc/>
    public override string Due => "`all`, or " + Size.Due;

    /// <inheritdoc/>
    public override bool TryRead(SheetNode node, SheetContext context, out HoldSaid value)
    {
        value = new HoldSaid(ParticleSize.Zero, IsAll: true);
        if (node is TextNode { Value: "all" })
            return true;
        if (TextOf(node, context) is not TextNode text)
            return false;
        if (text.Value.Length == 0 || (!char.IsAsciiDigit(text.Value[0]) && text.Value[0] is not ('-' or '.')))
        {
            context.Problems.Add(ShapeProblems.NeitherAllNorSize(context.PlaceOf(text), Due, text.Value));
            return false;
        }

        if (!Size.TryRead(node, context, out ParticleSize above))
            return false;
        value = new HoldSaid(above, IsAll: false);
        return true;
    }

    /// <inheritdoc/>
    public override void WriteSchema(SchemaWriter schema) =>
        schema.AnyOf(all => all.Text("const", "all"), Size.WriteSchema);
}
