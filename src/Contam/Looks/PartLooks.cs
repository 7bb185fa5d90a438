using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Looks;

/// <summary>What a standard asks of a part for one debris as far as it has come, and when.</summary>
/// <param name="Debris">The debris.</param>
/// <param name="Situation">How far it has come.</param>
/// <param name="Choice">The treatments, and the rule they come from.</param>
/// <param name="When">When.</param>
internal sealed record GradeAsk(Debris Debris, Situation Situation, TreatmentChoice Choice, LookCondition When);

/// <summary>One treatment of a part, for whatever debris.</summary>
/// <param name="Treatment">The treatment.</param>
/// <param name="When">When it is done.</param>
internal sealed record ConditionalTreatment(TreatmentKind Treatment, LookCondition When);

/// <summary>A part that debris could have reached, with what it needs as the looks come out.</summary>
/// <param name="Part">The part.</param>
/// <param name="Treatments">In the order of <see cref="TreatmentKind"/>, each once; empty where what is on record clears it whatever the looks show.</param>
/// <param name="Asks">What is asked for each debris in each situation that can come about; in the order of the debris.</param>
internal sealed record PartLooks(Part Part, ImmutableArray<ConditionalTreatment> Treatments, ImmutableArray<GradeAsk> Asks)
{
    /// <summary>By what rule a failed part is made good that no debris comes to; else <c>null</c>, and <see cref="Asks"/> tells the rules.</summary>
    public Rule? MadeGoodBy { get; init; }

    /// <summary>When it is treated at all; <c>null</c> for never.</summary>
    public LookCondition? When => Treatments.IsEmpty ? null
        : Treatments.Any(one => one.When.OnlyIf.IsEmpty) ? LookCondition.Always
        : new LookCondition { OnlyIf = [.. Treatments.SelectMany(one => one.When.OnlyIf)] };

    /// <summary>What it gets where these looks count as having found debris.</summary>
    public ImmutableArray<TreatmentKind> In(LookHistory history) => [.. Treatments.Where(one => history.Meets(one.When)).Select(one => one.Treatment)];
}
