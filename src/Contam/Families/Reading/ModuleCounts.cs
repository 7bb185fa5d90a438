using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>The <c>counts</c> of every use of a module.</summary>
internal sealed class ModuleCounts
{
    private readonly Dictionary<(Scope Scope, string Name), Located<int>?> countOf = [];
    private readonly HashSet<(Scope Scope, string Name)> used = [];
    private readonly List<(Scope Scope, Located<string> Name)> said = [];
    private readonly Dictionary<Scope, List<string>> repeatedIn = [];

    /// <summary>Gathers what the uses of these scopes say.</summary>
    public ModuleCounts(IReadOnlyList<Scope> scopes)
    {
        foreach (Scope scope in scopes)
        {
            foreach (Entry<string, int> entry in scope.Use?.Get(FamilyKeys.Counts, []) ?? [])
            {
                said.Add((scope, entry.Key));
                countOf[(scope, entry.Key.Value)] = entry.IsSound ? entry.Value : null;
            }
        }
    }

    /// <summary>
    /// Whether the uses around this scope say how often a repeated part stands; the outermost counts.
    /// </summary>
    /// <param name="scope">The scope that describes it.</param>
    /// <param name="name">Its id in that scope, without <c>-#</c>.</param>
    /// <param name="found">How often; <c>null</c> where what is said does not fit, after a problem was raised.</param>
    public bool TryFind(Scope scope, string name, out Located<int>? found)
    {
        bool isSaid = false;
        found = null;
        for (Scope at = scope; at.Parent is not null; at = at.Parent)
        {
            if (!repeatedIn.TryGetValue(at, out List<string>? names))
                repeatedIn.Add(at, names = []);
            names.Add(name);
            used.Add((at, name));
            if (countOf.TryGetValue((at, name), out Located<int>? count))
            {
                isSaid = true;
                found = count;
            }

            name = at.OwnPrefix + name;
        }

        return isSaid;
    }

    /// <summary>Raises a problem for every count of a part that is not there. Called when all parts have asked.</summary>
    public void RaiseUnused(ProblemList problems)
    {
        foreach ((Scope scope, Located<string> name) in said)
        {
            if (!used.Contains((scope, name.Value)))
                problems.Add(ModuleProblems.UnknownCount(name.Place, name.Value, problems.NearTo(name.Value, repeatedIn.GetValueOrDefault(scope) ?? [])));
        }
    }
}
