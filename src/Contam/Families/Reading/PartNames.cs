using System.Collections.Immutable;
using Contam.Families.Reading.Shapes;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>The parts that a part names in its own description.</summary>
internal sealed class PartNames(PartTable table, Allowance allowance, ProblemList problems)
{
    /// <summary>All parts that a list names, each once, in the order written. Between repeats of equal count each number names its own; else a repeat is every one of its parts.</summary>
    public ImmutableArray<PartId> All(PartGroup group, int number, Located<ImmutableArray<Located<string>>> written, Scope scope)
    {
        var named = new List<PartId>();
        var known = new HashSet<PartId>();
        foreach (Located<string> id in written.Value)
        {
            if (!table.TryResolve(scope, id, out PartChoice choice))
                continue;
            bool numberToNumber = choice.IsMany && group.IsRepeated;
            if (numberToNumber && !CountsAgree(group, choice, id))
                continue;

            int first = choice.IsMany && !numberToNumber ? 1 : numberToNumber ? number : choice.Number;
            int last = choice.IsMany && !numberToNumber ? choice.Group.Count : first;
            if (!allowance.Take(last - first + 1, id.Place))
                return [];
            for (int each = first; each <= last; each++)
            {
                var one = new PartId(choice.Group.IdOf(each));
                if (known.Add(one))
                    named.Add(one);
            }
        }

        return [.. named];
    }

    /// <summary>The one part that is named, or <c>null</c> after a problem was raised. Of a repeat it is that with the owner's own number.</summary>
    public PartId? One(PartGroup group, int number, Located<string> id, Key key, Scope scope)
    {
        if (!table.TryResolve(scope, id, out PartChoice choice))
            return null;
        if (choice.IsMany && !group.IsRepeated)
        {
            problems.Add(FamilyProblems.OneOfMany(id.Place, group.Key, key.Name, id.Value, choice.Group.Place));
            return null;
        }

        return choice.IsMany && !CountsAgree(group, choice, id) ? null : new PartId(choice.Group.IdOf(choice.IsMany ? number : choice.Number));
    }

    /// <summary>The same as <see cref="All"/>, for parts that are renewed with their owner: a part that names itself gets a problem.</summary>
    public ImmutableArray<PartId> Others(PartGroup group, int number, Located<ImmutableArray<Located<string>>> written, Scope scope)
    {
        var own = new PartId(group.IdOf(number));
        ImmutableArray<PartId> named = All(group, number, written, scope);
        if (named.Contains(own))
            problems.Add(FamilyProblems.TogetherWithItself(written.Place, own.Value));
        return named;
    }

    private bool CountsAgree(PartGroup group, PartChoice choice, Located<string> id)
    {
        if (choice.Group.Count == group.Count)
            return true;
        if (group.CountIsKnown && choice.Group.CountIsKnown)
        {
            problems.Add(FamilyProblems.CountsDiffer(
                id.Place, group.Key, group.Count, choice.Group.Key, choice.Group.Count, group.Place, choice.Group.Place));
        }

        return false;
    }
}
