using System.Collections.Immutable;
using System.Numerics;
using Contam.Families;
using Contam.Properties.Engine;
using Contam.Properties.Spread;
using Contam.Support;
using Contam.Treatment;

namespace Contam.Properties.StopLines;

/// <summary>
/// The stop line by trying every choice of looks, each judged by the definition with a search of its own. For systems of a dozen parts; shares no code with the library.
/// </summary>
internal sealed class ReferenceStopLine
{
    private readonly TestCase asked;
    private readonly Dictionary<Debris, ReferenceSpread> spreads;
    private readonly HashSet<PartId> offAnyway;
    private readonly decimal[] treatmentMinutes;
    private readonly decimal[] lookMinutes;
    private readonly (int Sources, int Accepted)[] debris;
    private readonly int[] leadsTo;
    private readonly int listed;
    private readonly int stays;

    internal ReferenceStopLine(TestCase asked)
    {
        this.asked = asked;
        spreads = asked.Asked.ToDictionary(one => one, one => ReferenceSpread.Of(asked.Question(one)));
        debris = [.. asked.Asked.Select(one => (Mask(IsSource(one)), Mask(IsOnRecord(one))))];
        leadsTo = [.. Family.Parts.Select(part => Mask(other => Family.Joints.Any(joint => joint.From == part.Id && joint.To == other.Id && IsOpen(joint))))];
        stays = Mask(part => part.IsCritical || asked.Failed.Contains(part.Id) || asked.Asked.Any(one => IsSource(one)(part)));
        listed = Mask(part => !Treatments(part).IsEmpty);
        offAnyway = OffAnyway();
        treatmentMinutes = [.. Family.Parts.Select(TreatmentMinutes)];
        lookMinutes = [.. Family.Parts.Select(LookMinutes)];
        Places = Mask(part => asked.AcceptsCleanFindings && part.Inspect?.Shows == Shows.Good && !asked.Failed.Contains(part.Id) && !asked.Asked.Any(one => IsSource(one)(part)));
    }

    /// <summary>Where a clean finding of every debris would count.</summary>
    internal int Places { get; }

    private Family Family => asked.Family;

    /// <summary>The least that any choice costs.</summary>
    internal decimal Least => Choices().Min(CostOf);

    /// <summary>The choices that cost least.</summary>
    internal int[] LeastChoices()
    {
        decimal least = Least;
        return [.. Choices().Where(choice => CostOf(choice) == least)];
    }

    /// <summary>The parts of this set, as a choice.</summary>
    internal int Choice(IEnumerable<PartId> parts) => Mask(part => parts.Contains(part.Id));

    internal decimal CostOf(int looks) => Sum(lookMinutes, looks) + Sum(treatmentMinutes, listed & (stays | Open(looks)));

    /// <summary>What is treated today and would not be if these looks were clean.</summary>
    internal int SparedBy(int looks) => listed & ~stays & ~Open(looks);

    /// <summary>Where some debris still gets to past no look and no clean place on record.</summary>
    internal int Open(int looks)
    {
        int open = 0;
        foreach ((int sources, int accepted) in debris)
        {
            int shut = looks | accepted;
            int reached = sources & ~shut;
            for (int before = 0; before != reached;)
            {
                before = reached;
                for (int part = 0; part < leadsTo.Length; part++)
                    reached |= (before >> part & 1) == 1 ? leadsTo[part] & ~shut : 0;
            }

            open |= reached;
        }

        return open;
    }

    private IEnumerable<int> Choices()
    {
        // All subsets of the places, the empty one last.
        for (int choice = Places; choice > 0; choice = (choice - 1) & Places)
            yield return choice;
        yield return 0;
    }

    private static decimal Sum(decimal[] minutes, int set)
    {
        decimal sum = 0;
        for (; set != 0; set &= set - 1)
            sum += minutes[BitOperations.TrailingZeroCount(set)];
        return sum;
    }

