using System.Collections.Immutable;
using Contam.Authoring;
using Contam.Families;
using Contam.Spread;

namespace Contam.Reviews;

/// <summary>What a file says otherwise of a part that both families have.</summary>
/// <param name="Part">The part.</param>
/// <param name="Key">What is said, by the title of its column in a table of parts (<see cref="FamilyTables"/>).</param>
/// <param name="Before">What was said; empty for nothing.</param>
/// <param name="After">What is said now; empty for nothing.</param>
public sealed record PartChange(PartId Part, string Key, string Before, string After);

/// <summary>How far the debris of one failure goes now, where that differs.</summary>
/// <param name="Failed">The part that fails, in both families.</param>
/// <param name="Debris">What it sheds in both.</param>
/// <param name="More">Parts that are reached now and were not, in the order of the later family.</param>
/// <param name="Less">Parts that were reached and are not now, in the order of the earlier family.</param>
/// <param name="AtFullSize">Parts that are now exposed, and were guarded.</param>
/// <param name="HeldBack">Parts that are now guarded, and were exposed.</param>
public sealed record ReachChange(PartId Failed, Debris Debris, ImmutableArray<PartId> More, ImmutableArray<PartId> Less, ImmutableArray<PartId> AtFullSize, ImmutableArray<PartId> HeldBack);

/// <summary>
/// What changed from one family to another. Parts are told apart by id, joints by everything that they say but their place in the file: a joint that says
/// something else is one gone and one added. Order, comments and places do not count.
/// </summary>
public sealed record FamilyDifference
{
    /// <summary>The most steps of search that are spent on what failures reach: failures × (parts + joints), of both families.</summary>
    public const long MostWork = 400_000_000;

    /// <summary>Parts that only the later family has, in its order.</summary>
    public ImmutableArray<PartId> PartsAdded { get; private init; } = [];

    /// <summary>Parts that only the earlier family has, in its order.</summary>
    public ImmutableArray<PartId> PartsGone { get; private init; } = [];

    /// <summary>What is said otherwise of parts that both have, by part in the order of the later family, then by column.</summary>
    public ImmutableArray<PartChange> PartsChanged { get; private init; } = [];

    /// <summary>Joints that only the later family has, in its order.</summary>
    public ImmutableArray<Joint> JointsAdded { get; private init; } = [];

    /// <summary>Joints that only the earlier family has, in its order.</summary>
    public ImmutableArray<Joint> JointsGone { get; private init; } = [];

    /// <summary>What else differs, each a word: <c>title</c>, <c>machine</c>, <c>engine states</c>, <c>fluids</c>, <c>circuits</c>, <c>limits</c>.</summary>
    public ImmutableArray<string> Else { get; private init; } = [];

    /// <summary>Which failures now reach more or less, by failed part in the order of the later family, then by debris.</summary>
    public ImmutableArray<ReachChange> Reach { get; private init; } = [];

    /// <summary>Whether <see cref="Reach"/> was worked out; not for families beyond <see cref="MostWork"/>.</summary>
    public bool ReachIsCompared { get; private init; } = true;

    /// <summary>Whether nothing differs that a plan could depend on.</summary>
    public bool IsNone => PartsAdded.IsEmpty && PartsGone.IsEmpty && PartsChanged.IsEmpty && JointsAdded.IsEmpty && JointsGone.IsEmpty && Else.IsEmpty;

    /// <summary>
    /// The difference. Cost: linear in parts and joints, and twice as much again for every failure that both families have, within <see cref="MostWork"/>.
    /// </summary>
    /// <param name="before">The earlier family.</param>
    /// <param name="after">The later one.</param>
    public static FamilyDifference Between(Family before, Family after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var difference = new FamilyDifference
        {
            PartsAdded = [.. after.Parts.Select(part => part.Id).Where(id => before.IndexOf(id) < 0)],
            PartsGone = [.. before.Parts.Select(part => part.Id).Where(id => after.IndexOf(id) < 0)],
            PartsChanged = [.. after.Parts.Where(part => before.IndexOf(part.Id) >= 0).SelectMany(part => Changes(before[part.Id], part))],
            JointsAdded = Beyond(after, before),
            JointsGone = Beyond(before, after),
            Else = [.. Others(before, after)],
        };
        if (difference.IsNone)
            return difference;
        (Part Part, Debris Debris)[] failures = [.. after.Parts.SelectMany(part => part.Sheds.Select(shed => (part, shed.Debris))).Where(failure => before.Find(failure.part.Id)?.ShedOf(failure.Debris) is not null)];
        long work = failures.Length * (long)(before.Parts.Length + before.Joints.Length + after.Parts.Length + after.Joints.Length);
        return work > MostWork
            ? difference with { ReachIsCompared = false }
            : difference with { Reach = [.. failures.Select(failure => ReachOf(before, after, failure.Part.Id, failure.Debris)).OfType<ReachChange>()] };
    }

