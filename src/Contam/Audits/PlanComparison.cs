using System.Collections.Immutable;
using Contam.Plans;

namespace Contam.Audits;

/// <summary>In what a part of two plans differs.</summary>
public enum Difference
{
    /// <summary>Only the first plan lists it.</summary>
    OnlyFirst,

    /// <summary>Only the second plan lists it.</summary>
    OnlySecond,

    /// <summary>Both list it, and it gets another treatment.</summary>
    Treatment,

    /// <summary>Both list it with the same treatment, and the debris comes less far in one.</summary>
    Grade,
}

/// <summary>A part in which two plans differ.</summary>
/// <param name="Part">Its id.</param>
/// <param name="Difference">In what.</param>
/// <param name="First">What the first plan says of it, or <c>null</c>.</param>
/// <param name="Second">What the second plan says of it, or <c>null</c>.</param>
/// <param name="Because">The rules, or the part or joint, that make the difference; a sentence without a full stop.</param>
public sealed record PartDifference(string Part, Difference Difference, PlanPart? First, PlanPart? Second, string Because);

/// <summary>Two plans for the same failure, laid side by side.</summary>
/// <param name="First">The first plan, without looks: all that could be reached is treated.</param>
/// <param name="Second">The second plan, without looks.</param>
/// <param name="Same">Parts that both list, as far reached and treated alike.</param>
/// <param name="Parts">Parts in which they differ, in the order of the first plan, then those of the second.</param>
/// <param name="HasOtherTimes">Whether some step that both have takes longer in one.</param>
/// <param name="HasOtherWords">Whether some step that both have is worded otherwise, or other cautions stand before it.</param>
public sealed record PlanComparison(PlanDocument First, PlanDocument Second, ImmutableArray<string> Same, ImmutableArray<PartDifference> Parts, bool HasOtherTimes, bool HasOtherWords)
{
    /// <summary>The hours of the first plan with its looks.</summary>
    public required LookHours FirstHours { get; init; }

    /// <summary>The hours of the second plan with its looks.</summary>
    public required LookHours SecondHours { get; init; }

    /// <summary>Whether the work at the bench differs: a part, a treatment, a step, a time, or what the looks decide.</summary>
    public bool IsChanged => Parts.Length > 0 || HasOtherTimes || First.Steps.Length != Second.Steps.Length || First.Hours.Bench != Second.Hours.Bench || FirstHours != SecondHours;

    /// <summary>The most bench hours of the second less those of the first.</summary>
    public double BenchHours => Math.Round(SecondHours.Most - FirstHours.Most, 2);
}
