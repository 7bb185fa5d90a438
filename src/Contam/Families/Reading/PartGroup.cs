using System.Collections.Immutable;
using System.Globalization;
using Contam.Families.Reading.Shapes;

namespace Contam.Families.Reading;

/// <summary>A part as a file describes it: one, or a repeated one with its count.</summary>
/// <param name="scope">Where it is described.</param>
/// <param name="entry">How it is described.</param>
/// <param name="first">The place of its first part among all parts.</param>
/// <param name="count">How often it stands; 0 for a part that is not repeated, <c>null</c> for a repeated one whose count is not known.</param>
internal sealed class PartGroup(Scope scope, Entry<string, Form> entry, int first, int? count)
{
    private readonly int start = entry.Key.Start;
    private readonly Form? form = entry.IsSound ? entry.Value.Value : null;
    private List<(int Number, Scope Scope, Form Form)>? adjusted;

    /// <summary>Where it is described.</summary>
    public Scope Scope { get; } = scope;

    /// <summary>Its key with everything that stands before it, for instance <c>port-injector-#</c>.</summary>
    public string Key { get; } = scope.Prefix + entry.Key.Value;

    /// <summary>Where it is described.</summary>
    public SourceSpan Place => Scope.File.Sheet.PlaceAt(start);

    /// <summary>Whether it was written with <c>-#</c>.</summary>
    public bool IsRepeated { get; } = count != 0;

    /// <summary>How many parts it stands for; 1 where that is not known.</summary>
    public int Count { get; } = Math.Max(count ?? 1, 1);

    /// <summary>Whether it is known how many parts it stands for. Where it is not, a problem was raised and numbers are not judged.</summary>
    public bool CountIsKnown { get; } = count is not null;

    /// <summary>The place of its first part among all parts.</summary>
    public int First { get; } = first;

    /// <summary>Its id without <c>-#</c>.</summary>
    public string BaseId => IsRepeated ? Key[..^2] : Key;

    /// <summary>The id of one of its parts.</summary>
    /// <param name="number">From 1; of no meaning for a part that is not repeated.</param>
    public string IdOf(int number) => IsRepeated ? string.Create(CultureInfo.InvariantCulture, $"{BaseId}-{number}") : Key;

    /// <summary>Lets a file change it.</summary>
    /// <param name="number">The part that is changed, from 1; 0 for all.</param>
    /// <param name="by">The scope of the file.</param>
    /// <param name="form">What it says.</param>
    public void Adjust(int number, Scope by, Form form) => (adjusted ??= []).Add((number, by, form));

    /// <summary>Everything that is said of one of its parts, what counts most first. Each form with the scope that its ids are looked for in.</summary>
    public ImmutableArray<(Scope Scope, Form Form)> SaidOf(int number)
    {
        if (adjusted is null)
            return form is null ? [] : [(Scope, form)];
        var said = ImmutableArray.CreateBuilder<(Scope Scope, Form Form)>(adjusted.Count + 1);
        for (int i = adjusted.Count - 1; i >= 0; i--)
        {
            if (adjusted[i].Number == 0 || adjusted[i].Number == number)
                said.Add((adjusted[i].Scope, adjusted[i].Form));
        }

        if (form is not null)
            said.Add((Scope, form));
        return said.DrainToImmutable();
    }
}
