using System.Collections.Immutable;

namespace Contam.Families.Reading.Shapes;

/// <summary>Questions about sections whose keys are names that people choose.</summary>
internal static class Sections
{
    /// <summary>
    /// Whether everything that a section names is known: it is not there at all, or it was read and none of its names was dropped. Where it is
    /// not, a name that is not found may have been meant, and is not told as well.
    /// </summary>
    public static bool IsWhole<TKey, TValue>(Form form, Key<ImmutableArray<Entry<TKey, TValue>>> section)
        where TKey : notnull
        where TValue : notnull
    {
        if (!form.Has(section))
            return true;
        return form.Locate(section) is Located<ImmutableArray<Entry<TKey, TValue>>> read
            && form.WrittenIn(section) == read.Value.Length;
    }

    /// <summary>Whether a section that is a list is not there at all, or was read and none of its items was dropped.</summary>
    public static bool IsWhole(Form form, Key<ImmutableArray<Located<Form>>> section) => !form.Has(section)
        || (form.Locate(section) is Located<ImmutableArray<Located<Form>>> read && form.WrittenIn(section) == read.Value.Length);
}
