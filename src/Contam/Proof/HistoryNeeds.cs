using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// What each part needs in one history: for each debris that comes to it, what the plan says that its grade asks for. A guarded part that more than one look
/// must clear, or where what comes is as large as its clearance, counts as exposed, as does a failed one. A failed part that no debris comes to needs what the plan
/// lists for it. Treatments are meant as bits.
/// </summary>
internal sealed class HistoryNeeds
{
    private readonly PlanReading reading;
    private readonly IReadOnlyList<LookDisproof> disproofs;
    private readonly FailedParts failures;
    private readonly bool[] isFailed;
    private readonly Dictionary<(int Part, string Debris, Grade Grade), int> asks = [];

    internal HistoryNeeds(PlanReading reading, IReadOnlyList<LookDisproof> disproofs)
    {
        this.reading = reading;
        this.disproofs = disproofs;
        isFailed = new bool[reading.Family.Parts.Length];
        failures = new FailedParts(reading.Family, reading.Plan);
        foreach (int part in failures.Parts)
            isFailed[part] = true;
        foreach (PlanPart listed in reading.Plan.Parts.OrEmpty())
        {
            foreach (PlanAsk ask in listed.Asks.OrEmpty())
            {
                (int, string, Grade) key = (reading.Family.IndexOf(new PartId(listed.Id)), ask.Debris, ask.Grade);
                asks[key] = asks.GetValueOrDefault(key) | Bits(ask.Treatment.OrEmpty());
            }
        }
    }

    /// <summary>For each part what it needs; 0 for nothing. Linear in parts and joints for each debris and each clearance, but for sorting sources.</summary>
    /// <param name="history">The history.</param>
    /// <param name="unasked">The first part with a grade for which the plan asks nothing, and what that would mean; else <c>null</c>.</param>
    internal int[] In(PlayedHistory history, out string? unasked)
    {
        unasked = null;
        var needs = new int[reading.Family.Parts.Length];
        for (int debris = 0; debris < reading.Debris.Count; debris++)
        {
            Grade?[] grades = GradesIn(history, debris);
            for (int part = 0; part < needs.Length; part++)
            {
                if (grades[part] is not { } grade || grade == Grade.Cleared)
                    continue;
                if (asks.TryGetValue((part, reading.Debris[debris].Debris.Name, grade), out int asked) && asked != 0)
                    needs[part] |= asked;
                else
                    unasked ??= $"{reading.Family.Parts[part].Id} is {Words.Of(grade)} to {reading.Debris[debris].Debris.Name}, and the plan does not say what that asks for: it would not be treated for it";
            }
        }

        // A failed part that no debris comes to is made good in every history, by what the plan lists for it.
        foreach (int part in failures.Parts.Where(part => reading.Listed[part] is { } listed && listed.Exposure.OrEmpty().IsEmpty))
            needs[part] |= Bits(reading.Listed[part]!.Treatment.OrEmpty());
        return needs;
    }

    internal static int Bit(TreatmentKind kind) => 1 << (int)kind;

    internal static int Bits(IEnumerable<TreatmentKind> kinds) => kinds.Aggregate(0, (bits, kind) => bits | Bit(kind));

    /// <summary>The grade by which each part is treated.</summary>
    private Grade?[] GradesIn(PlayedHistory history, int debris)
    {
        Family family = reading.Family;
        DebrisClaims claims = reading.Debris[debris];
        LookDisproof looks = disproofs[debris];
        PlanFinding[] before = [.. reading.Plan.Findings.OrEmpty().Where(finding => finding.Debris == claims.Debris.Name)];
        int[] found = [.. family.Places(before.Where(finding => finding.Found).Select(finding => finding.Part)).Union(looks.FoundAt(history.Found))];
        HashSet<int> disproved = looks.Of(history.Clean, history.Found);
        int[] accepted =
        [
            .. family.Places(before.Where(finding => finding is { Found: false, Accepted: true }).Select(finding => finding.Part)).Where(part => !disproved.Contains(part))
                .Union(looks.At(history.Clears)).Except(found),
        ];
        var counted = new DebrisWorld(claims.Passages, failures, found, accepted);
        Grade?[] grades = GradesOf.Parts(family, counted, new DebrisWorld(claims.Passages, failures, found, []));
        var comes = new Dictionary<ParticleSize, bool[]>();
        for (int part = 0; part < grades.Length; part++)
        {
            if (grades[part] is null || grades[part] == Grade.Exposed)
                continue;
            if (isFailed[part] || (grades[part] == Grade.Guarded && (family.Parts[part].ClearedBy != ClearedBy.OneLook || IsAtClearance(part))))
                grades[part] = Grade.Exposed;
        }

        return grades;

        bool IsAtClearance(int part)
        {
            if (family.Parts[part].Clearance is not { } clearance)
                return false;
            if (!comes.TryGetValue(clearance, out bool[]? carried))
                comes[clearance] = carried = counted.Carried(clearance, _ => true);
            return carried[part];
        }
    }
}