    private int Mask(Func<Part, bool> isIn) => Family.Parts.Select((part, index) => isIn(part) ? 1 << index : 0).Aggregate(0, (one, other) => one | other);

    private bool IsOpen(Joint joint) =>
        (joint.When & Family.States) != EngineStates.None && (joint.OnlyIfFailed is not { } condition || asked.Failed.Contains(condition));

    private Func<Part, bool> IsSource(Debris one) => part => asked.Failures.Any(failure => failure.Part == part.Id && failure.Debris?.Contains(one) != false) || asked.Findings.Any(finding => finding.Found && finding.Part == part.Id && finding.Debris == one);

    private Func<Part, bool> IsOnRecord(Debris one) => part => asked.AcceptsCleanFindings && part.Inspect?.Shows == Shows.Good && !IsSource(one)(part) && !asked.Failed.Contains(part.Id)
        && asked.Findings.Any(finding => !finding.Found && finding.Part == part.Id && finding.Debris == one)
        && !new ReferenceContradictions(asked.Question(one)).Void.Contains(part.Id);

    private ImmutableArray<TreatmentKind> Treatments(Part part) => ReferenceTreatment.Of(asked, part, spreads);

    private static bool ComesOff(Part part, IReadOnlyList<TreatmentKind> treatments) =>
        treatments.Contains(TreatmentKind.Replace) || ((part.IsRemovable || part.SendOut is not null) && treatments.Any(one => one != TreatmentKind.Inspect));

    private decimal TreatmentMinutes(Part part)
    {
        ImmutableArray<TreatmentKind> treatments = Treatments(part);
        bool isAway = part.SendOut is not null && !treatments.Contains(TreatmentKind.Replace) && treatments.Any(one => one != TreatmentKind.Inspect);
        decimal minutes = ComesOff(part, treatments) ? OffAndOn(part) : 0;
        return isAway ? minutes : minutes + treatments.Sum(one => Task(part, minutesOf => one switch
        {
            TreatmentKind.Inspect => minutesOf.Inspect,
            TreatmentKind.Flush => minutesOf.Flush,
            TreatmentKind.Clean => minutesOf.Clean,
            TreatmentKind.Test => minutesOf.Test,
            _ => minutesOf.Replace,
        }));
    }

    private decimal LookMinutes(Part part) => Task(part, minutes => minutes.Inspect) + Behind(part.Inspect?.Access ?? part.Access).Except(offAnyway).Sum(id => OffAndOn(Family[id]));

    private decimal OffAndOn(Part part) => Task(part, minutes => minutes.Remove) + Task(part, minutes => minutes.Refit);

    private decimal Task(Part part, Func<TaskMinutes, double?> task) => (decimal)(task(part.Minutes)
        ?? task(new TaskMinutes { Inspect = part.Inspect?.Minutes })
        ?? asked.Standard.Times.Where(times => times.Kind == part.Kind.Name).Select(times => task(times.Minutes)).LastOrDefault()
        ?? task(part.Kind.Minutes)!.Value);

    /// <summary>What comes off whatever is found: what stays treated and comes off, and everything in the way of what stays treated.</summary>
    private HashSet<PartId> OffAnyway()
    {
        Part[] always = [.. Family.Parts.Where(part => !Treatments(part).IsEmpty && (part.IsCritical || asked.Failed.Contains(part.Id) || asked.Asked.Any(one => IsSource(one)(part))))];
        HashSet<PartId> off = [.. always.Where(part => ComesOff(part, Treatments(part))).Select(part => part.Id)];
        foreach (Part part in always)
            off.UnionWith(Behind(!off.Contains(part.Id) && Treatments(part) is [TreatmentKind.Inspect] && part.Inspect?.Access is { } own ? own : part.Access));
        return off;
    }

    private HashSet<PartId> Behind(IEnumerable<PartId> access)
    {
        HashSet<PartId> off = [.. access];
        for (int before = -1; before != off.Count;)
        {
            before = off.Count;
            off.UnionWith(off.SelectMany(id => Family[id].Access).ToArray());
        }

        return off;
    }
}
