using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Proof;

/// <summary>Lists of a document that somebody else may have written.</summary>
internal static class PlanLists
{
    /// <summary>The list, or an empty one where the document leaves it out.</summary>
    internal static ImmutableArray<T> OrEmpty<T>(this ImmutableArray<T> list) => list.IsDefault ? [] : list;

    /// <summary>The places in the family of the parts with these ids, each once; those that it has.</summary>
    internal static IEnumerable<int> Places(this Family family, IEnumerable<string> ids) =>
        ids.Distinct(StringComparer.Ordinal).Select(id => family.IndexOf(new PartId(id))).Where(part => part >= 0);
}
