namespace Contam.Families.Reading.Sheets;

/// <summary>
/// How much a reader takes in before it refuses. The defaults leave room for any engine and keep a hostile file from filling memory.
/// Each is at least 1.
/// </summary>
public sealed record ReadLimits
{
    /// <summary>The defaults.</summary>
    public static ReadLimits Default { get; } = new();

    /// <summary>Most bytes of a file and all its modules together; 4 MiB.</summary>
    public int FileBytes { get; init; } = 4 * 1024 * 1024;

    /// <summary>Most values (texts, lists and mappings) of a file and all its modules together.</summary>
    public int Values { get; init; } = 500_000;

    /// <summary>How deep lists and mappings may stand in one another.</summary>
    public int Nesting { get; init; } = 64;

    /// <summary>Most parts, repeats written out.</summary>
    public int Parts { get; init; } = 200_000;

    /// <summary>Most joints, and as many limits, entries of <c>access</c> and seals, repeats written out.</summary>
    public int Joints { get; init; } = 1_000_000;

    /// <summary>How often a repeated part may stand.</summary>
    public int Count { get; init; } = 10_000;

    /// <summary>How deep modules may use modules; the family file is at depth 0.</summary>
    public int ModuleDepth { get; init; } = 8;

    /// <summary>How often modules may be used in all.</summary>
    public int ModuleUses { get; init; } = 1_000;

    /// <summary>How many problems are told; one more says that there are others.</summary>
    public int Problems { get; init; } = 1_000;
}
