using System.Collections.Immutable;
using Contam.Families;
using Contam.Support;
using Contam.Support.Generation;

namespace Contam.Properties.Engine;

/// <summary>
/// A random system with what metal adds to it: parts that stand on or ride on others, sets, wholes with parts inside, reservoirs, gears, parts that come
/// late, looks that need other access, take a part off or use it up, and tests that are made elsewhere. Drawn from the case alone.
/// </summary>
internal static class Mounted
{
    internal static TestCase Of(TestCase asked)
    {
        Random random = ForEvery.ChanceFor(asked);
        ImmutableArray<Part> parts = asked.Family.Parts;
        // Whatever a part waits for before it can come off stands further on in this list, so that nothing goes round in a circle.
        Part[] order = AccessFirst(parts, random);
        bool rides = random.Next(3) > 0;
        bool stands = !rides || random.Next(4) == 0;
        double rate = random.Next(4) switch { 0 => 0, 1 => 0.15, _ => 0.4 };
        var standsOn = new Dictionary<PartId, List<PartId>>();
        var ridesOn = new Dictionary<PartId, PartId>();
        var inside = new Dictionary<PartId, PartId>();
        for (int i = 0; i < order.Length - 1; i++)
        {
            PartId later = random.Of(order[(i + 1)..]).Id;
            if (stands && !rides && random.NextDouble() < rate)
                standsOn[later] = [.. standsOn.GetValueOrDefault(later, []), order[i].Id];
            else if (rides && random.NextDouble() < rate)
                ridesOn[order[i].Id] = later;
            else if (rides && random.NextDouble() < rate / 3)
                inside[order[i].Id] = later;
        }

        Dictionary<PartId, ImmutableArray<PartId>> sets = random.Next(2) == 0 ? [] : Sets(parts, random);
        double late = random.Next(2) * 0.2;
        return asked with
        {
            Family = SystemBuilder.Build(
                parts.Select(part => Decorated(part with
                {
                    StandsOn = [.. parts.Select(other => other.Id).Where(standsOn.GetValueOrDefault(part.Id, []).Contains)],
                    RidesOn = ridesOn.TryGetValue(part.Id, out PartId carrier) ? carrier : null,
                    Assembly = inside.TryGetValue(part.Id, out PartId whole) ? whole : null,
                    Together = sets.GetValueOrDefault(part.Id, []),
                    Lead = random.NextDouble() < late ? TimeSpan.FromDays(random.Next(1, 9)) : null,
                }, random)),
                asked.Family.Joints,
                asked.Family.States),
        };
    }

    private static Part Decorated(Part part, Random random)
    {
        Part made = part with
        {
            Kind = random.Next(8) switch
            {
                0 => part.Kind with { Name = "sump", IsReservoir = true },
                1 => part.Kind with { Name = "gear" },
                2 => part.Kind with { LookUsesUp = true },
                3 => part.Kind with { LookOpens = false },
                _ => part.Kind,
            },
            TestAt = random.Next(3) == 0 ? random.Of([TestAt.BuiltUp, TestAt.Fitted]) : TestAt.Bench,
        };
        return made.Inspect is { } look && random.Next(3) == 0 ? made with { Inspect = random.Next(2) == 0 ? look with { Access = [] } : look with { TakesOff = true } } : made;
    }

    private static Dictionary<PartId, ImmutableArray<PartId>> Sets(ImmutableArray<Part> parts, Random random)
    {
        var sets = new Dictionary<PartId, ImmutableArray<PartId>>();
        Part[] shuffled = random.Shuffled(parts);
        for (int i = 0; i + 1 < shuffled.Length; i += random.Next(2, 6))
        {
            PartId[] pair = [shuffled[i].Id, shuffled[i + 1].Id];
            if (pair.Any(sets.ContainsKey))
                continue;
            ImmutableArray<PartId> set = [.. parts.Select(part => part.Id).Where(pair.Contains)];
            sets[pair[0]] = sets[pair[1]] = set;
        }

        return sets;
    }

    private static Part[] AccessFirst(ImmutableArray<Part> parts, Random random)
    {
        var order = new List<Part>();
        var done = new HashSet<PartId>();
        foreach (Part part in random.Shuffled(parts))
            Visit(part);
        order.Reverse();
        return [.. order];

        void Visit(Part part)
        {
            if (!done.Add(part.Id))
                return;
            foreach (PartId access in part.Access)
                Visit(parts.First(other => other.Id == access));
            order.Add(part);
        }
    }
}
