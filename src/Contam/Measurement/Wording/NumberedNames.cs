using System.Globalization;

namespace Contam.Measurement.Wording;

/// <summary>Lists in which names that differ only in the number at their end stand as one.</summary>
public static class NumberedNames
{
    /// <summary>The names in their order; neighbours whose numbers rise by one as a range: <c>gasket 1</c>, <c>gasket 2</c>, <c>gasket 3</c> become <c>gasket 1–3</c>.</summary>
    public static IReadOnlyList<string> Folded(IEnumerable<string> names)
    {
        ArgumentNullException.ThrowIfNull(names);
        var folded = new List<string>();
        (string Words, int Number) last = ("", 0);
        int first = 0;
        foreach (string name in names)
        {
            (string Words, int Number) one = Parted(name);
            bool goesOn = one.Number > 0 && one.Number == last.Number + 1 && string.Equals(one.Words, last.Words, StringComparison.Ordinal);
            if (goesOn)
                folded[^1] = string.Create(CultureInfo.InvariantCulture, $"{one.Words} {first}–{one.Number}");
            else
                folded.Add(name);
            first = goesOn ? first : one.Number;
            last = one;
        }

        return folded;
    }

    // A name without a number, or with one that nobody counts to, is not folded.
    private static (string Words, int Number) Parted(string name) =>
        name.LastIndexOf(' ') is > 0 and var space && int.TryParse(name.AsSpan(space + 1), NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? (name[..space], number) : (name, 0);
}
