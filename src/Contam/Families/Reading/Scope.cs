using Contam.Families.Reading.Shapes;

namespace Contam.Families.Reading;

/// <summary>
/// One use of a file: the family file itself, or a module where it is used. Ids of a module are looked for in the module first, then in the
/// file that uses it, and so on up to the family file.
/// </summary>
/// <param name="parent">The scope that uses it; <c>null</c> for the family file.</param>
/// <param name="file">What the file says.</param>
/// <param name="use">How it is used; <c>null</c> for the family file.</param>
/// <param name="prefix">What stands before every id that the file brings, those of all scopes around it first.</param>
internal sealed class Scope(Scope? parent, Form file, Form? use, string prefix)
{
    /// <summary>The scope that uses it; <c>null</c> for the family file.</summary>
    public Scope? Parent { get; } = parent;

    /// <summary>What the file says.</summary>
    public Form File { get; } = file;

    /// <summary>How it is used; <c>null</c> for the family file.</summary>
    public Form? Use { get; } = use;

    /// <summary>What stands before every id that the file brings.</summary>
    public string Prefix { get; } = prefix;

    /// <summary>How deep it is; the family file is at 0.</summary>
    public int Depth { get; } = parent is null ? 0 : parent.Depth + 1;

    /// <summary>What this use alone puts before ids.</summary>
    public string OwnPrefix => Parent is null ? "" : Prefix[Parent.Prefix.Length..];

    /// <summary>Whether this scope is used by another, directly or not.</summary>
    public bool IsWithin(Scope other)
    {
        for (Scope? scope = Parent; scope is not null; scope = scope.Parent)
        {
            if (ReferenceEquals(scope, other))
                return true;
        }

        return false;
    }
}
