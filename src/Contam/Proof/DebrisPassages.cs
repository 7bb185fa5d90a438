using Contam.Families;

namespace Contam.Proof;

/// <summary>
/// What each joint of a family, with the part that it leaves, lets on of one debris, whoever failed and whatever was seen. Parts and joints are meant by their places.
/// </summary>
internal sealed class DebrisPassages
{
    private readonly ParticleSize[] outOfPart;
    private readonly ParticleSize[] throughJoint;
    private readonly ParticleSize[] shed;

    /// <summary>Linear in parts and joints.</summary>
    internal DebrisPassages(Family family, OpenJoints joints, Debris debris)
    {
        Family = family;
        Joints = joints;
        Debris = debris;
        shed = [.. family.Parts.Select(part => debris.HasSize ? part.ShedOf(debris)?.UpTo ?? ParticleSize.Unlimited : ParticleSize.Unlimited)];
        ParticleSize[] past = [.. family.Parts.Select(Past)];
        throughJoint = [.. joints.Joints.Select(joint => Narrowest(joint.Passage))];
        outOfPart = [.. throughJoint.Select((letsOn, joint) => ParticleSize.Min(letsOn, past[joints.From(joint)]))];
    }

    internal Family Family { get; }

    internal OpenJoints Joints { get; }

    internal Debris Debris { get; }

    /// <summary>The largest particle that a part sheds when it has failed.</summary>
    internal ParticleSize ShedBy(int part) => shed[part];

    /// <summary>The largest particle that gets into a part, out of it and over a joint.</summary>
    internal ParticleSize OutOfPart(int joint) => outOfPart[joint];

    /// <summary>The largest particle that gets over a joint out of a part that holds nothing back.</summary>
    internal ParticleSize ThroughJoint(int joint) => throughJoint[joint];

    private ParticleSize Past(Part part)
    {
        ParticleSize passage = Narrowest(part.Passage);
        return part is { HasAbsoluteRating: true, HasBypass: false } && part.HoldOf(Debris) is { } hold ? ParticleSize.Min(passage, hold.Above) : passage;
    }

    private ParticleSize Narrowest(ParticleSize? passage) =>
        passage is { } widest && Debris is { IsHard: true, HasSize: true } ? widest : ParticleSize.Unlimited;
}
