using Contam.Families;

namespace Contam.Proof;

/// <summary>The grades of all parts for one debris, as <see cref="GradeCheck"/> defines them.</summary>
internal static class GradesOf
{
    /// <summary>For each part its grade; <c>null</c> for one that is not reached. Linear but for sorting the sources.</summary>
    /// <param name="family">The family.</param>
    /// <param name="counted">With the clean findings that count.</param>
    /// <param name="uncounted">The same without them.</param>
    internal static Grade?[] Parts(Family family, DebrisWorld counted, DebrisWorld uncounted)
    {
        bool[] reached = counted.Reached();
        bool[] uncleared = counted.ReachedPastNoCleanFinding();
        bool[] exposedCounted = counted.Exposed();
        bool[] exposedUncounted = uncounted.Exposed();
        var grades = new Grade?[reached.Length];
        for (int part = 0; part < grades.Length; part++)
        {
            ClearedBy by = family.Parts[part].ClearedBy;
            bool isExposed = (by == ClearedBy.OneLook ? exposedCounted : exposedUncounted)[part];
            bool isCleared = by switch
            {
                ClearedBy.OneLook => counted.IsAccepted(part) || !uncleared[part],
                ClearedBy.TwoLooks => counted.IsBehindTwoCleanPlaces(part),
                _ => false,
            };
            if (reached[part])
                grades[part] = isCleared ? Grade.Cleared : isExposed ? Grade.Exposed : Grade.Guarded;
        }

        return grades;
    }
}
