using System.Collections.Immutable;

namespace Contam.Families;

/// <summary>
/// An engine family: its parts and how its fluids run through them. Immutable; everything stands in file order.
/// </summary>
public sealed class Family
{
    private readonly Dictionary<PartId, int> indexOf;
    private readonly int[] jointFrom;
    private readonly int[] jointTo;

    /// <summary>A family of these parts and joints. The reader makes sure that ids are unique and that joints name parts; this checks both.</summary>
    /// <exception cref="ArgumentException">Two parts bear one id, or a joint names a part that is not there or bears a number that is not its place.</exception>
    public Family(string id, ImmutableArray<Part> parts, ImmutableArray<Circuit> circuits, ImmutableArray<Joint> joints)
    {
        Id = id;
        Parts = parts;
        Circuits = circuits;
        Joints = joints;
        indexOf = new Dictionary<PartId, int>(parts.Length);
        for (int i = 0; i < parts.Length; i++)
        {
            if (!indexOf.TryAdd(parts[i].Id, i))
                throw new ArgumentException($"two parts are called {parts[i].Id}", nameof(parts));
        }

        jointFrom = new int[joints.Length];
        jointTo = new int[joints.Length];
        for (int i = 0; i < joints.Length; i++)
        {
            Joint joint = joints[i];
            if (joint.Id != i)
                throw new ArgumentException($"joint {joint.Id} stands at place {i}", nameof(joints));
            if (!indexOf.TryGetValue(joint.From, out jointFrom[i]) || !indexOf.TryGetValue(joint.To, out jointTo[i]))
                throw new ArgumentException($"joint {joint.From} to {joint.To} names a part that is not there", nameof(joints));
        }
    }

    /// <summary>Kebab-case id.</summary>
    public string Id { get; }

    /// <summary>Its title, for people.</summary>
    public string Title { get; init; } = "";

    /// <summary>What it is, in a line or two.</summary>
    public string About { get; init; } = "";

    /// <summary>SHA-256 of what was read, in lower-case hexadecimal: of the one file's bytes, or, with modules, of the list of each file's name and hash. Empty where nothing was read.</summary>
    public string Sha256 { get; init; } = "";

    /// <summary>The file it was read from, as the person named it. Empty where nothing was read.</summary>
    public string File { get; init; } = "";

    /// <summary>The files that it was read from, the family file first, each once. Empty where nothing was read.</summary>
    public ImmutableArray<SourceCopy> Sources { get; init; } = [];

    /// <summary>What sort of machine it is.</summary>
    public Machine Machine { get; init; }

    /// <summary>The states that this engine has.</summary>
    public EngineStates States { get; init; } = EngineStates.All;

    /// <summary>Its fluids.</summary>
    public ImmutableArray<Fluid> Fluids { get; init; } = [];

    /// <summary>Its parts, repeats written out.</summary>
    public ImmutableArray<Part> Parts { get; }

    /// <summary>Its circuits.</summary>
    public ImmutableArray<Circuit> Circuits { get; }

    /// <summary>Every way from part to part; <see cref="Joint.Id"/> is the place in this list.</summary>
    public ImmutableArray<Joint> Joints { get; }

    /// <summary>What readings are judged by.</summary>
    public ImmutableArray<Limit> Limits { get; init; } = [];

    /// <summary>The same family with these parts in place of its own.</summary>
    /// <param name="parts">As many parts, of the same ids in the same order.</param>
    /// <exception cref="ArgumentException">They are others.</exception>
    public Family WithParts(ImmutableArray<Part> parts) =>
        !parts.Select(part => part.Id).SequenceEqual(Parts.Select(part => part.Id))
            ? throw new ArgumentException("these are parts of another family", nameof(parts))
            : new Family(Id, parts, Circuits, Joints)
            {
                Title = Title,
                About = About,
                Sha256 = Sha256,
                File = File,
                Sources = Sources,
                Machine = Machine,
                States = States,
                Fluids = Fluids,
                Limits = Limits,
            };

    /// <summary>The place in <see cref="Parts"/> of every joint's upstream part, by the joint's number.</summary>
    internal ReadOnlySpan<int> JointFrom => jointFrom;

    /// <summary>The place in <see cref="Parts"/> of every joint's downstream part, by the joint's number.</summary>
    internal ReadOnlySpan<int> JointTo => jointTo;

    /// <summary>The place of this part in <see cref="Parts"/>, or -1.</summary>
    public int IndexOf(PartId id) => indexOf.TryGetValue(id, out int index) ? index : -1;

    /// <summary>The part of this id, or <c>null</c>.</summary>
    public Part? Find(PartId id) => indexOf.TryGetValue(id, out int index) ? Parts[index] : null;

    /// <summary>The part of this id.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public Part this[PartId id] => Find(id) ?? throw new KeyNotFoundException($"no part {id} in {Id}");
}
