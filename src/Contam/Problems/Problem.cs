using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Problems;

/// <summary>How much a problem matters.</summary>
public enum Severity
{
    /// <summary>The file or question cannot be used as it is.</summary>
    Error,

    /// <summary>It can be used, but something is likely forgotten.</summary>
    Warning,
}

/// <summary>
/// Something a person can mend: what is wrong, where, and what to do about it.
/// </summary>
/// <param name="Code">A stable code, for instance <c>unknown-key</c>; its meaning stands in <see cref="ProblemCodes"/>.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Place">Where it is, or <c>null</c> where there is no place (a file that is missing).</param>
/// <param name="Text">What is wrong, in the user's words, without the place.</param>
/// <param name="Mend">What to do about it; empty where the text says it all.</param>
public sealed record Problem(string Code, Severity Severity, SourceSpan? Place, string Text, string Mend)
{
    /// <summary>Other places that bear on it, for instance where the same id stands first.</summary>
    public ImmutableArray<SourceSpan> Related { get; init; } = [];
}
