using System.Collections.Immutable;
using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// What one debris meets in a family, with accepted clean findings counted or not: where it comes from, what each part and joint lets on,
/// and what follows for the grades. Parts are meant by their place in the family. Works from the plan's question, never from its answer.
/// </summary>
internal sealed class DebrisWorld
{
    private readonly DebrisPassages passages;
    private readonly OpenJoints joints;
    private readonly ParticleSize?[] shed;
    private readonly bool[] isAccepted;
    private readonly bool[] isFailed;
    private bool[]? passingFewerThanTwo;

    /// <summary>Linear in parts and joints. No accepted clean finding may be at a source.</summary>
    /// <param name="passages">What parts and joints let on.</param>
    /// <param name="failures">What failed.</param>
    /// <param name="found">The parts where the debris was found.</param>
    /// <param name="accepted">The parts with a clean finding that counts.</param>
    internal DebrisWorld(DebrisPassages passages, FailedParts failures, IEnumerable<int> found, IEnumerable<int> accepted)
    {
        this.passages = passages;
        joints = passages.Joints;
        shed = new ParticleSize?[passages.Family.Parts.Length];
        isAccepted = new bool[shed.Length];
        isFailed = new bool[shed.Length];
        foreach (int part in failures.Parts)
            isFailed[part] = true;
        Sources = [.. failures.ShedOf(passages), .. found.Select(part => (part, ParticleSize.Unlimited))];
        foreach ((int part, ParticleSize size) in Sources)
            shed[part] = shed[part] is { } other && other > size ? other : size;
        foreach (int part in accepted)
            isAccepted[part] = true;
    }

    /// <summary>The world of a plan's own question. Ids that the family does not have are left out.</summary>
    internal static DebrisWorld Of(DebrisPassages passages, PlanDocument plan, bool countCleanFindings)
    {
        ImmutableArray<PlanFinding> findings = [.. plan.Findings.OrEmpty().Where(finding => finding.Debris == passages.Debris.Name)];
        return new DebrisWorld(
            passages,
            new FailedParts(passages.Family, plan),
            passages.Family.Places(findings.Where(finding => finding.Found).Select(finding => finding.Part)),
            countCleanFindings ? passages.Family.Places(findings.Where(finding => finding is { Found: false, Accepted: true }).Select(finding => finding.Part)) : []);
    }

    /// <summary>Every source with the largest particle it sheds. A part that failed and where the debris was found too is two sources.</summary>
    internal ImmutableArray<(int Part, ParticleSize Size)> Sources { get; }

    /// <summary>The largest particle that a source sheds; <c>null</c> for a part that is none.</summary>
    internal ParticleSize? ShedBy(int part) => shed[part];

    /// <summary>The largest particle that gets out of a part over a joint, however large it came in. A source and a failed part hold nothing back.</summary>
    internal ParticleSize LetsOn(int joint)
    {
        int from = joints.From(joint);
        return shed[from] is not null || isFailed[from] ? passages.ThroughJoint(joint) : isAccepted[from] ? ParticleSize.Zero : passages.OutOfPart(joint);
    }

    /// <summary>Every part that is a source or lies beyond one over open joints. Linear.</summary>
    internal bool[] Reached() => Walked(joint => true);

    /// <summary>As <see cref="Reached"/>, but never past an accepted clean finding: what none of them clears, apart from where they were made.</summary>
    internal bool[] ReachedPastNoCleanFinding() => Walked(joint => !isAccepted[joints.From(joint)]);

    /// <summary>Where a piece of this size gets to from a source that sheds as much, over joints that let it on, out of parts that may be passed. Linear.</summary>
    internal bool[] Carried(ParticleSize size, Func<int, bool> isPassed)
    {
        bool[] carried = new bool[shed.Length];
        Walk(carried, Sources.Where(source => source.Size >= size).Select(source => source.Part), joint => isPassed(joints.From(joint)) && LetsOn(joint) >= size);
        return carried;
    }

    /// <summary>
    /// Whether every way to a part passes two accepted clean findings at least, one at the part itself among them. Ways past none are walked first; from the
    /// clean places where these end, ways past that one place are walked on. Linear, once for all parts.
    /// </summary>
    internal bool IsBehindTwoCleanPlaces(int part) => !(passingFewerThanTwo ??= PassingFewerThanTwo())[part];

    private bool[] PassingFewerThanTwo()
    {
        bool[] pastNone = ReachedPastNoCleanFinding();
        bool[] pastOne = new bool[pastNone.Length];
        var beyondOne = new List<int>();
        for (int part = 0; part < pastNone.Length; part++)
        {
            foreach (int joint in pastNone[part] && isAccepted[part] ? joints.Leaving(part) : [])
                beyondOne.Add(joints.To(joint));
        }

        Walk(pastOne, beyondOne, joint => !isAccepted[joints.From(joint)]);
        return [.. pastNone.Select((isPastNone, part) => isPastNone || (pastOne[part] && !isAccepted[part]))];
    }

    /// <summary>Whether any clean finding is counted.</summary>
    internal bool HasAccepted => Array.IndexOf(isAccepted, true) >= 0;

    /// <summary>Whether a clean finding at this very part is accepted.</summary>
    internal bool IsAccepted(int part) => isAccepted[part];

    /// <summary>
    /// Where some source's full size arrives. Linear but for sorting the sources: they are taken from the finest to the coarsest, and where a finer
    /// one has arrived at full size, a coarser one has nothing to add, as all it can pass from there the finer one has passed.
    /// </summary>
    internal bool[] Exposed()
    {
        bool[] exposed = new bool[shed.Length];
        foreach (IGrouping<ParticleSize, (int Part, ParticleSize Size)> level in Sources.GroupBy(source => source.Size).OrderBy(group => group.Key))
            Walk(exposed, level.Select(source => source.Part), joint => LetsOn(joint) >= level.Key);
        return exposed;
    }

    private bool[] Walked(Func<int, bool> passes)
    {
        bool[] walked = new bool[shed.Length];
        Walk(walked, Sources.Select(source => source.Part), passes);
        return walked;
    }

    private void Walk(bool[] walked, IEnumerable<int> from, Func<int, bool> passes)
    {
        var next = new Stack<int>();
        foreach (int part in from)
            Enter(part);
        while (next.TryPop(out int part))
        {
            foreach (int joint in joints.Leaving(part))
            {
                if (passes(joint))
                    Enter(joints.To(joint));
            }
        }

        void Enter(int part)
        {
            if (walked[part])
                return;
            walked[part] = true;
            next.Push(part);
        }
    }
}
