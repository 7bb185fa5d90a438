namespace Contam.Cli.Completion;

/// <summary>What could stand where the cursor is.</summary>
/// <param name="Word">The whole word. One that ends with <c>/</c> or <c>=</c> goes on.</param>
/// <param name="About">What it is, in one line; may be empty.</param>
internal sealed record Candidate(string Word, string About = "");
