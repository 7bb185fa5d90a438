using System.Collections.Immutable;
using Contam.Families.Reading.Shapes;

namespace Contam.Families.Reading;

/// <summary>A circuit as all files together describe it.</summary>
/// <param name="name">Its name.</param>
/// <param name="place">Where it is first described.</param>
internal sealed class CircuitDraft(string name, SourceSpan place)
{
    private readonly List<int> parts = [];
    private readonly List<int> ends = [];

    /// <summary>Its name.</summary>
    public string Name { get; } = name;

    /// <summary>Where it is first described.</summary>
    public SourceSpan Place { get; } = place;

    /// <summary>The full id of its fluid, and where that is said; <c>null</c> for not said.</summary>
    public (string Id, SourceSpan Place)? Fluid { get; set; }

    /// <summary>What is meant so in it, as all files say it.</summary>
    public List<Meant> Meant { get; } = [];

    /// <summary>Its runs, each with the scope that its ids are looked for in.</summary>
    public List<(Scope Scope, ImmutableArray<Located<string>> Items)> Runs { get; } = [];

    /// <summary>Notes that a part stands in it.</summary>
    public void AddPart(int part) => parts.Add(part);

    /// <summary>Notes that a run ends at a part.</summary>
    public void AddEnd(int part) => ends.Add(part);

    /// <summary>The circuit.</summary>
    /// <param name="all">The parts of the family.</param>
    /// <param name="isIn">Room for a mark on each of them, none marked; it is so again afterwards.</param>
    public Circuit Build(ImmutableArray<Part> all, bool[] isIn) => new(Name, Place)
    {
        Fluid = Fluid?.Id,
        Parts = Once(parts, all, isIn),
        RunEnds = Once(ends, all, isIn),
        // Several files may say it of one circuit; the first counts.
        Meant = [.. Meant.DistinctBy(meant => meant.Code, StringComparer.Ordinal)],
    };

    /// <summary>Each of these parts once, where it stands first. Linear in what is noted, whatever the family has besides.</summary>
    private static ImmutableArray<PartId> Once(List<int> noted, ImmutableArray<Part> all, bool[] isIn)
    {
        var once = ImmutableArray.CreateBuilder<PartId>();
        foreach (int part in noted)
        {
            if (!isIn[part])
                once.Add(all[part].Id);
            isIn[part] = true;
        }

        foreach (int part in noted)
            isIn[part] = false;
        return once.DrainToImmutable();
    }
}
