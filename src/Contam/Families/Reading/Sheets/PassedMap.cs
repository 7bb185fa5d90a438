using System.Diagnostics.CodeAnalysis;

namespace Contam.Families.Reading.Sheets;

/// <summary>A mapping that is read while it is gone through: each entry is there when it is asked for, and no entry is kept.</summary>
/// <param name="start">The index of its first character.</param>
/// <param name="parser">What reads it.</param>
/// <param name="depth">How many such mappings are open, this one among them.</param>
internal sealed class PassedMap(int start, SheetParser parser, int depth) : MapNode(start)
{
    private HashSet<string>? known = new(StringComparer.Ordinal);
    private int count;

    /// <inheritdoc/>
    public override int Count => count;

    /// <inheritdoc/>
    public override bool TryGet(int index, [NotNullWhen(true)] out TextNode? key, [NotNullWhen(true)] out SheetNode? value)
    {
        (key, value) = (null, null);
        if (known is not null && index == count && parser.TryPass(depth, known, out key, out value))
        {
            count++;
            return true;
        }

        known = null;
        return false;
    }
}
