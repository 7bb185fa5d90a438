using Contam.Families;

namespace Contam.Proof;

/// <summary>
/// Whether the grades follow from what failed, what was found and what holds. Exposed: some source's full size arrives. Cleared: as many clean
/// findings as the part asks for were accepted at this very part or on every way to it; one that nothing clears never is. Guarded: anything else that is reached. A part that
/// asks for more than one look and is not cleared has the grade that it would have without clean findings.
/// </summary>
internal static class GradeCheck
{
    /// <summary>The first part called milder than it is, or <c>null</c>. Every part that is reached must be listed.</summary>
    internal static string? TooMild(PlanReading reading, DebrisClaims claims) => First(reading, claims, isMilder: true);

    /// <summary>The first part called worse than it is, or <c>null</c>.</summary>
    internal static string? TooHarsh(PlanReading reading, DebrisClaims claims) => First(reading, claims, isMilder: false);

    private static string? First(PlanReading reading, DebrisClaims claims, bool isMilder)
    {
        Grade?[] grades = Grades(reading, claims);
        for (int part = 0; part < grades.Length; part++)
        {
            if (claims.Grades[part] is not { } said || grades[part] is not { } grade || said == grade || said > grade != isMilder)
                continue;
            string consequence = isMilder ? "it would be treated too lightly" : "work would be done that nothing asks for";
            return $"{reading.Family.Parts[part].Id} is called {Words.Of(said)} for {claims.Debris.Name}, but it is {Words.Of(grade)}: {consequence}";
        }

        return null;
    }

    private static Grade?[] Grades(PlanReading reading, DebrisClaims claims)
    {
        bool[] reached = claims.CountedWorld.Reached();
        bool[] uncleared = claims.CountedWorld.ReachedPastNoCleanFinding();
        bool[] exposedCounted = claims.CountedWorld.Exposed();
        bool[] exposedUncounted = claims.UncountedWorld.Exposed();
        var grades = new Grade?[reached.Length];
        for (int part = 0; part < grades.Length; part++)
        {
            ClearedBy by = reading.Family.Parts[part].ClearedBy;
            bool isExposed = (by == ClearedBy.OneLook ? exposedCounted : exposedUncounted)[part];
            bool isCleared = by switch
            {
                ClearedBy.OneLook => claims.CountedWorld.IsAccepted(part) || !uncleared[part],
                ClearedBy.TwoLooks => claims.CountedWorld.IsBehindTwoCleanPlaces(part),
                _ => false,
            };
            if (reached[part])
                grades[part] = isCleared ? Grade.Cleared : isExposed ? Grade.Exposed : Grade.Guarded;
        }

        return grades;
    }
}
