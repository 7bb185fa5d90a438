using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Support.Notation;

/// <summary>What has been read of a case so far.</summary>
internal sealed class CaseDraft
{
    private readonly List<PartId> order = [];
    private readonly Dictionary<PartId, string[]> attributesOf = [];
    private readonly List<Joint> joints = [];

    internal List<PartId> Failed { get; } = [];

    internal List<Func<PartFailure>> Own { get; } = [];

    internal List<string> Asked { get; } = [];

    internal List<Func<Finding>> Findings { get; } = [];

    internal List<Debris> OwnDebris { get; } = [];

    internal List<Rule> Rules { get; } = [];

    internal List<(string Kind, TaskMinutes Minutes)> Times { get; } = [];

    internal EngineStates States { get; set; } = EngineStates.All;

    internal CleanFindings? CleanFindings { get; set; }

    internal int Technicians { get; set; } = 1;

    internal void Mention(PartId part, string[] attributes)
    {
        if (!attributesOf.TryGetValue(part, out string[]? said))
            order.Add(part);
        else if (attributes.Length > 0 && said.Length > 0)
            throw new FormatException($"the attributes of '{part}' are given twice");
        if (attributes.Length > 0 || said is null)
            attributesOf[part] = attributes;
    }

    internal void Join(IEnumerable<Joint> read) => joints.AddRange(read);

    internal Debris DebrisOf(string name) =>
        OwnDebris.Concat([Debris.Metal, Debris.Rubber, Debris.Water]).FirstOrDefault(debris => debris.Name == name)
        ?? throw new FormatException($"no debris is called '{name}'");

    internal PartId Known(PartId part) =>
        attributesOf.ContainsKey(part) ? part : throw new FormatException($"no part is called '{part}'");

    internal TestCase Finish()
    {
        ImmutableArray<Part> parts = [.. order.Select(id => PartReader.Read(this, id, attributesOf[id]))];
        foreach (Joint joint in joints.Where(joint => joint.OnlyIfFailed is not null))
            Known(joint.OnlyIfFailed!.Value);
        return new TestCase(
            SystemBuilder.Build(parts, joints, States),
            [.. Failed.Select(Known)],
            Asked.Count == 0 ? [Debris.Metal] : [.. Asked.Select(DebrisOf)])
        {
            Own = [.. Own.Select(own => own())],
            Findings = [.. Findings.Select(finding => finding())],
            Technicians = Technicians,
            Standard = new ShopStandard
            {
                Id = "plain",
                Sha256 = "plain",
                Kinds = [.. ShopFloor.Kinds],
                CleanFindings = CleanFindings,
                Debris = [.. OwnDebris],
                Rules = [.. Rules],
                Times = [.. Times],
            },
        };
    }
}
