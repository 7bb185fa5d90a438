using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Support;
using Contam.Support.Generation;
using Contam.Treatment;

namespace Contam.Properties.Engine;

/// <summary>Cases with one thing changed, of which it is known what may come of it.</summary>
internal static class Changed
{
    /// <summary>Without one thing that holds debris back: a hold, a rating, a passage of a part or of a joint. The case itself where there is none.</summary>
    internal static TestCase WithoutABarrier(TestCase asked, Random random)
    {
        ImmutableArray<Part> parts = asked.Family.Parts;
        ImmutableArray<Joint> joints = asked.Family.Joints;
        int[] holders = [.. Enumerable.Range(0, parts.Length).Where(i => parts[i].Holds.Length > 0 || parts[i].Passage is not null)];
        int[] narrows = [.. Enumerable.Range(0, joints.Length).Where(i => joints[i].Passage is not null)];
        if (holders.Length + narrows.Length == 0)
            return asked;
        int choice = random.Next(holders.Length + narrows.Length);
        if (choice >= holders.Length)
            return WithJoints(asked, joints.SetItem(narrows[choice - holders.Length], joints[narrows[choice - holders.Length]] with { Passage = null }));
        Part part = parts[holders[choice]];
        Part weaker = random.Next(4) switch
        {
            0 => part with { Holds = [], Passage = null },
            1 => part with { HasAbsoluteRating = false, RatingIsSaid = false },
            2 => part with { HasBypass = true },
            _ => part with { Passage = null },
        };
        return WithParts(asked, parts.SetItem(holders[choice], weaker));
    }

    /// <summary>With one thing more that holds debris back.</summary>
    internal static TestCase WithABarrier(TestCase asked, Random random)
    {
        ImmutableArray<Part> parts = asked.Family.Parts;
        ImmutableArray<Joint> joints = asked.Family.Joints;
        if (joints.Length > 0 && random.Next(3) == 0)
        {
            int narrowed = random.Next(joints.Length);
            return WithJoints(asked, joints.SetItem(narrowed, joints[narrowed] with { IsLink = true, Passage = ParticleSize.FromMicrometres(random.Next(1, 50)) }));
        }

        int changed = random.Next(parts.Length);
        Part part = parts[changed];
        return WithParts(asked, parts.SetItem(changed, part with
        {
            Holds = [.. asked.Asked.Select(debris => new Hold(debris, debris.HasSize ? ParticleSize.FromMicrometres(random.Next(0, 50)) : ParticleSize.Zero, null))],
            HasAbsoluteRating = true,
            RatingIsSaid = true,
            HasBypass = false,
        }));
    }

    /// <summary>With one joint more.</summary>
    internal static TestCase WithAJoint(TestCase asked, Random random) => WithJoints(asked, asked.Family.Joints.Add(
        new Joint(0, random.Of(asked.Family.Parts).Id, random.Of(asked.Family.Parts).Id, "flow", ShopFloor.Written(1)) { IsLink = true }));

    /// <summary>With one failed part more. The case itself where all have failed.</summary>
    internal static TestCase WithAFailure(TestCase asked, Random random)
    {
        Part[] sound = [.. asked.Family.Parts.Where(part => !asked.Failed.Contains(part.Id))];
        return sound.Length == 0 ? asked : asked with { Failed = asked.Failed.Add(random.Of(sound).Id) };
    }

    /// <summary>Without one of the clean findings. The case itself where there is none.</summary>
    internal static TestCase WithoutACleanFinding(TestCase asked, Random random)
    {
        Finding[] clean = [.. asked.Findings.Where(finding => !finding.Found)];
        return clean.Length == 0 ? asked : asked with { Findings = asked.Findings.Remove(random.Of(clean)) };
    }

