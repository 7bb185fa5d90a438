using Contam.Families;

namespace Contam.Proof;

/// <summary>What of an engine family every play of steps needs: what leads where, and what stands on, rides on or is inside of what. Parts are meant by their place in the family.</summary>
internal sealed class PlayGround
{
    /// <summary>Linear in parts and joints.</summary>
    internal PlayGround(Family family, OpenJoints joints)
    {
        Family = family;
        Joints = joints;
        int count = family.Parts.Length;
        CarrierOf = [.. family.Parts.Select(part => part.RidesOn is { } carrier ? family.IndexOf(carrier) : part.Assembly is { } whole ? family.IndexOf(whole) : -1)];
        Standing = Enumerable.Range(0, count).SelectMany(part => family.Parts[part].StandsOn.Select(below => (Below: family.IndexOf(below), Part: part))).ToLookup(pair => pair.Below, pair => pair.Part);
        Riding = Enumerable.Range(0, count).Where(part => family.Parts[part].RidesOn is not null).ToLookup(part => family.IndexOf(family.Parts[part].RidesOn!.Value));
        RidersOf = Enumerable.Range(0, count).Where(part => CarrierOf[part] >= 0).ToLookup(part => CarrierOf[part]);
    }

    internal Family Family { get; }

    internal OpenJoints Joints { get; }

    /// <summary>For each part what it goes with when that comes off and it does not, or -1; never in a circle.</summary>
    internal int[] CarrierOf { get; }

    /// <summary>What stands on a part.</summary>
    internal ILookup<int, int> Standing { get; }

    /// <summary>What rides on a part.</summary>
    internal ILookup<int, int> Riding { get; }

    /// <summary>What goes with a part that is moved: rides on it or is inside of it.</summary>
    internal ILookup<int, int> RidersOf { get; }
}
