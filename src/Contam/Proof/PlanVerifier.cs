using Contam.Families;
using Contam.Plans;

namespace Contam.Proof;

/// <summary>
/// Judges a plan against the engine family, afresh: shares no code with what makes plans, and reads nothing but the plan and the family.
/// </summary>
public static class PlanVerifier
{
    /// <summary>Whether this plan is complete and in a safe order.</summary>
    /// <param name="plan">The plan; any document at all, from whatever hand.</param>
    /// <param name="family">The family to hold it against.</param>
    /// <remarks>
    /// Linear in plan and family, but for sorting steps and sources and for what <see cref="StepSimulator.Play"/> says of flushes; a plan with looks costs that for
    /// each way in which they can come out, and is refused where these are more than <see cref="Outcomes.Most"/>, or the looks more than <see cref="PlanLooks.Most"/>.
    /// Not judged: whether the treatments are those of the shop's standard, and whether the standard accepts clean findings, as the plan does not carry the standard.
    /// </remarks>
    public static Verification Verify(PlanDocument plan, Family family) => Verify(plan, family, []);

    /// <summary>As above, with the sorts of debris that the shop's standard describes beside metal, rubber and water.</summary>
    public static Verification Verify(PlanDocument plan, Family family, IEnumerable<Debris> known)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(known);
        PlanReading reading = PlanReading.Read(plan, family, known);
        string? unclosed = reading.Problem ?? ClosedCheck.FirstFault(reading);
        string? untreated = TreatedCheck.FirstFault(plan, family);
        PlanLooks looks = PlanLooks.Read(plan, family);
        EveryHistory histories = looks.Problem is { } problem ? EveryHistory.Unplayed(problem)
            : looks.All.IsEmpty ? EveryHistory.Flat(OrderedCheck.FirstFault(plan, family, reading.Joints))
            : reading.Problem is { } unread ? EveryHistory.Unplayed(unread)
            : EveryHistory.Of(reading, looks, OrderedCheck.BeforeAnyLook(plan, looks, family));
        return new Verification(
        [
            new Claim(ClaimKind.Closed, unclosed ?? histories.Closed),
            new Claim(ClaimKind.Grounded, reading.Problem ?? GroundedCheck.FirstFault(reading)),
            new Claim(ClaimKind.Treated, untreated ?? histories.Treated),
            new Claim(ClaimKind.Ordered, histories.Ordered),
            new Claim(ClaimKind.SameFamily, OtherFamily(plan, family)),
        ])
        {
            Histories = histories.Histories,
        };
    }

    private static string? OtherFamily(PlanDocument plan, Family family)
    {
        if (plan.Family.Id != family.Id)
            return $"the plan is for {plan.Family.Id}, not for {family.Id}: its parts and joints are another engine's";
        return plan.Family.Sha256 == family.Sha256 ? null
            : $"the description of {family.Id} has been changed since the plan was made: its parts and joints may not be those planned for";
    }
}
