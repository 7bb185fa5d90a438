using Contam.Families;
using Contam.Plans;
using Contam.Problems;

namespace Contam.Audits;

/// <summary>Says why one plan lists a part and the other does not: follows the way there to the first hop that the other family has not.</summary>
internal static class WayDifference
{
    /// <param name="listed">The part, as the plan that lists it says.</param>
    /// <param name="family">The family of that plan.</param>
    /// <param name="other">The plan that does not list it.</param>
    /// <param name="otherFamily">Its family.</param>
    public static string Because(PlanPart listed, Family family, PlanDocument other, Family otherFamily)
    {
        if (otherFamily.Find(new PartId(listed.Id)) is null)
            return $"{otherFamily.Id} has no such part";
        var inOther = other.Parts.Select(part => part.Id).ToHashSet(StringComparer.Ordinal);
        for (int hop = 1; hop < listed.Path.Length; hop++)
        {
            // What is before the first part that the other plan has not is reached there too.
            if (inOther.Contains(listed.Path[hop]))
                continue;
            (PartId from, PartId to) = (new PartId(listed.Path[hop - 1]), new PartId(listed.Path[hop]));
            Joint? joint = family.Joints.FirstOrDefault(one => one.From == from && one.To == to && (one.OnlyIfFailed is not { } condition || other.Failed.Any(one => one.Part == condition.Value)))
                ?? family.Joints.FirstOrDefault(one => one.From == from && one.To == to);
            string written = joint is null ? "" : $" ({Shown(joint.Place)})";
            if (otherFamily.Find(to) is null)
                return $"{otherFamily.Id} has no {Wording.Quoted(to.Value)}, through which it comes{written}";
            return otherFamily.Joints.FirstOrDefault(one => one.From == from && one.To == to) is { } closed
                ? $"the joint {Wording.Quoted(from.Value)} to {Wording.Quoted(to.Value)}{written} is closed in {otherFamily.Id} ({Shown(closed.Place)})"
                : $"{otherFamily.Id} has no joint {Wording.Quoted(from.Value)} to {Wording.Quoted(to.Value)}{written}";
        }

        return $"nothing carries it there in {otherFamily.Id}";
    }

    private static string Shown(SourceSpan place) => $"{place.File}:{Wording.Number(place.Line)}";
}
