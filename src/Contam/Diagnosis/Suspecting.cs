using System.Collections.Immutable;

namespace Contam.Diagnosis;

/// <summary>
/// Which part is the debris coming from?
/// <para>
/// One failure at a time. A part that sheds the debris has a prior of 1, 3 or 9 (rare, occasional, common), and each finding multiplies it by the chance of
/// that finding if the part were the source. <em>Found</em>: the chance that a look there shows debris (good 0.9, fair 0.6, poor 0.3, no look named: as
/// poor) where what the part sheds arrives, else 0.01, a stray piece. What arrives is the largest particle of the widest way (<c>reach</c> of the spread),
/// with this part alone failed: holding nothing itself, its own conditional joints open. Where the size seen is larger than that, or nothing gets past a
/// barrier, the find is a stray one too. Where form or magnetism are said on both sides and differ, a tenth remains for each, not under 0.01.
/// <em>Clean</em>: 1 less the chance to show, where the part's full size would have arrived; else 1, as a barrier may have held it. The products are shared
/// out so that they add to 1.
/// </para>
/// <para>
/// Findings never rule a part out; several findings at one place count as several looks. Cost: a search, linear in parts and joints, for each place or
/// each suspect, whichever are fewer, and for each suspect that opens joints; then suspects times findings.
/// </para>
/// </summary>
public static class Suspecting
{
    /// <summary>Answers the question.</summary>
    /// <exception cref="KeyNotFoundException">A finding, or a part seen to have failed, is not of the family.</exception>
    public static SuspectAnswer Of(SuspectQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        FindingsModel model = FindingsModel.Of(question);
        int count = model.Sources.Length;
        if (count == 0)
            return new SuspectAnswer(model, [], SmallestSets.None, [.. model.Findings.Where(finding => finding.Found)]);

        Evidence[][] evidence = [.. model.Findings.Select(model.Weigh)];
        ImmutableArray<double> priors = [.. model.Sheds.Select(shed => Chances.Prior(shed.Likely))];
        double[] shares = Posterior.Shares(priors, evidence.Select(row => row.Select(one => one.Chance).ToArray()));
        bool[][] explains = [.. evidence.Where(row => row[0].Finding.Found).Select(BestAccounts)];
        SmallestSets together = SmallestSets.Covering([.. explains.Where(row => row.Contains(true))], priors, [.. model.Sources.Select(part => part.Id)]);

        IEnumerable<Suspect> suspects = Enumerable.Range(0, count)
            .OrderByDescending(source => shares[source])
            .Select(source => new Suspect(model.Sources[source].Id, shares[source], model.Sheds[source], [.. evidence.Select(row => row[source])])
            {
                ExplainsSome = explains.Any(row => row[source]),
            });
        return new SuspectAnswer(model, [.. suspects], together, [.. evidence.Where(row => row.All(one => one.Sort == EvidenceSort.NoWay)).Select(row => row[0].Finding)]);
    }

    /// <summary>Who accounts for a find: those for whom it fits; where it fits nobody those for whom it only looks otherwise; else those with a way there at all.</summary>
    private static bool[] BestAccounts(Evidence[] row)
    {
        EvidenceSort best = row.Max(one => one.Sort);
        return [.. row.Select(one => one.Sort == best && best != EvidenceSort.NoWay)];
    }
}
