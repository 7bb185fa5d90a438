namespace Contam.Families.Reading;

/// <summary>What an id stands for: every part of a group, or one of them.</summary>
/// <param name="Group">The group.</param>
/// <param name="Number">The one part, from 1; 0 for the whole group. A part that is not repeated is number 1.</param>
internal readonly record struct PartChoice(PartGroup Group, int Number)
{
    /// <summary>Whether it stands for a whole repeated group.</summary>
    public bool IsMany => Number == 0;

    /// <summary>How many parts it stands for.</summary>
    public int Count => IsMany ? Group.Count : 1;

    /// <summary>The place of its first part among all parts; the others follow it.</summary>
    public int First => IndexFor(1);

    /// <summary>The place of the one part that this means to an owner with this number: the one with the same number of a whole group, else the one part.</summary>
    public int IndexFor(int number) => Group.First + (IsMany ? number : Number) - 1;
}
