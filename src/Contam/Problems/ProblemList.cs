using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Problems;

/// <summary>
/// Gathers the problems of one reading. Holds at most so many; the rest are counted. The same at the same place, as a module that is used often
/// would raise it, is taken once.
/// </summary>
/// <param name="most">How many are kept.</param>
internal sealed class ProblemList(int most)
{
    /// <summary>How many candidates are compared in all, so that a file full of unknown names is not compared with a file full of known ones.</summary>
    private const int MostComparisons = 200_000;

    private readonly List<Problem> kept = [];
    private readonly HashSet<(string Code, SourceSpan? Place, string Text)> known = [];
    private int left;
    private SourceSpan? firstLeft;
    private int comparisons;

    /// <summary>Whether an error is among them.</summary>
    public bool HasErrors { get; private set; }

    /// <summary>How many there are, kept or not. Whoever must know whether a step raised any compares this before and after.</summary>
    public int Count => kept.Count + left;

    /// <summary>Adds one.</summary>
    public void Add(Problem problem)
    {
        HasErrors |= problem.Severity == Severity.Error;
        if (kept.Count == most)
            LeaveOut(problem);
        else if (known.Add((problem.Code, problem.Place, problem.Text)))
            kept.Add(problem);
    }

    /// <summary>
    /// The name that was likely meant by an unknown one, or <c>null</c>; see <see cref="NearName"/>. Nothing is looked for any more once the list
    /// is full or very much was compared.
    /// </summary>
    public string? NearTo(string unknown, IEnumerable<string> known) => kept.Count == most || comparisons >= MostComparisons
        ? null
        : NearName.Of(unknown, known.Take(MostComparisons - comparisons).Select(Compared));

    /// <summary>
    /// All that are kept, by file, line and column, those without a place first; at one place in the order in which they were found.
    /// Where some were left out, one more says how many, at the place of the first of them.
    /// </summary>
    public ImmutableArray<Problem> ToSorted()
    {
        IEnumerable<Problem> sorted = kept
            .OrderBy(problem => problem.Place?.File, StringComparer.Ordinal)
            .ThenBy(problem => problem.Place?.Line)
            .ThenBy(problem => problem.Place?.Column);
        return left == 0 ? [.. sorted] : [.. sorted, SheetProblems.TooManyProblems(left, firstLeft)];
    }

    private void LeaveOut(Problem problem)
    {
        if (known.Contains((problem.Code, problem.Place, problem.Text)))
            return;
        firstLeft ??= problem.Place;
        left++;
    }

    private string Compared(string candidate)
    {
        comparisons++;
        return candidate;
    }
}
