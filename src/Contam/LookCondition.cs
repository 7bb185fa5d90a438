using System.Collections.Immutable;

namespace Contam;

/// <summary>
/// When something is done that hangs on what deciding looks show. A look is named by its place in the order of work, from 0 (the one with the letter A).
/// Met when <see cref="OnlyIf"/> is empty or debris was found at any look of it, and debris was found at no look of <see cref="Unless"/>.
/// Two conditions are equal when they name the same looks.
/// </summary>
public sealed class LookCondition : IEquatable<LookCondition>
{
    private readonly ImmutableArray<int> onlyIf = [];
    private readonly ImmutableArray<int> unless = [];

    /// <summary>Met whatever is seen.</summary>
    public static LookCondition Always { get; } = new();

    /// <summary>Any of these looks must have found debris; rising, each once; empty for whatever is seen.</summary>
    public ImmutableArray<int> OnlyIf
    {
        get => onlyIf;
        init => onlyIf = [.. value.Distinct().Order()];
    }

    /// <summary>None of these looks may have found debris; rising, each once.</summary>
    public ImmutableArray<int> Unless
    {
        get => unless;
        init => unless = [.. value.Distinct().Order()];
    }

    /// <summary>Whether it is met whatever is seen.</summary>
    public bool IsAlways => onlyIf.IsEmpty && unless.IsEmpty;

    /// <summary>Whether it is met where these looks count as having found debris.</summary>
    public bool IsMetWhere(Func<int, bool> hasFound)
    {
        ArgumentNullException.ThrowIfNull(hasFound);
        return (onlyIf.IsEmpty || onlyIf.Any(hasFound)) && !unless.Any(hasFound);
    }

    /// <summary>Met at least where this one or the other is; the narrowest of the kind, so it may be met where neither is.</summary>
    internal LookCondition Or(LookCondition other)
    {
        if (IsAlways || Equals(other))
            return this;
        return other.IsAlways ? other : new LookCondition
        {
            OnlyIf = onlyIf.IsEmpty || other.onlyIf.IsEmpty ? [] : onlyIf.AddRange(other.onlyIf),
            Unless = [.. unless.Intersect(other.unless)],
        };
    }

    /// <summary>Whether it is met wherever the other is, as far as the looks that they name tell.</summary>
    internal bool Covers(LookCondition other) =>
        (onlyIf.IsEmpty || (!other.onlyIf.IsEmpty && other.onlyIf.All(look => onlyIf.Contains(look)))) && unless.All(look => other.unless.Contains(look));

    /// <summary>The looks that it names.</summary>
    internal IEnumerable<int> Looks => onlyIf.Union(unless);

    /// <inheritdoc/>
    public bool Equals(LookCondition? other) => other is not null && onlyIf.SequenceEqual(other.onlyIf) && unless.SequenceEqual(other.unless);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as LookCondition);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (int look in onlyIf)
            hash.Add(look);
        hash.Add(-1);
        foreach (int look in unless)
            hash.Add(look);
        return hash.ToHashCode();
    }

    /// <summary>The letters: <c>A C, not B</c>; <c>always</c> where there is none.</summary>
    public override string ToString() => IsAlways ? "always" : string.Join(", ", new[] { Letters(onlyIf), Letters(unless) is { Length: > 0 } not ? $"not {not}" : "" }.Where(text => text.Length > 0));

    /// <summary>The letter of a look: A for 0.</summary>
    public static char LetterOf(int look) => (char)('A' + look);

    private static string Letters(ImmutableArray<int> looks) => string.Join(' ', looks.Select(LetterOf));
}