    /// <summary>With a clean finding of everything that is asked at one part, looked at well.</summary>
    internal static TestCase WithACleanFinding(TestCase asked, Random random)
    {
        int place = random.Next(asked.Family.Parts.Length);
        Part part = asked.Family.Parts[place] with { Inspect = new Inspection(5, Shows.Good, "", null) };
        return WithParts(asked, asked.Family.Parts.SetItem(place, part)) with
        {
            Findings = [.. asked.Findings, .. asked.Asked.Select(debris => new Finding(part.Id, debris, Found: false))],
        };
    }

    /// <summary>With a find of one debris at one part.</summary>
    internal static TestCase WithAFind(TestCase asked, Random random) => asked with
    {
        Findings = asked.Findings.Add(new Finding(random.Of(asked.Family.Parts).Id, random.Of(asked.Asked), Found: true)),
    };

    /// <summary>With joints that wait for no failure.</summary>
    internal static TestCase WithoutConditions(TestCase asked) =>
        WithJoints(asked, asked.Family.Joints.Select(joint => joint with { OnlyIfFailed = null }));

    /// <summary>With every joint written as a link of its own.</summary>
    internal static TestCase WithRunsSplit(TestCase asked) =>
        WithJoints(asked, asked.Family.Joints.Select(joint => joint with { IsLink = true }));

    /// <summary>With parts and joints in another order.</summary>
    internal static TestCase Reordered(TestCase asked, Random random)
    {
        Part[] parts = random.Shuffled(asked.Family.Parts);
        return asked with
        {
            Family = SystemBuilder.Build(
                parts.Select(part => part with { Access = [.. parts.Select(other => other.Id).Where(part.Access.Contains)] }),
                random.Shuffled(asked.Family.Joints),
                asked.Family.States),
            Failed = [.. random.Shuffled(asked.Failed)],
            Findings = [.. random.Shuffled(asked.Findings)],
        };
    }

    /// <summary>With other ids, and in the same order. Gives the new id of each old one.</summary>
    internal static (TestCase Asked, Func<PartId, PartId> NewIdOf) Renamed(TestCase asked, Random random)
    {
        int[] numbers = random.Shuffled(Enumerable.Range(1000, asked.Family.Parts.Length));
        Dictionary<PartId, PartId> newId = asked.Family.Parts.Select((part, index) => (part.Id, New: new PartId(string.Create(CultureInfo.InvariantCulture, $"n{numbers[index]}"))))
            .ToDictionary(entry => entry.Id, entry => entry.New);
        PartId Of(PartId part) => newId[part];
        ShopStandard standard = asked.Standard;
        return (asked with
        {
            Family = SystemBuilder.Build(
                asked.Family.Parts.Select(part => part with { Id = Of(part.Id), Name = Of(part.Id).Value, RepeatOf = null, RepeatIndex = 0, Access = [.. part.Access.Select(Of)] }),
                asked.Family.Joints.Select(joint => joint with { From = Of(joint.From), To = Of(joint.To), OnlyIfFailed = joint.OnlyIfFailed is { } condition ? Of(condition) : null }),
                asked.Family.States),
            Failed = [.. asked.Failed.Select(Of)],
            Own = [.. asked.Own.Select(own => own with { Part = Of(own.Part) })],
            Findings = [.. asked.Findings.Select(finding => finding with { Part = Of(finding.Part) })],
            Standard = new ShopStandard
            {
                Id = standard.Id,
                Sha256 = standard.Sha256,
                Kinds = standard.Kinds,
                Debris = standard.Debris,
                CleanFindings = standard.CleanFindings,
                Times = standard.Times,
                Rules = [.. standard.Rules.Select(rule => rule.For.Part is { } part ? rule with { For = rule.For with { Part = Of(new PartId(part)).Value } } : rule)],
            },
        }, Of);
    }

    private static TestCase WithJoints(TestCase asked, IEnumerable<Joint> joints) =>
        asked with { Family = SystemBuilder.Build(asked.Family.Parts, joints, asked.Family.States) };

    private static TestCase WithParts(TestCase asked, IEnumerable<Part> parts) =>
        asked with { Family = SystemBuilder.Build(parts, asked.Family.Joints, asked.Family.States) };
}
