using System.Collections.Immutable;
using System.Globalization;
using Contam.Families.Reading.Shapes;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>Every part of a family, repeats written out, and what ids stand for.</summary>
internal sealed class PartTable
{
    private readonly ReadLimits limits;
    private readonly ProblemList problems;
    private readonly Duplicates duplicates;
    private readonly Dictionary<string, PartGroup> groupOf = new(StringComparer.Ordinal);

    /// <summary>What the ids of repeated parts with a number stand for. All other ids are those of <see cref="groupOf"/>.</summary>
    private readonly Dictionary<string, PartChoice> numberedOf = new(StringComparer.Ordinal);
    private readonly List<PartGroup> groups = [];

    private PartTable(ReadLimits limits, Duplicates duplicates, ProblemList problems)
    {
        this.limits = limits;
        this.duplicates = duplicates;
        this.problems = problems;
    }

    /// <summary>Its groups, in the order in which the files were read.</summary>
    public IReadOnlyList<PartGroup> Groups => groups;

    /// <summary>How many parts there are, repeats written out.</summary>
    public int Count { get; private set; }

    /// <summary>
    /// Whether every part that the files describe is known. Where a file or a part could not be read, an id that is not found may have been meant
    /// for it, and is not told as well.
    /// </summary>
    public bool IsWhole { get; private set; }

    /// <summary>The parts that these files describe, adjusted.</summary>
    /// <param name="scopes">The files.</param>
    /// <param name="isWhole">Whether every file could be read.</param>
    /// <param name="limits">How many parts are taken in.</param>
    /// <param name="duplicates">Takes ids that stand twice.</param>
    /// <param name="problems">Takes the problems.</param>
    public static PartTable Of(IReadOnlyList<Scope> scopes, bool isWhole, ReadLimits limits, Duplicates duplicates, ProblemList problems)
    {
        var table = new PartTable(limits, duplicates, problems) { IsWhole = isWhole };
        var counts = new ModuleCounts(scopes);
        foreach (Scope scope in scopes)
        {
            table.IsWhole &= Sections.IsWhole(scope.File, FamilyKeys.Parts);
            ImmutableArray<Entry<string, Form>> entries = scope.File.Get(FamilyKeys.Parts, []);
            table.groupOf.EnsureCapacity(table.groupOf.Count + entries.Length);
            table.groups.EnsureCapacity(table.groups.Count + entries.Length);
            foreach (Entry<string, Form> entry in entries)
            {
                if (table.Describe(scope, entry, counts))
                    continue;
                table.IsWhole = false;
                return table;
            }
        }

        if (table.IsWhole)
            counts.RaiseUnused(problems);
        Adjustments.Apply(scopes, table, problems);
        return table;
    }

    /// <summary>What an id in a file stands for; a problem is raised where it stands for nothing.</summary>
    public bool TryResolve(Scope scope, Located<string> id, out PartChoice choice)
    {
        if (TryFind(scope, id.Value, out choice))
            return true;
        if (ProblemOf(scope, id) is Problem problem)
            problems.Add(problem);
        return false;
    }

    /// <summary>What an id in a file stands for, where one is written and fits.</summary>
    public bool TryResolveIf(Scope scope, Located<string>? id, out PartChoice choice)
    {
        choice = default;
        return id is Located<string> written && TryResolve(scope, written, out choice);
    }

    /// <summary>What a full id stands for.</summary>
    public bool TryFind(string fullId, out PartChoice choice)
    {
        if (numberedOf.TryGetValue(fullId, out choice))
            return true;
        bool found = groupOf.TryGetValue(fullId, out PartGroup? group);
        choice = found ? new PartChoice(group!, group!.IsRepeated ? 0 : 1) : default;
        return found;
    }

    /// <summary>Ids as a scope would write them, of everything it can name, whole groups before single parts.</summary>
    public IEnumerable<string> NamesIn(Scope scope)
    {
        foreach (PartGroup group in groups)
        {
            yield return group.Key.StartsWith(scope.Prefix, StringComparison.Ordinal) ? group.Key[scope.Prefix.Length..] : group.Key;
        }
    }

    private bool TryFind(Scope scope, string id, out PartChoice choice)
    {
        for (Scope? around = scope; around is not null; around = around.Parent)
        {
            if (TryFind(around.Prefix + id, out choice))
                return true;
        }

        choice = default;
        return false;
    }

