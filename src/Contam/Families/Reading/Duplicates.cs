using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>Tells of ids that stand twice. A module that is used twice without a prefix is told once, not for each of its ids.</summary>
internal sealed class Duplicates(ProblemList problems)
{
    private readonly HashSet<Scope> told = [];

    /// <summary>Raises that an id is described a second time.</summary>
    /// <param name="scope">Where it is described again.</param>
    /// <param name="place">Where exactly.</param>
    /// <param name="what">What bears the id: part, limit, fluid.</param>
    /// <param name="id">The full id.</param>
    /// <param name="first">Where it is described first.</param>
    public void Raise(Scope scope, SourceSpan place, string what, string id, SourceSpan first)
    {
        if (scope.Use is null)
            problems.Add(FamilyProblems.DuplicateId(place, what, id, first));
        else if (place != first)
            problems.Add(FamilyProblems.DuplicateIdOfModule(place, what, id, first));
        else if (told.Add(scope))
            problems.Add(FamilyProblems.UsedTwice(scope.Use.Place, id, first));
    }
}
