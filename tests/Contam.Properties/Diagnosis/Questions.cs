using System.Collections.Immutable;
using Contam.Diagnosis;
using Contam.Families;
using Contam.Support;
using Contam.Support.Generation;

namespace Contam.Properties.Diagnosis;

/// <summary>Random questions about suspects: the random systems, with looks of what is shed and found besides.</summary>
internal static class Questions
{
    internal static void ForEach(Action<SuspectQuestion> rule, int runs = ForEvery.Usual, int mostParts = 30) => ForEvery.Case(
        asked =>
        {
            Random random = ForEvery.ChanceFor(asked);
            foreach (Debris debris in asked.Asked)
                rule(Of(asked, debris, random));
        },
        runs,
        mostParts);

    internal static SuspectQuestion Of(TestCase asked, Debris debris, Random random)
    {
        Part[] parts = [.. asked.Family.Parts.Select(part => part with { Sheds = [.. part.Sheds.Select(shed => shed with { Form = SomeForm(random), Magnetic = SomeMagnetism(random) })] })];
        // Conditional joints that wait for a part which sheds are what sets one suspect apart from another.
        ImmutableArray<Joint> joints = [.. asked.Family.Joints.Select(joint => random.Next(10) == 0 ? joint with { OnlyIfFailed = random.Of(parts).Id } : joint)];
        Family family = SystemBuilder.Build(parts, joints, asked.Family.States);
        var findings = asked.Findings.ToList();
        for (int i = random.Next(4); i > 0; i--)
            findings.Add(new Finding(random.Of(parts).Id, debris, random.Next(2) == 0) { Size = debris.HasSize && random.Next(3) == 0 ? ParticleSize.FromMicrometres(random.Of([1, 20, 50, 400])) : null });
        return new SuspectQuestion(family, debris, asked.Standard)
        {
            Findings = [.. findings.Select(finding => finding.Found ? finding with { Form = SomeForm(random), Magnetic = SomeMagnetism(random) } : finding with { Size = null })],
            Failed = random.Next(3) == 0 ? [random.Of(parts).Id] : [],
        };
    }

    private static DebrisForm? SomeForm(Random random) => random.Next(6) is < 4 and var form ? (DebrisForm)form : null;

    private static bool? SomeMagnetism(Random random) => random.Next(3) switch { 0 => true, 1 => false, _ => null };
}