    private static IEnumerable<PartChange> Changes(Part before, Part after)
    {
        IReadOnlyDictionary<string, string> was = FamilyTables.CellsOf(before), now = FamilyTables.CellsOf(after);
        foreach (TableColumn column in TableColumns.Parts)
        {
            (string old, string said) = (was.GetValueOrDefault(column.Title, ""), now.GetValueOrDefault(column.Title, ""));
            if (old != said)
                yield return new PartChange(after.Id, column.Title, old, said);
        }
    }

    private static ImmutableArray<Joint> Beyond(Family family, Family other)
    {
        var left = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (Joint joint in other.Joints)
            left[KeyOf(joint)] = left.GetValueOrDefault(KeyOf(joint)) + 1;
        var beyond = ImmutableArray.CreateBuilder<Joint>();
        foreach (Joint joint in family.Joints)
        {
            string key = KeyOf(joint);
            if (left.GetValueOrDefault(key) is > 0 and var count)
                left[key] = count - 1;
            else
                beyond.Add(joint);
        }

        return beyond.ToImmutable();
    }

    private static string KeyOf(Joint joint) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{joint.From}>{joint.To} {joint.Circuit} {(int)joint.When} {joint.OnlyIfFailed?.Value} {joint.Passage?.Micrometres:R}");

    private static IEnumerable<string> Others(Family before, Family after)
    {
        if (before.Id != after.Id || before.Title != after.Title)
            yield return "title";
        if (before.Machine != after.Machine)
            yield return "machine";
        if (before.States != after.States)
            yield return "engine states";
        if (!before.Fluids.Select(FluidWords).SequenceEqual(after.Fluids.Select(FluidWords), StringComparer.Ordinal))
            yield return "fluids";
        if (!before.Circuits.Select(CircuitWords).SequenceEqual(after.Circuits.Select(CircuitWords), StringComparer.Ordinal))
            yield return "circuits";
        if (!before.Limits.Select(limit => limit with { Place = default }).SequenceEqual(after.Limits.Select(limit => limit with { Place = default })))
            yield return "limits";
    }

    private static string FluidWords(Fluid fluid) => string.Create(
        System.Globalization.CultureInfo.InvariantCulture,
        $"{fluid.Id} {fluid.IsFree} {fluid.Sort} {fluid.Density} {string.Join(';', fluid.Viscosity.Select(point => $"{point.At} {point.Viscosity}"))}");

    private static string CircuitWords(Circuit circuit) => $"{circuit.Name} {circuit.Fluid} {string.Join(';', circuit.Meant.Select(meant => meant.Code))}";

    private static ReachChange? ReachOf(Family before, Family after, PartId failed, Debris debris)
    {
        DebrisSpread was = Spreading.Of(new SpreadQuestion(before, [failed], debris)), now = Spreading.Of(new SpreadQuestion(after, [failed], debris));
        ImmutableArray<PartId> Of(Family family, Func<Grade?, Grade?, bool> holds) => [.. family.Parts.Select(part => part.Id).Where(id => holds(GradeIn(before, was, id), GradeIn(after, now, id)))];
        var change = new ReachChange(
            failed,
            debris,
            Of(after, (old, grade) => old is null && grade is not null),
            Of(before, (old, grade) => old is not null && grade is null),
            Of(after, (old, grade) => old == Grade.Guarded && grade == Grade.Exposed),
            Of(after, (old, grade) => old == Grade.Exposed && grade == Grade.Guarded));
        return change.More.IsEmpty && change.Less.IsEmpty && change.AtFullSize.IsEmpty && change.HeldBack.IsEmpty ? null : change;
    }

    private static Grade? GradeIn(Family family, DebrisSpread spread, PartId part) => family.IndexOf(part) < 0 ? null : spread.Find(part)?.Grade;
}
