using System.Collections.Immutable;
using Contam.Diagnosis;
using Contam.Families;

namespace Contam.Properties.Diagnosis;

/// <summary>
/// Suspects straight from the definitions and slowly: what gets where by trying every size over joints until nothing changes, chances multiplied as
/// logarithms. Shares no code with the suspects or the spread.
/// </summary>
internal sealed class ReferenceSuspects(SuspectQuestion question)
{
    private readonly Dictionary<(PartId, PartId), double> reachOf = [];

    internal ImmutableArray<Part> Sources { get; } = [.. question.Family.Parts.Where(part => part.Sheds.Any(shed => shed.Debris == question.Debris))];

    /// <summary>The share of each source given these findings, in file order.</summary>
    internal double[] Shares(IEnumerable<Finding> findings)
    {
        Finding[] seen = [.. findings.Where(finding => finding.Debris == question.Debris)];
        double[] logs = [.. Sources.Select(source => Math.Log(ShedOf(source).Likely switch { Likelihood.Rare => 1, Likelihood.Occasional => 3, _ => 9 }) + seen.Sum(finding => Math.Log(Chance(source, finding))))];
        double sum = logs.Sum(log => Math.Exp(log - logs.Max()));
        return [.. logs.Select(log => Math.Exp(log - logs.Max()) / sum)];
    }

    internal double Chance(Part source, Finding finding)
    {
        Part place = question.Family[finding.Part];
        double shows = place.Inspect is null ? 0.3 : place.Inspect.Shows switch { Shows.Good => 0.9, Shows.Fair => 0.6, _ => 0.3 };
        double arrives = Reach(source, finding.Part);
        if (!finding.Found)
            return arrives == Largest(source) ? 1 - shows : 1;
        if (arrives <= 0 || question.Debris.HasSize && finding.Size is { } size && size.Micrometres > arrives)
            return 0.01;
        Shed shed = ShedOf(source);
        if (shed.Form is not null && finding.Form is not null && shed.Form != finding.Form)
            shows /= 10;
        if (shed.Magnetic is not null && finding.Magnetic is not null && shed.Magnetic != finding.Magnetic)
            shows /= 10;
        return shows < 0.01 ? 0.01 : shows;
    }

    /// <summary>The largest size in µm that gets there; -1 where no way leads there.</summary>
    internal double Reach(Part source, PartId place)
    {
        if (reachOf.TryGetValue((source.Id, place), out double known))
            return known;
        foreach (Part part in question.Family.Parts)
            reachOf[(source.Id, part.Id)] = -1;
        var sizes = new SortedSet<double> { 0, Largest(source) };
        foreach (double size in question.Family.Parts.Select(part => LetsOn(source, part)).Concat(question.Family.Joints.Select(LetsOn)).Where(size => size < Largest(source)))
            sizes.Add(size);
        foreach (double size in sizes)
        {
            foreach (PartId part in Reached(source, size))
                reachOf[(source.Id, part)] = size;
        }

        return reachOf[(source.Id, place)];
    }

    private HashSet<PartId> Reached(Part source, double size)
    {
        var reached = new HashSet<PartId> { source.Id };
        int before;
        do
        {
            before = reached.Count;
            foreach (Joint joint in question.Family.Joints.Where(joint => IsOpen(source, joint) && reached.Contains(joint.From) && LetsOn(joint) >= size && LetsOn(source, question.Family[joint.From]) >= size))
                reached.Add(joint.To);
        }
        while (reached.Count > before);
        return reached;
    }

    private bool IsOpen(Part source, Joint joint) =>
        (joint.When & question.Family.States) != 0 && (joint.OnlyIfFailed is null || joint.OnlyIfFailed == source.Id || question.Failed.Contains(joint.OnlyIfFailed.Value));

    private double LetsOn(Part source, Part part)
    {
        double size = double.PositiveInfinity;
        if (part.Id == source.Id)
            return size;
        foreach (Hold hold in part.Holds.Where(hold => hold.Debris == question.Debris && part.HasAbsoluteRating && !part.HasBypass))
            size = Math.Min(size, hold.Above.Micrometres);
        return part.Passage is { } passage && question.Debris.HasSize && question.Debris.IsHard ? Math.Min(size, passage.Micrometres) : size;
    }

    private double LetsOn(Joint joint) => joint.Passage is { } passage && question.Debris.HasSize && question.Debris.IsHard ? passage.Micrometres : double.PositiveInfinity;

    private double Largest(Part source) => question.Debris.HasSize ? ShedOf(source).UpTo.Micrometres : double.PositiveInfinity;

    private Shed ShedOf(Part source) => source.Sheds.First(shed => shed.Debris == question.Debris);
}
