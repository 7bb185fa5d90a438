using System.Collections.Immutable;
using Contam.Families;
using Contam.Problems;
using Contam.Treatment;

namespace Contam.Lints;

/// <summary>
/// What is likely forgotten in a family that can be read. Every answer is a warning of a code in <see cref="LintCodes"/>; what the file says is
/// <c>meant</c> so is left out.
/// </summary>
public static class Linting
{
    /// <summary>
    /// The warnings, by file, line and column. What is so for every number of a repeated part is told once, at the part's description.
    /// Cost: linear in parts and joints for each sort of debris and each circuit.
    /// </summary>
    /// <param name="family">The family.</param>
    /// <param name="standard">The standard whose rules its parts would be treated by, its layers joined.</param>
    public static ImmutableArray<Problem> Look(Family family, ShopStandard standard)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(standard);
        var map = new FlowMap(family);
        var sink = new LintSink(family);
        FlowLints.Look(family, map, sink);
        PartLints.Look(family, map, sink);
        RuleLints.Look(family, standard, map, sink);
        NameLints.Look(family, sink);
        return sink.Told();
    }
}
