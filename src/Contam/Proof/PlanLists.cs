using System.Collections.Immutable;

namespace Contam.Proof;

/// <summary>Lists of a document that somebody else may have written.</summary>
internal static class PlanLists
{
    /// <summary>The list, or an empty one where the document leaves it out.</summary>
    internal static ImmutableArray<T> OrEmpty<T>(this ImmutableArray<T> list) => list.IsDefault ? [] : list;
}
