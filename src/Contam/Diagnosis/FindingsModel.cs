using System.Collections.Immutable;
using Contam.Families;

namespace Contam.Diagnosis;

/// <summary>
/// One failure at a time: every part that sheds the debris is a possible source, and each finding has a chance under each. The places are those of the
/// findings and every part with a look, each once, in the order of the family.
/// </summary>
internal sealed class FindingsModel
{
    private readonly ReachTable reach;
    private readonly Dictionary<PartId, int> placeOf;

    private FindingsModel(SuspectQuestion question, ImmutableArray<Finding> findings, Part[] sources, Part[] places, ReachTable reach)
    {
        Question = question;
        Findings = findings;
        Sources = sources;
        this.reach = reach;
        Sheds = [.. sources.Select(part => part.ShedOf(question.Debris)!)];
        placeOf = new Dictionary<PartId, int>(places.Length);
        for (int place = 0; place < places.Length; place++)
            placeOf[places[place].Id] = place;
        var seen = findings.Select(finding => finding.Part).Concat(question.CannotTell).ToHashSet();
        LooksLeft = [.. places.Where(part => part.Inspect is not null && !seen.Contains(part.Id))];
    }

    public SuspectQuestion Question { get; }

    /// <summary>The findings of the debris, in the order given.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>The parts that shed it, in file order.</summary>
    public Part[] Sources { get; }

    /// <summary>What each source sheds of it.</summary>
    public Shed[] Sheds { get; }

    /// <summary>Parts with a look that nobody has looked at yet, in file order.</summary>
    public Part[] LooksLeft { get; }

    public static FindingsModel Of(SuspectQuestion question)
    {
        Family family = question.Family;
        ImmutableArray<Finding> findings = [.. question.Findings.Where(finding => finding.Debris == question.Debris)];
        foreach (PartId part in question.Findings.Select(finding => finding.Part).Concat(question.Failed).Concat(question.CannotTell))
            _ = family[part];
        var seen = findings.Select(finding => finding.Part).ToHashSet();
        Part[] sources = [.. family.Parts.Where(part => part.ShedOf(question.Debris) is not null)];
        Part[] places = [.. family.Parts.Where(part => part.Inspect is not null || seen.Contains(part.Id))];
        return new FindingsModel(question, findings, sources, places, ReachOf(question, sources, [.. places.Select(part => family.IndexOf(part.Id))], shut: null));
    }

    /// <summary>What gets from every source, alone having failed, to these places, were nothing to get past or out of those that are shut.</summary>
    public ReachTable ReachTo(int[] places, IReadOnlySet<int>? shut) => ReachOf(Question, Sources, places, shut);

    private static ReachTable ReachOf(SuspectQuestion question, Part[] sources, int[] places, IReadOnlySet<int>? shut) => ReachTable.Of(
        question.Family,
        question.Debris,
        question.Failed.ToHashSet(),
        [.. sources.Select(part => question.Family.IndexOf(part.Id))],
        [.. sources.Select(part => question.Debris.HasSize ? part.ShedOf(question.Debris)!.UpTo.Micrometres : double.PositiveInfinity)],
        places,
        shut);

    /// <summary>A finding held against every source.</summary>
    public Evidence[] Weigh(Finding finding)
    {
        int place = placeOf[finding.Part];
        Part part = Question.Family[finding.Part];
        double shows = Question.History?.ChanceToShow(part, Question.Debris) ?? Chances.ToShow(part.Inspect);
        var evidence = new Evidence[Sources.Length];
        for (int source = 0; source < evidence.Length; source++)
            evidence[source] = Weigh(source, place, finding, shows);
        return evidence;
    }

    private Evidence Weigh(int source, int place, Finding finding, double shows)
    {
        if (!finding.Found)
            return Clean(source, place, finding, shows);
        double? arrives = reach.At(source, place);
        if (arrives is not { } size)
            return new Evidence(finding, EvidenceSort.NoWay, Chances.Stray, null);
        var largest = ParticleSize.FromMicrometres(size);
        // Where nothing at all gets past a barrier, a find of no said size was held back as well.
        if (size == 0 || finding.Size is { } seen && Question.Debris.HasSize && seen > largest)
            return new Evidence(finding, EvidenceSort.HeldBack, Chances.Stray, largest);
        int contradictions = Chances.Contradictions(finding, Sheds[source]);
        return new Evidence(finding, contradictions == 0 ? EvidenceSort.Fits : EvidenceSort.LooksOtherwise, Chances.ToShow(shows, contradictions), largest);
    }

    private Evidence Clean(int source, int place, Finding finding, double shows)
    {
        if (reach.At(source, place) is not { } size)
            return new Evidence(finding, EvidenceSort.CleanOutOfReach, 1, null);
        var largest = ParticleSize.FromMicrometres(size);
        return reach.IsExposed(source, place)
            ? new Evidence(finding, EvidenceSort.CleanThoughExposed, 1 - shows, largest)
            : new Evidence(finding, EvidenceSort.CleanBehindBarrier, 1, largest);
    }
}
