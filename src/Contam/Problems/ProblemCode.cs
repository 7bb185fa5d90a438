namespace Contam.Problems;

/// <summary>What stands behind the code of a problem.</summary>
/// <param name="Code">The code, kebab-case, which stays the same between versions.</param>
/// <param name="Meaning">What is wrong where it is raised.</param>
/// <param name="Example">A few lines that raise it, or words that say when it is raised.</param>
/// <param name="Mend">What to do about it.</param>
public sealed record ProblemCode(string Code, string Meaning, string Example, string Mend)
{
    /// <summary>How much it matters where it is raised.</summary>
    public Severity Severity { get; init; } = Severity.Error;

    /// <summary>For a lint: a reason for which it may be meant so, as it would stand under <c>meant</c>; else <c>null</c>.</summary>
    public string? MayBeMeant { get; init; }

    /// <summary>Whether it is a lint: something that is likely forgotten, and that <c>meant</c> with a reason silences in one place.</summary>
    public bool IsLint => MayBeMeant is not null;
}
