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
        Grade?[] grades = GradesOf.Parts(reading.Family, claims.CountedWorld, claims.UncountedWorld);
        for (int part = 0; part < grades.Length; part++)
        {
            if (claims.Grades[part] is not { } said || grades[part] is not { } grade || said == grade || said > grade != isMilder)
                continue;
            string consequence = isMilder ? "it would be treated too lightly" : "work would be done that nothing asks for";
            return $"{reading.Family.Parts[part].Id} is called {Words.Of(said)} for {claims.Debris.Name}, but it is {Words.Of(grade)}: {consequence}";
        }

        return null;
    }
}
