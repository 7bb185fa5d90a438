using System.Collections.Immutable;
using Contam.Families.Reading.Shapes;

namespace Contam.Families.Reading;

/// <summary>A circuit as all files together describe it.</summary>
/// <param name="name">Its name.</param>
/// <param name="place">Where it is first described.</param>
internal sealed class CircuitDraft(string name, SourceSpan place)
{
    private readonly List<int> parts = [];
    private readonly HashSet<int> knownParts = [];
    private readonly List<int> ends = [];
    private readonly HashSet<int> knownEnds = [];

    /// <summary>Its name.</summary>
    public string Name { get; } = name;

    /// <summary>Where it is first described.</summary>
    public SourceSpan Place { get; } = place;

    /// <summary>The full id of its fluid, and where that is said; <c>null</c> for not said.</summary>
    public (string Id, SourceSpan Place)? Fluid { get; set; }

    /// <summary>What is meant so in it, as all files say it.</summary>
    public List<Meant> Meant { get; } = [];

    /// <summary>Its runs, each with the scope that its ids are looked for in; each is let go of as it is taken.</summary>
    public Queue<(Scope Scope, ImmutableArray<Located<string>> Items)> Runs { get; } = [];

    /// <summary>Notes that a part stands in it.</summary>
    public void AddPart(int part)
    {
        if (knownParts.Add(part))
            parts.Add(part);
    }

    /// <summary>Notes that a run ends at a part.</summary>
    public void AddEnd(int part)
    {
        if (knownEnds.Add(part))
            ends.Add(part);
    }

    /// <summary>The circuit.</summary>
    /// <param name="all">The parts of the family.</param>
    public Circuit Build(ImmutableArray<Part> all) => new(Name, Place)
    {
        Fluid = Fluid?.Id,
        Parts = [.. parts.Select(part => all[part].Id)],
        RunEnds = [.. ends.Select(part => all[part].Id)],
        // Several files may say it of one circuit; the first counts.
        Meant = [.. Meant.DistinctBy(meant => meant.Code, StringComparer.Ordinal)],
    };
}