    private Problem? ProblemOf(Scope scope, Located<string> id)
    {
        string written = id.Value;
        if (written.EndsWith("-#", StringComparison.Ordinal) && TryFind(scope, written[..^2], out PartChoice plain))
            return FamilyProblems.NotRepeated(id.Place, written, written[..^2], plain.Group.Place);
        if (TryFind(scope, written + "-#", out _))
            return FamilyProblems.UnknownPart(id.Place, written, written + "-#");

        int hyphen = written.LastIndexOf('-');
        int number = 0;
        bool isNumbered = hyphen > 0 && int.TryParse(written.AsSpan(hyphen + 1), NumberStyles.None, CultureInfo.InvariantCulture, out number);
        if (isNumbered && TryFind(scope, written[..hyphen] + "-#", out PartChoice repeated))
        {
            return repeated.Group.CountIsKnown
                ? FamilyProblems.NumberBeyondCount(id.Place, written, written[..hyphen] + "-#", repeated.Group.Count, repeated.Group.Place)
                : null;
        }

        if (!IsWhole)
            return null;

        string? near = problems.NearTo(isNumbered ? written[..hyphen] + "-#" : written, NamesIn(scope)) ?? problems.NearTo(written, NamesIn(scope));
        if (isNumbered && near is not null && near.EndsWith('#') && TryFind(scope, near[..^1] + number.ToString(CultureInfo.InvariantCulture), out _))
            near = near[..^1] + number.ToString(CultureInfo.InvariantCulture);
        return FamilyProblems.UnknownPart(id.Place, written, near);
    }

    /// <summary>Takes one description in; answers whether there is room for more.</summary>
    private bool Describe(Scope scope, Entry<string, Form> entry, ModuleCounts counts)
    {
        string key = scope.Prefix + entry.Key.Value;
        bool isRepeated = key.EndsWith("-#", StringComparison.Ordinal);
        int? count = isRepeated ? CountOf(scope, entry, counts) : 0;
        if (!isRepeated && entry.Value.Value is Form plain && plain.Has(PartKeys.Count))
            problems.Add(FamilyProblems.CountNotRepeated(plain.KeyPlace(PartKeys.Count), entry.Key.Value));

        if (groupOf.TryGetValue(key, out PartGroup? first))
        {
            duplicates.Raise(scope, entry.Key.Place, "part", key, first.Place);
            return true;
        }

        var group = new PartGroup(scope, entry, Count, count);
        if (Count + group.Count > limits.Parts)
        {
            problems.Add(FamilyProblems.TooManyParts(entry.Key.Place, limits.Parts));
            return false;
        }

        groups.Add(group);
        groupOf.Add(key, group);
        Count += group.Count;
        AddIds(group);
        return true;
    }

    private void AddIds(PartGroup group)
    {
        for (int number = 1; number <= group.Count; number++)
        {
            string id = group.IdOf(number);
            if (numberedOf.TryGetValue(id, out PartChoice first) || (group.IsRepeated && TryFind(id, out first)))
            {
                duplicates.Raise(group.Scope, group.Place, "part", id, first.Group.Place);
                return;
            }

            if (group.IsRepeated)
                numberedOf.Add(id, new PartChoice(group, number));
        }
    }

    /// <summary>How often a repeated part stands, at least 1; <c>null</c> after a problem was raised.</summary>
    private int? CountOf(Scope scope, Entry<string, Form> entry, ModuleCounts counts)
    {
        bool isSaid = counts.TryFind(scope, entry.Key.Value[..^2], out Located<int>? said);
        if (!isSaid && entry.Value.Value is Form form)
        {
            isSaid = form.Has(PartKeys.Count);
            said = form.Locate(PartKeys.Count);
        }

        if (said is Located<int> count)
        {
            if (count.Value <= limits.Count)
                return count.Value;
            problems.Add(FamilyProblems.CountTooLarge(count.Place, count.Value, limits.Count));
            return null;
        }

        // A count that does not fit, or a part that is no mapping at all, has had its problem. A module that is read for itself gets its counts
        // where it is used.
        bool mayBeSaidElsewhere = scope.Parent is null && !scope.File.Has(FamilyKeys.Family);
        if (!isSaid && entry.IsSound && !mayBeSaidElsewhere)
        {
            problems.Add(scope.Use is Form use
                ? FamilyProblems.CountMissingInModule(entry.Key.Place, entry.Key.Value, use.Place)
                : FamilyProblems.CountMissing(entry.Key.Place, entry.Key.Value));
        }

        return null;
    }
}
