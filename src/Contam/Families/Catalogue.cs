using System.Collections.Immutable;

namespace Contam.Families;

/// <summary>
/// The kinds of part and the sorts of debris that family files may name, in the order in which they were described.
/// Immutable.
/// </summary>
public sealed class Catalogue
{
    private readonly Dictionary<string, Kind> kindOf;
    private readonly Dictionary<string, Debris> debrisOf;

    /// <summary>A catalogue of these kinds and debris. A later entry of the same name takes the place of an earlier one.</summary>
    public Catalogue(IEnumerable<Kind> kinds, IEnumerable<Debris> debris)
    {
        ArgumentNullException.ThrowIfNull(kinds);
        ArgumentNullException.ThrowIfNull(debris);
        Kinds = LastOfEachName(kinds, kind => kind.Name);
        Debris = LastOfEachName(debris, sort => sort.Name);
        kindOf = Kinds.ToDictionary(kind => kind.Name, StringComparer.Ordinal);
        debrisOf = Debris.ToDictionary(sort => sort.Name, StringComparer.Ordinal);
    }

    /// <summary>All kinds, each name once.</summary>
    public ImmutableArray<Kind> Kinds { get; }

    /// <summary>All sorts of debris, each name once.</summary>
    public ImmutableArray<Debris> Debris { get; }

    /// <summary>The ids of the methods that texts may name.</summary>
    public ImmutableArray<string> Methods { get; init; } = [];

    /// <summary>The kind of this name, or <c>null</c>.</summary>
    public Kind? FindKind(string name) => kindOf.GetValueOrDefault(name);

    /// <summary>The debris of this name, or <c>null</c>.</summary>
    public Debris? FindDebris(string name) => debrisOf.GetValueOrDefault(name);

    private static ImmutableArray<T> LastOfEachName<T>(IEnumerable<T> entries, Func<T, string> nameOf)
    {
        var order = new List<string>();
        var last = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (T entry in entries)
        {
            string name = nameOf(entry);
            if (!last.ContainsKey(name))
                order.Add(name);
            last[name] = entry;
        }

        return [.. order.Select(name => last[name])];
    }
}
