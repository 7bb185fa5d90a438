using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>The <c>counts</c> of every use of a module.</summary>
internal sealed class ModuleCounts
{
    private readonly Dictionary<(Scope Scope, string Name), Located<int>> countOf = [];
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
                if (entry.IsSound)
                    countOf[(scope, entry.Key.Value)] = new Located<int>(entry.Value.Value, entry.Value.Sheet, entry.Value.Node);
            }
        }
    }

    /// <summary>
    /// How often a repeated part of this scope stands, as the uses around it say; the outermost counts. <c>null</c> where none says.
    /// </summary>
    /// <param name="scope">The scope that describes it.</param>
    /// <param name="name">Its id in that scope, without <c>-#</c>.</param>
    public Located<int>? Find(Scope scope, string name)
    {
        Located<int>? found = null;
        for (Scope at = scope; at.Parent is not null; at = at.Parent)
        {
            if (!repeatedIn.TryGetValue(at, out List<string>? names))
                repeatedIn.Add(at, names = []);
            names.Add(name);
            used.Add((at, name));
            if (countOf.TryGetValue((at, name), out Located<int> count))
                found = count;
            name = at.OwnPrefix + name;
        }

        return found;
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
