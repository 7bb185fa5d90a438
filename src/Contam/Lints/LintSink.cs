using System.Collections.Immutable;
using Contam.Families;
using Contam.Problems;

namespace Contam.Lints;

/// <summary>Takes what the lints see. What is meant so is left out; what is so for every number of a repeated part is told once.</summary>
internal sealed class LintSink
{
    private readonly Family family;
    private readonly Dictionary<string, int> countOf = new(StringComparer.Ordinal);
    private readonly HashSet<(SourceSpan Place, string Code)> used = [];
    private readonly List<Problem> ofCircuits = [];
    private readonly List<(Part Part, Func<string, Problem> Say)> seen = [];

    public LintSink(Family family)
    {
        this.family = family;
        foreach (Part part in family.Parts)
        {
            if (part.RepeatOf is { } repeat)
                countOf[repeat] = countOf.GetValueOrDefault(repeat) + 1;
        }
    }

    /// <summary>Something is seen at a part.</summary>
    /// <param name="code">The code of the lint.</param>
    /// <param name="part">The part.</param>
    /// <param name="say">How it is worded, by the name that the part is called.</param>
    public void At(string code, Part part, Func<string, Problem> say)
    {
        if (!IsMeant(part.Meant, code))
            seen.Add((part, say));
    }

    /// <summary>Something is seen at a part on a circuit; either may say that it is meant so.</summary>
    public void At(string code, Part part, Circuit circuit, Func<string, Problem> say)
    {
        // Both are asked, so that neither is told to be for nothing.
        if (!(IsMeant(part.Meant, code) | IsMeant(circuit.Meant, code)))
            seen.Add((part, say));
    }

    /// <summary>Something is seen at a circuit.</summary>
    public void At(string code, Circuit circuit, Problem problem)
    {
        if (!IsMeant(circuit.Meant, code))
            ofCircuits.Add(problem);
    }

    /// <summary>Everything that was seen and not meant, by file, line and column, and what was meant for nothing.</summary>
    public ImmutableArray<Problem> Told()
    {
        var problems = new ProblemList(Families.Reading.Sheets.ReadLimits.Default.Problems);
        foreach (IGrouping<(string, string, string, SourceSpan?), (Part Part, Func<string, Problem> Say)> alike in seen.GroupBy(one => KeyOf(one.Part, one.Say)))
        {
            (Part Part, Func<string, Problem> Say)[] all = [.. alike];
            Part first = all[0].Part;
            bool isEvery = first.RepeatOf is { } repeat && all.Length == countOf[repeat];
            if (isEvery)
                problems.Add(all[0].Say(first.RepeatOf + "-#"));
            else
                Array.ForEach(all, one => problems.Add(one.Say(one.Part.Id.Value)));
        }

        ofCircuits.ForEach(problems.Add);
        foreach (Meant meant in family.Parts.SelectMany(part => part.Meant).Concat(family.Circuits.SelectMany(circuit => circuit.Meant)))
        {
            // What a module means so may well be mended by one of the families that use it.
            if (meant.Place.File == family.File && !used.Contains((meant.Place, meant.Code)))
                problems.Add(LintProblems.MeantForNothing(meant.Place, meant.Code));
        }

        return problems.ToSorted();
    }

    private static (string Code, string Text, string RepeatOf, SourceSpan? Place) KeyOf(Part part, Func<string, Problem> say)
    {
        Problem problem = say(part.RepeatOf is { } repeat ? repeat + "-#" : part.Id.Value);
        return (problem.Code, problem.Text, part.RepeatOf ?? "", problem.Place);
    }

    private bool IsMeant(ImmutableArray<Meant> said, string code)
    {
        foreach (Meant meant in said)
        {
            if (meant.Code != code)
                continue;
            used.Add((meant.Place, code));
            return true;
        }

        return false;
    }
}
