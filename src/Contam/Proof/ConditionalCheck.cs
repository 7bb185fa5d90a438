using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// Whether the plan names every part that would be reached too if another part had failed, and whether what it names is so.
/// A part X is meant with the joints that wait for it; X does not become a source itself.
/// </summary>
internal sealed class ConditionalCheck
{
    private readonly PlanReading reading;
    private readonly ILookup<PartId, Joint> waitingFor;
    private readonly ILookup<string, PlanConditional> namedFor;

    private ConditionalCheck(PlanReading reading)
    {
        this.reading = reading;
        waitingFor = reading.Joints.Waiting.ToLookup(joint => joint.OnlyIfFailed!.Value);
        namedFor = reading.Plan.Conditional.OrEmpty().ToLookup(entry => entry.IfFailed, StringComparer.Ordinal);
    }

    /// <summary>
    /// The first part that is not named or is named wrongly, or <c>null</c>. Linear in family and plan, and in what each named part would let on.
    /// </summary>
    internal static string? FirstFault(PlanReading reading)
    {
        var check = new ConditionalCheck(reading);
        return check.NamedWrongly() ?? check.NotNamed() ?? check.NotNamedTogether();
    }

    private string? NamedWrongly()
    {
        foreach (PlanConditional named in reading.Plan.Conditional.OrEmpty())
        {
            PartId[] failed = [.. named.AlsoFailed.OrEmpty().Prepend(named.IfFailed).Select(id => new PartId(id)).Distinct()];
            foreach (PartId part in failed)
            {
                if (reading.Family.Find(part) is null)
                    return $"the plan asks about {part}, which this engine does not have: nobody could look at it";
            }

            HashSet<PartId>[] beyond = [.. reading.Debris.Select(claims => Beyond(claims, failed))];
            foreach (string part in named.Parts.OrEmpty())
            {
                if (!beyond.Any(reached => reached.Contains(new PartId(part))))
                    return $"{part} is said to be reached too if {string.Join(" and ", failed)} failed, but it is not: the wrong place would be looked at";
            }
        }

        return null;
    }

    private string? NotNamed()
    {
        foreach (PartId condition in waitingFor.Select(group => group.Key))
        {
            IEnumerable<PlanConditional> alone = namedFor[condition.Value].Where(entry => entry.AlsoFailed.OrEmpty().IsEmpty);
            if (FirstUnnamed([condition], alone) is { } part)
                return $"{part} is reached too if {condition} has failed, and the plan does not say so: nobody would look at {condition}";
        }

        return null;
    }

    private string? NotNamedTogether() =>
        FirstUnnamed([.. waitingFor.Select(group => group.Key)], reading.Plan.Conditional.OrEmpty()) is { } part
            ? $"{part} is reached too if several parts have failed, and the plan does not say so: nobody would look at them"
            : null;

    // What the plan lists anyway, for whichever debris, need not be named.
    private PartId? FirstUnnamed(PartId[] failed, IEnumerable<PlanConditional> entries)
    {
        HashSet<string> named = [.. entries.SelectMany(entry => entry.Parts.OrEmpty())];
        HashSet<int> missed = [];
        foreach (DebrisClaims claims in reading.Debris)
        {
            missed.UnionWith(Beyond(claims, failed)
                .Where(part => !named.Contains(part.Value))
                .Select(reading.Family.IndexOf)
                .Where(part => reading.Listed[part] is null));
        }

        return missed.Count == 0 ? null : reading.Family.Parts[missed.Min()].Id;
    }

    // The parts beyond those that the plan lists for a debris, if these parts had failed. Only what is not listed is walked.
    private HashSet<PartId> Beyond(DebrisClaims claims, PartId[] failed)
    {
        ILookup<PartId, PartId> opened = failed.SelectMany(part => waitingFor[part]).ToLookup(joint => joint.From, joint => joint.To);
        var beyond = new HashSet<PartId>();
        var next = new Stack<PartId>();
        foreach (IGrouping<PartId, PartId> joint in opened.Where(joint => IsListed(joint.Key)))
            Enter(joint);
        while (next.TryPop(out PartId part))
        {
            Enter(opened[part]);
            foreach (int joint in reading.Joints.Leaving(reading.Family.IndexOf(part)))
                Enter([reading.Joints.Joints[joint].To]);
        }

        return beyond;

        void Enter(IEnumerable<PartId> parts)
        {
            foreach (PartId part in parts)
            {
                if (!IsListed(part) && beyond.Add(part))
                    next.Push(part);
            }
        }

        bool IsListed(PartId part) => claims.Line[reading.Family.IndexOf(part)] is not null;
    }
}
