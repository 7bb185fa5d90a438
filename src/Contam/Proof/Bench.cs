namespace Contam.Proof;

/// <summary>How a part is, as far as the debris goes.</summary>
internal enum Condition
{
    /// <summary>Never reached, or done.</summary>
    Clean,

    /// <summary>Could be dirty; a look or a test will tell.</summary>
    Suspect,

    /// <summary>Taken to be dirty until it is cleaned.</summary>
    Dirty,
}

/// <summary>Where a part is.</summary>
internal enum Whereabouts
{
    /// <summary>In its place.</summary>
    On,

    /// <summary>Being taken off.</summary>
    ComingOff,

    /// <summary>Off.</summary>
    Off,

    /// <summary>Being put back.</summary>
    GoingOn,
}

/// <summary>
/// The engine as it stands while steps are played: where each part is, how each part is, and what a flow carries on.
/// Knows no rule of what may be done when.
/// </summary>
/// <param name="parts">How many parts there are, all on and clean.</param>
/// <param name="ground">What leads where and what goes with what.</param>
/// <param name="remembers">Whether a flow is spared what an earlier one has passed, as <see cref="Carry"/> says; without it the play is slower and the same.</param>
internal sealed class Bench(int parts, PlayGround ground, bool remembers)
{
    private readonly Condition[] condition = new Condition[parts];
    private readonly Whereabouts[] whereabouts = new Whereabouts[parts];
    private readonly bool[] swept = new bool[parts];
    private readonly bool[] wiped = new bool[parts];
    private readonly OpenJoints joints = ground.Joints;
    private readonly int[] carrierOf = ground.CarrierOf;
    private readonly int[] passedInWalk = new int[parts];
    private readonly Queue<int> toPass = new();
    private int walk;

    /// <summary>How many parts are not clean.</summary>
    internal int NotClean { get; private set; }

    /// <summary>How many parts are not in their place.</summary>
    internal int NotOn { get; private set; }

    internal Condition ConditionOf(int part) => condition[part];

    internal Whereabouts WhereaboutsOf(int part) => whereabouts[part];

    /// <summary>Whether something could flow through it: a part that is just being taken off or put back counts, as nobody knows how far it is.</summary>
    internal bool IsFitted(int part) => whereabouts[part] != Whereabouts.Off;

    /// <summary>Whether what a look at it would have shown has been cleaned off, flushed through or thrown away with the old part.</summary>
    internal bool IsWiped(int part) => wiped[part];

    /// <summary>Takes away what a look at it would show.</summary>
    internal void Wipe(int part) => wiped[part] = true;

    /// <summary>
    /// Where it is: -1 on the engine, else the part that it lies on the bench as, or with. A part that is just being taken off or put back counts as fitted.
    /// </summary>
    internal int PlaceOf(int part)
    {
        int at = part;
        while (at >= 0 && whereabouts[at] != Whereabouts.Off)
            at = carrierOf[at];
        return at;
    }

    /// <summary>Where it is fitted to, or is to be: -1 for the engine, else the part that its carrier lies on the bench as, or with.</summary>
    internal int SeatOf(int part) => carrierOf[part] < 0 ? -1 : PlaceOf(carrierOf[part]);

    /// <summary>What goes with a part when it is moved and they are not: rides on it or is inside of it, however many parts deep; by what was found first.</summary>
    internal IEnumerable<int> GoingWith(int part)
    {
        var queue = new Queue<int>([part]);
        while (queue.TryDequeue(out int carrier))
        {
            foreach (int rider in ground.RidersOf[carrier])
            {
                if (whereabouts[rider] == Whereabouts.Off)
                    continue;
                yield return rider;
                queue.Enqueue(rider);
            }
        }
    }

    internal void Become(int part, Condition next)
    {
        NotClean += (condition[part] == Condition.Clean ? 1 : 0) - (next == Condition.Clean ? 1 : 0);
        condition[part] = next;
        swept[part] &= next == Condition.Dirty;
    }

    internal void Move(int part, Whereabouts next)
    {
        NotOn += (whereabouts[part] == Whereabouts.On ? 1 : 0) - (next == Whereabouts.On ? 1 : 0);
        whereabouts[part] = next;
    }

    /// <summary>
    /// Carries debris from these parts over open joints to every part that is fitted to the same, engine or carrier, and on through it, except through those
    /// where the flow stops. All that is reached is dirty afterwards.
    /// </summary>
    /// <param name="from">Where it comes from. They stay as they are.</param>
    /// <param name="isBlanked">Whether a part is blanked off.</param>
    /// <returns>The parts that were clean, in the order in which they are reached.</returns>
    /// <remarks>
    /// A part once passed, with only dirty parts beyond it, is not passed again: as long as no fault has been found, a dirty part
    /// stays dirty while anything dirty leads into it, and nothing is put back behind it. So all flushes of a play together pass each
    /// part once, apart from what stands next to a flushed part; a flush that meets a blanked part counts for itself alone.
    /// </remarks>
    internal List<int> Carry(IReadOnlyList<int> from, Func<int, bool> isBlanked)
    {
        walk++;
        var wereClean = new List<int>();
        var passed = new List<int>();
        bool metOnlyDirty = remembers;
        foreach (int part in from)
        {
            passedInWalk[part] = walk;
            metOnlyDirty &= condition[part] == Condition.Dirty;
            toPass.Enqueue(part);
        }

        while (toPass.TryDequeue(out int part))
        {
            foreach (int joint in joints.Leaving(part))
            {
                int next = joints.To(joint);
                if (passedInWalk[next] == walk || swept[next] || PlaceOf(next) != PlaceOf(part))
                    continue;
                passedInWalk[next] = walk;
                if (isBlanked(next))
                {
                    metOnlyDirty = false;
                    continue;
                }

                if (condition[next] == Condition.Clean)
                    wereClean.Add(next);
                Become(next, Condition.Dirty);
                Wipe(next);
                passed.Add(next);
                toPass.Enqueue(next);
            }
        }

        if (metOnlyDirty)
        {
            foreach (int part in passed)
                swept[part] = true;
        }

        return wereClean;
    }

    /// <summary>The first part fitted to the same, engine or carrier, that leads into this one over an open joint and is not clean, apart from those excepted; -1 for none.</summary>
    internal int UncleanUpstreamOf(int part, Func<int, bool> isExcepted)
    {
        foreach (int joint in joints.Entering(part))
        {
            int upstream = joints.From(joint);
            if (condition[upstream] != Condition.Clean && PlaceOf(upstream) == PlaceOf(part) && !isExcepted(upstream))
                return upstream;
        }

        return -1;
    }
}
