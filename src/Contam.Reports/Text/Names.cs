using Contam.Families;

namespace Contam.Reports.Text;

/// <summary>Names of parts for people.</summary>
internal sealed class Names(Family family)
{
    /// <summary>The name of a part, or its id where the family does not have it.</summary>
    public string Of(string id) => family.Find(new PartId(id))?.Name ?? id;

    /// <summary>The number of a repeated part, else 0.</summary>
    public int NumberOf(string id) => family.Find(new PartId(id))?.RepeatIndex ?? 0;

    /// <summary>The name without the number of a repeated part.</summary>
    public string WithoutNumber(string id)
    {
        string name = Of(id);
        string number = " " + NumberOf(id).ToString(System.Globalization.CultureInfo.InvariantCulture);
        return NumberOf(id) > 0 && name.EndsWith(number, StringComparison.Ordinal) ? name[..^number.Length] : name;
    }

    /// <summary>The name as it stands in a sentence.</summary>
    public string InSentence(string id)
    {
        string name = Of(id);
        return name.Length > 1 && char.IsUpper(name[0]) && char.IsLower(name[1]) ? char.ToLowerInvariant(name[0]) + name[1..] : name;
    }
}
