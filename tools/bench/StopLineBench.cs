using Contam.Families;
using Contam.StopLines;
using Contam.Treatment.Reading;

/// <summary>How long a stop line takes on systems larger than an engine.</summary>
internal static class StopLineBench
{
    /// <summary>Three shapes of so many parts: chains with joints astray, one long line with few looks, and a grid, on which most parts can be looked at.</summary>
    public static void Run(int parts, Func<int, Action, double> median)
    {
        foreach ((string shape, Family family) in new[] { ("chains", Chains(parts)), ("line", Line(parts)), ("grid", Grid(parts)) })
        {
            var question = new StopLineQuestion(family, BuiltInStandards.HouseOverKinds, [family.Parts[0].Id], [Debris.Metal]);
            StopLine? line = null;
            double took = median(5, () => line = StopLineFinder.Of(question));
            Console.WriteLine($"stop line, {shape}, {parts:N0} parts, {family.Joints.Length:N0} joints: {took:0} ms; {line!.Looks.Length:N0} looks spare {line.Clears.Length:N0} parts");
        }
    }

    private static Family Chains(int count)
    {
        var random = new Random(1);
        return Make(count, i => random.Next(4) == 0, i =>
        [
            (i + 1) % count,
            Math.Min(count - 1, i + 1 + random.Next(20)),
            random.Next(5) == 0 ? random.Next(count) : Math.Min(count - 1, i + 1 + random.Next(20)),
        ]);
    }

    private static Family Line(int count) => Make(count, i => i % 1000 == 500, i => i + 1 < count ? [i + 1] : []);

    private static Family Grid(int count)
    {
        int side = (int)Math.Sqrt(count);
        return Make(side * side, i => i % 7 != 3, i =>
        [
            .. (i + 1) % side == 0 ? Array.Empty<int>() : [i + 1],
            .. i + side < side * side ? [i + side] : Array.Empty<int>(),
            .. i + side + 1 < side * side ? [i + side + 1] : Array.Empty<int>(),
        ]);
    }

    private static Family Make(int count, Func<int, bool> canLook, Func<int, int[]> leadsTo)
    {
        var random = new Random(2);
        var kind = new Kind("part", new SourceSpan("bench", 1, 1));
        Part[] parts = [.. Enumerable.Range(0, count).Select(i => new Part(new PartId($"p{i}"), kind, kind.Place)
        {
            Inspect = canLook(i) ? new Inspection(1 + random.Next(400), Shows.Good, "", null) : null,
            Minutes = new TaskMinutes { Clean = random.Next(60) },
            ClearedBy = random.Next(10) == 0 ? ClearedBy.Nothing : ClearedBy.OneLook,
        })];
        var joints = new List<Joint>(3 * count);
        for (int i = 0; i < count; i++)
        {
            foreach (int to in leadsTo(i))
                joints.Add(new Joint(joints.Count, parts[i].Id, parts[to].Id, "oil", kind.Place));
        }

        return new Family("bench", [.. parts], [new Circuit("oil", kind.Place)], [.. joints]);
    }
}
