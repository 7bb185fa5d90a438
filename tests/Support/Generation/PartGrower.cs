using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;

namespace Contam.Support.Generation;

/// <summary>Makes parts with random attributes, in the order in which a run would name them.</summary>
internal sealed class PartGrower(Random random, Traits traits, IReadOnlyList<Debris> debris)
{
    internal List<Part> Grow(int count)
    {
        // Numbers out of order, so that a tie broken by id shows itself beside one broken by place in the file.
        int[] numbers = random.Shuffled(Enumerable.Range(1, count));
        var parts = new List<Part>(count);
        while (parts.Count < count)
        {
            int repeats = random.Happens(traits.Repeat) ? Math.Min(random.Next(2, 5), count - parts.Count) : 1;
            string stem = string.Create(CultureInfo.InvariantCulture, $"p{numbers[parts.Count]}");
            Part made = Make(new PartId(stem));
            for (int index = 1; index <= repeats; index++)
            {
                string id = string.Create(CultureInfo.InvariantCulture, $"{stem}-{index}");
                parts.Add(repeats == 1 ? made : made with
                {
                    Id = new PartId(id),
                    Name = id,
                    RepeatOf = stem,
                    RepeatIndex = index,
                });
            }
        }

        return parts;
    }

    /// <summary>The same parts, some of them with others in the way. Never in a circle.</summary>
    internal List<Part> WithAccess(List<Part> parts)
    {
        Part[] order = random.Shuffled(parts);
        var accessOf = new Dictionary<PartId, ImmutableArray<PartId>>();
        for (int i = 0; i < order.Length - 1; i++)
        {
            if (!random.Happens(traits.Access))
                continue;
            Part[] later = [.. order[(i + 1)..].Where(part => part.IsRemovable || random.Happens(traits.InPlaceAccess))];
            if (later.Length > 0)
                accessOf[order[i].Id] = [.. Enumerable.Range(0, random.Next(1, 4)).Select(_ => random.Of(later).Id).Distinct()];
        }

        // In file order, as the reader gives them.
        return [.. parts.Select(part => accessOf.TryGetValue(part.Id, out ImmutableArray<PartId> access)
            ? part with { Access = [.. parts.Select(other => other.Id).Where(access.Contains)] }
            : part)];
    }

    private Part Make(PartId id)
    {
        Kind kind = random.Happens(traits.Filter) ? ShopFloor.Filter : random.Happens(traits.InPlace) ? ShopFloor.Block : ShopFloor.Part;
        bool isRated = random.Happens(0.8);
        return new Part(id, kind, ShopFloor.Written(1))
        {
            IsRemovable = random.Happens(0.95) ? kind.IsRemovable : !kind.IsRemovable,
            ClearedBy = random.Happens(traits.Critical) ? ByTurns(id) : ClearedBy.OneLook,
            Sheds = [.. debris.Where(_ => random.Happens(traits.Sheds)).Select(MakeShed)],
            Holds = random.Happens(traits.Holds) ? [.. debris.Where(_ => random.Happens(0.7)).Select(MakeHold)] : [],
            RatingIsSaid = isRated,
            HasAbsoluteRating = isRated && random.Happens(0.75),
            HasBypass = random.Happens(0.2),
            Passage = random.Happens(traits.Passage) ? random.Size() : null,
            Clearance = random.Happens(traits.Clearance) ? random.Size() : null,
            Inspect = random.Happens(traits.Look) ? MakeLook() : null,
            Seals = random.Happens(traits.Seals) ? [.. Enumerable.Range(1, random.Next(1, 4)).Select(_ => random.Of(["o-ring", "gasket", "washer"]))] : [],
            SendOut = random.Happens(traits.SendOut) ? new SendOut(random.Of<double?>([null, 0.5, 2, 4]), "workshop", null) : null,
            Minutes = random.Happens(traits.Minutes) ? random.TaskMinutes() : TaskMinutes.None,
        };
    }

    // Without a further draw, so that every other draw of a case stays what it was.
    private static ClearedBy ByTurns(PartId id) => id.Value[^1] % 2 == 0 ? ClearedBy.TwoLooks : ClearedBy.Nothing;

    private Shed MakeShed(Debris shed) =>
        new(shed, (Likelihood)random.Next(3), shed.HasSize && random.Happens(0.6) ? random.Size() : ParticleSize.Unlimited);

    private Hold MakeHold(Debris held) =>
        new(held, held.HasSize && random.Happens(0.85) ? random.Size() : ParticleSize.Zero, null);

    private Inspection MakeLook() =>
        new(random.Happens(0.7) ? random.Next(1, 30) : null, random.Of([Shows.Good, Shows.Good, Shows.Fair, Shows.Poor]), "", null);
}
