namespace Contam.Families.Reading;

/// <summary>What an id stands for: every part of a group, or one of them.</summary>
/// <param name="Group">The group.</param>
/// <param name="Number">The one part, from 1; 0 for the whole group. A part that is not repeated is number 1.</param>
internal readonly record struct PartChoice(PartGroup Group, int Number)
{
    /// <summary>Whether it stands for a whole repeated group.</summary>
    public bool IsMany => Number == 0;

    /// <summary>The places of its parts among all parts.</summary>
    public IEnumerable<int> Indices => IsMany ? Enumerable.Range(Group.First, Group.Count) : [Group.First + Number - 1];

    /// <summary>The place of the one part that this means to an owner with this number: the one with the same number of a whole group, else the one part.</summary>
    public int IndexFor(int number) => Group.First + (IsMany ? number : Number) - 1;
}
