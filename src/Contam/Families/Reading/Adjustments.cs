using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>
/// Lets files change the parts that their modules brought. The outermost file has the last word; in one file what is said of one part of a
/// repeated one counts more than what is said of all.
/// </summary>
internal static class Adjustments
{
    /// <summary>Applies every <c>adjust</c>; raises a problem for each that fits no part a module brought.</summary>
    public static void Apply(IReadOnlyList<Scope> scopes, PartTable table, ProblemList problems)
    {
        foreach (Scope scope in scopes.OrderByDescending(scope => scope.Depth))
        {
            var single = new List<(PartChoice Choice, Form Form)>();
            foreach (Entry<string, Form> entry in scope.File.Get(FamilyKeys.Adjust, []))
            {
                if (!IsOfModule(scope, entry.Key, table, problems, out PartChoice choice) || entry.Value.Value is not Form form)
                    continue;
                if (choice.IsMany || !choice.Group.IsRepeated)
                    choice.Group.Adjust(0, scope, form);
                else
                    single.Add((choice, form));
            }

            foreach ((PartChoice choice, Form form) in single)
                choice.Group.Adjust(choice.Number, scope, form);
        }
    }

    private static bool IsOfModule(Scope scope, Located<string> id, PartTable table, ProblemList problems, out PartChoice choice)
    {
        if (!table.TryFind(scope.Prefix + id.Value, out choice))
        {
            if (table.IsWhole)
                problems.Add(ModuleProblems.UnknownAdjust(id.Place, id.Value, problems.NearTo(id.Value, BroughtTo(scope, table))));
            return false;
        }

        if (choice.Group.Scope.IsWithin(scope))
            return true;
        problems.Add(ModuleProblems.AdjustOwn(id.Place, id.Value, choice.Group.Place));
        return false;
    }

    private static IEnumerable<string> BroughtTo(Scope scope, PartTable table) => table.Groups
        .Where(group => group.Scope.IsWithin(scope))
        .Select(group => group.Key[scope.Prefix.Length..]);
}
