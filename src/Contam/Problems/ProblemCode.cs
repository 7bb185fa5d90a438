namespace Contam.Problems;

/// <summary>What stands behind the code of a problem.</summary>
/// <param name="Code">The code, kebab-case, which stays the same between versions.</param>
/// <param name="Meaning">What is wrong where it is raised.</param>
/// <param name="Example">A few lines that raise it, or words that say when it is raised.</param>
/// <param name="Mend">What to do about it.</param>
public sealed record ProblemCode(string Code, string Meaning, string Example, string Mend);
