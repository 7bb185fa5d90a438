using System.Collections.Immutable;
using Contam.Families;
using FsCheck;
using FsCheck.Fluent;

namespace Contam.Support.Generation;

/// <summary>Random systems with their questions, for properties. The same seed gives the same case, on any machine.</summary>
public static class Cases
{
    /// <summary>The largest system.</summary>
    public const int MostParts = 200;

    /// <summary>Cases of up to <paramref name="mostParts"/> parts, with a shrinker.</summary>
    public static Arbitrary<TestCase> UpTo(int mostParts) =>
        Arb.From(Gen.Choose(0, int.MaxValue - 1).Select(seed => Make(seed, mostParts)), CaseShrinker.Shrink);

    /// <summary>The case of this seed.</summary>
    public static TestCase Make(int seed, int mostParts = MostParts)
    {
        var random = new Random(seed);
        var traits = new Traits(random);
        ImmutableArray<Debris> own = random.Happens(0.4) ? [new Debris("carbon", random.Happens(0.7), random.Happens(0.5))] : [];
        Debris[] known = [Debris.Metal, Debris.Rubber, Debris.Water, .. own];
        Family family = MakeFamily(random, traits, known, SomeCount(random, mostParts));
        Debris[] asked = [.. known.Where(_ => random.Happens(0.4))];
        ImmutableArray<Debris> debris = asked.Length == 0 ? [random.Of(known)] : [.. asked];
        ImmutableArray<Finding> findings = SomeFindings(random, family, known, debris);
        var made = new TestCase(family, SomeFailed(random, family), debris)
        {
            Findings = findings,
            Standard = new StandardGrower(random).Grow(family, known, own),
            Technicians = random.Next(1, 4),
        };
        // Drawn by themselves, so that all else is as it would be without.
        made = made with { Own = SomeOwn(new Random(seed ^ 0x5EED), made.Failed, debris) };
        return made.IsSensible ? made : made with { Failed = [random.Of(family.Parts).Id] };
    }

    // A third of the failed parts say for themselves what they shed: nothing, or some of what is asked about, now and then with a size, and not all of one size.
    private static ImmutableArray<PartFailure> SomeOwn(Random random, ImmutableArray<PartId> failed, ImmutableArray<Debris> asked)
    {
        var own = ImmutableArray.CreateBuilder<PartFailure>();
        foreach (PartId part in failed.Where(_ => random.Happens(0.35)))
        {
            Debris[] shed = random.Happens(0.25) ? [] : [.. asked.Where(_ => random.Happens(0.6))];
            int first = random.Happens(0.3) ? random.Next(shed.Length + 1) : shed.Length;
            own.Add(new PartFailure(part) { Debris = [.. shed[..first]], UpTo = first > 0 ? SomeSize(random) : null });
            if (first < shed.Length)
                own.Add(new PartFailure(part) { Debris = [.. shed[first..]], UpTo = SomeSize(random) });
        }

        return own.ToImmutable();
    }

    private static ParticleSize? SomeSize(Random random) =>
        random.Happens(0.5) && random.Size() is { IsUnlimited: false } size && size > ParticleSize.Zero ? size : null;

    // Small systems are the ones in which two features meet; large ones find what only length or number brings.
    private static int SomeCount(Random random, int most) => random.Next(3) switch
    {
        0 => random.Next(1, Math.Min(10, most) + 1),
        1 => random.Next(1, Math.Min(50, most) + 1),
        _ => random.Next(1, most + 1),
    };

    private static Family MakeFamily(Random random, Traits traits, IReadOnlyList<Debris> known, int count)
    {
        var grower = new PartGrower(random, traits, known);
        List<Part> parts = grower.WithAccess(grower.Grow(count));
        IReadOnlyList<Joint> joints = new JointGrower(random, traits, [.. parts.Select(part => part.Id)]).Grow();
        EngineStates states = random.Happens(0.7) ? EngineStates.All : (EngineStates)random.Next(1, 8);
        if (!traits.IsShuffled)
            return SystemBuilder.Build(parts, joints, states);

        // Access stands in file order, so it is put in order again.
        Part[] shuffled = random.Shuffled(parts);
        return SystemBuilder.Build(
            shuffled.Select(part => part with { Access = [.. shuffled.Select(other => other.Id).Where(part.Access.Contains)] }), joints, states);
    }

    private static ImmutableArray<PartId> SomeFailed(Random random, Family family)
    {
        int count = random.Of([0, 1, 1, 1, 1, 2, 3, 4]);
        return [.. random.Shuffled(family.Parts).Take(count).OrderBy(part => family.IndexOf(part.Id)).Select(part => part.Id)];
    }

    private static ImmutableArray<Finding> SomeFindings(Random random, Family family, IReadOnlyList<Debris> known, ImmutableArray<Debris> asked)
    {
        int count = random.Of([0, 0, 1, 3, 8, family.Parts.Length / 4]);
        double found = random.Of([0, 0.1, 0.4]);
        return [.. Enumerable.Range(0, count).Select(_ => new Finding(
            random.Of(family.Parts).Id,
            random.Happens(0.9) ? random.Of(asked) : random.Of(known),
            random.Happens(found))
        {
            Size = random.Happens(0.2) ? random.Size() : null,
        }
        ).Select(finding => finding.Found && finding.Debris.HasSize ? finding : finding with { Size = null })];
    }
}
