using System.Globalization;
using Contam.Diagnosis;
using Contam.Families;
using Contam.Treatment.Reading;

namespace Contam.Bench;

/// <summary>Suspects and the next look on a large family: 2,000 parts, all of which shed, 200 places to look at and 20 findings. Due within a second.</summary>
internal static class SuspectsBench
{
    public static (Family Family, SuspectQuestion Question) Make()
    {
        const int Parts = 2_000;
        var random = new Random(1);
        var kind = new Kind("part", new SourceSpan("bench", 1, 1));
        Part[] parts = [.. Enumerable.Range(0, Parts).Select(i => new Part(new PartId(string.Create(CultureInfo.InvariantCulture, $"p{i}")), kind, kind.Place)
        {
            Passage = i % 20 == 7 ? ParticleSize.FromMicrometres(1 + (i % 97)) : null,
            Sheds = [new Shed(Debris.Metal, (Likelihood)(i % 3), i % 4 == 0 ? ParticleSize.Unlimited : ParticleSize.FromMicrometres(10 + (i % 400)))],
            Inspect = i % 10 == 3 ? new Inspection(5 + (i % 30), (Shows)(i % 3), "", null) : null,
        })];
        var joints = new List<Joint>();
        void Join(int from, int to, int? onlyIfFailed = null) => joints.Add(new Joint(joints.Count, parts[from].Id, parts[to].Id, "oil", kind.Place) { OnlyIfFailed = onlyIfFailed is { } part ? parts[part].Id : null });
        for (int i = 0; i < Parts - 1; i++)
        {
            // Chains of a hundred, so that suspects differ in what they reach.
            if (i % 100 != 99)
                Join(i, i + 1);
            if (random.Next(4) == 0)
                Join(i, Math.Min(Parts - 1, i + 1 + random.Next(150)));
            if (random.Next(100) == 0)
                Join(i, random.Next(Parts), onlyIfFailed: random.Next(Parts));
        }

        var family = new Family("bench", [.. parts], [new Circuit("oil", kind.Place)], [.. joints]);
        Finding[] findings = [.. Enumerable.Range(0, 20).Select(i => new Finding(parts[random.Next(Parts)].Id, Debris.Metal, i % 2 == 0) { Size = i % 4 == 0 ? ParticleSize.FromMicrometres(60) : null })];
        return (family, new SuspectQuestion(family, Debris.Metal, BuiltInStandards.HouseOverKinds) { Findings = [.. findings] });
    }

    public static void Run(Func<int, Action, double> median)
    {
        (Family family, SuspectQuestion question) = Make();
        int looks = 0;
        double together = median(7, () => looks = Looking.Next(Suspecting.Of(question)).Length);
        double plan = median(3, () => Looking.Plan(Suspecting.Of(question), 0.9));
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"suspects, {family.Parts.Length:N0} parts, {family.Parts.Count(part => part.Inspect is not null)} places, {question.Findings.Length} findings, {looks} looks left: {together:0} ms (due: 1,000); with the looking plan {plan:0} ms"));
    }
}
