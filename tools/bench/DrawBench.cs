using System.Globalization;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Reports.Drawing;
using Contam.Reports.Markup;
using Contam.Treatment.Reading;

namespace Contam.Bench;

/// <summary>Pictures: the largest shipped family with every part by itself, and made-up ones of 200 and 2,000 parts. Due within 300 ms and 5 s.</summary>
internal static class DrawBench
{
    public static void Run(Func<int, Action, double> median)
    {
        string file = Path.Combine("systems", "families", "quay-diesel-v8.yaml");
        Family quay = FamilyReader.ReadFile(file, BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!;
        foreach ((string name, Family family, int runs) in new[] { ("quay-diesel-v8 unfolded", quay, 5), ("made up", Made(200), 5), ("made up", Made(2_000), 3) })
        {
            long bytes = 0;
            double time = median(runs, () =>
            {
                using var text = new StringWriter();
                CircuitSvg.Write(family, [], [], new PictureOptions { Unfold = true }, new MarkupWriter(text));
                bytes = text.GetStringBuilder().Length;
            });
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"draw {name}, {family.Parts.Length} parts, {family.Joints.Length} joints: {time:0} ms, {bytes / 1024} kB"));
        }
    }

    // Rows of a hundred parts, every fourth with a second way on, every tenth with a way back.
    private static Family Made(int count)
    {
        var random = new Random(1);
        var kind = new Kind("part", new SourceSpan("bench", 1, 1));
        Part[] parts = [.. Enumerable.Range(0, count).Select(i => new Part(new PartId(string.Create(CultureInfo.InvariantCulture, $"p{i}")), kind, kind.Place))];
        var joints = new List<Joint>();
        void Join(int from, int to) => joints.Add(new Joint(joints.Count, parts[from].Id, parts[to].Id, "oil", kind.Place));
        for (int i = 0; i + 1 < count; i++)
        {
            if (i % 100 != 99)
                Join(i, i + 1);
            if (i % 4 == 0)
                Join(i, Math.Min(count - 1, i + 1 + random.Next(12)));
            if (i % 10 == 9)
                Join(i, Math.Max(0, i - 1 - random.Next(20)));
        }

        return new Family("made-up", [.. parts], [new Circuit("oil", kind.Place)], [.. joints]);
    }
}
