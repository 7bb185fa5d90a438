using System.Collections.Immutable;
using Contam.Problems;

namespace Contam.Families.Reading;

/// <summary>What reading a file came to: the value where it is sound, and every problem found, in order of place.</summary>
/// <param name="Value">The value; <c>null</c> exactly where one of the problems is an error.</param>
/// <param name="Problems">Every problem, errors and warnings, by file, line, column.</param>
public sealed record Outcome<T>(T? Value, ImmutableArray<Problem> Problems)
    where T : class
{
    /// <summary>Whether the file can be used.</summary>
    public bool IsSound => Value is not null;
}
