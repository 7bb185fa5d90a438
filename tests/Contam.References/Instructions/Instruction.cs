using Contam.Plans;
using Contam.Tests.Systems;

namespace Contam.References.Instructions;

/// <summary>What a published instruction wants done with some parts after a failure, and where the shipped plan does something else.</summary>
/// <param name="Source">Document, chapter or paragraph, page.</param>
/// <param name="Parts">Ids of the parts in the family that the instruction is held against; <c>a-1..4</c> stands for four.</param>
/// <param name="Wants">What it wants done.</param>
internal sealed record Instruction(string Source, string Parts, params TreatmentKind[] Wants)
{
    /// <summary>What the plan does instead, where that is not the same or more.</summary>
    public string Ours { get; init; } = "";

    /// <summary>Why that is as good or better. Stands where <see cref="Ours"/> does.</summary>
    public string Because { get; init; } = "";

    /// <summary>What is wrong between it and a plan, a line a part; empty where the plan does what it wants, or what is said to be done instead.</summary>
    public IEnumerable<string> Against(PlanDocument plan)
    {
        foreach (string id in Parts.Split(", ").SelectMany(HandWorkedCase.WrittenOut))
        {
            PlanPart? part = plan.Parts.SingleOrDefault(one => one.Id == id);
            if (part is null)
            {
                yield return $"{Source}: {id} is not on the list";
                continue;
            }

            string done = string.Join(", ", part.Treatment.Select(treatment => treatment.ToString().ToLowerInvariant()));
            bool isDone = Wants.All(part.Treatment.Contains);
            if (Ours.Length == 0 && !isDone)
                yield return $"{Source}: {id} is to be {string.Join(" and ", Wants)}, and the plan says {done}";
            else if (Ours.Length > 0 && done != Ours)
                yield return $"{Source}: {id} gets {done}, not {Ours} as is explained here";
            else if (Ours.Length > 0 && isDone)
                yield return $"{Source}: {id} gets what is wanted, so nothing is left to explain";
        }
    }
}
