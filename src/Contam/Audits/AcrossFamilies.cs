using System.Collections.Immutable;
using Contam.Families;
using Contam.Problems;

namespace Contam.Audits;

/// <summary>What is seen only by laying families side by side.</summary>
internal static class AcrossFamilies
{
    /// <summary>Kinds that are treated otherwise in one family than in another, for the same debris that comes as far; by kind, debris and grade in ordinal order.</summary>
    public static ImmutableArray<AuditMessage> Messages(ImmutableArray<Family> families, ImmutableArray<FailureRun>[] runs)
    {
        var treated = Seen(families, runs)
            // A guarded part that is critical, or harmed by so small a size, is treated as exposed: that is the part's own, not the family's.
            .Where(one => !one.Seen.IsFailed && (one.Seen.Grade == Grade.Exposed || one.Part is { IsCritical: false, Clearance: null }))
            .Select(one => (one.Family, Kind: one.Part.Kind.Name, one.Debris, one.Seen.Grade, How: string.Join(", ", one.Seen.Treatment).ToLowerInvariant(), one.Part, one.Seen.Rule))
            .GroupBy(one => (one.Kind, one.Debris, one.Grade))
            .OrderBy(group => group.Key.Kind, StringComparer.Ordinal).ThenBy(group => group.Key.Debris, StringComparer.Ordinal).ThenBy(group => group.Key.Grade);
        var messages = ImmutableArray.CreateBuilder<AuditMessage>();
        foreach (var group in treated)
        {
            var ways = group.GroupBy(one => one.How, StringComparer.Ordinal)
                .Select(way => (How: way.Key, Families: way.Select(one => one.Family).Distinct().Order().ToArray(), way.First().Part, way.First().Rule))
                .ToArray();
            int all = group.Select(one => one.Family).Distinct().Count();
            if (ways.All(way => way.Families.Length == all))
                continue;
            string[] told =
            [
                .. ways.OrderByDescending(way => way.Families.Length).ThenBy(way => way.How, StringComparer.Ordinal)
                    .Select(way => $"{way.How} in {string.Join(", ", way.Families.Select(index => families[index].Id))} ({way.Part.Id}, {(way.Rule is { Line: > 0 } rule ? $"{rule.File}:{rule.Line}" : "no rule")})"),
            ];
            string how = group.Key.Grade == Grade.Exposed ? "exposed to" : "guarded from";
            // One rule cannot ask for two things of one kind and grade, so what differs then is the flush of a loop that stays on the engine.
            string why = ways.Select(way => way.Rule).Distinct().Count() == 1 ? "; the rule is the same, and the flush is that of a loop that stays on the engine" : "";
            messages.Add(AuditWords.Say(
                AuditCodes.TreatedOtherwise, null, $"{group.Key.Kind} {group.Key.Debris} {group.Key.Grade.ToString().ToLowerInvariant()}", null,
                $"{how} {group.Key.Debris}, the kind {Wording.Quoted(group.Key.Kind)} gets {string.Join("; ", told)}{why}",
                why.Length > 0 ? "" : "where it is not meant so, write the rule for the kind instead of the part"));
        }

        return messages.ToImmutable();
    }

    /// <summary>A cell for every kind that a debris reaches in a family; by kind and debris in ordinal order, then in the order of the families.</summary>
    public static ImmutableArray<AuditCell> Matrix(ImmutableArray<Family> families, ImmutableArray<FailureRun>[] runs) =>
    [
        .. Seen(families, runs).GroupBy(one => (Kind: one.Part.Kind.Name, one.Debris, one.Family))
            .OrderBy(group => group.Key.Kind, StringComparer.Ordinal).ThenBy(group => group.Key.Debris, StringComparer.Ordinal).ThenBy(group => group.Key.Family)
            .Select(group => new AuditCell(
                group.Key.Kind,
                group.Key.Debris,
                families[group.Key.Family].Id,
                group.All(one => !one.Seen.IsWithoutRule),
                group.Select(one => one.Part.Id).Distinct().Count())),
    ];

    private static IEnumerable<(int Family, Part Part, string Debris, SeenPart Seen)> Seen(ImmutableArray<Family> families, ImmutableArray<FailureRun>[] runs) =>
        families.SelectMany((family, index) => runs[index].SelectMany(run => run.Reached.Select(seen => (index, family.Parts[seen.Index], run.Debris.Name, seen))));
}
