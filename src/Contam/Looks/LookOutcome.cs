using System.Collections.Immutable;
using System.Globalization;

namespace Contam.Looks;

/// <summary>What became of a deciding look.</summary>
internal enum LookOutcome
{
    /// <summary>Every place was seen and clean of all debris.</summary>
    Clean,

    /// <summary>Debris was found.</summary>
    Found,

    /// <summary>It hangs on looks that were clean, so it was not made.</summary>
    NotDue,

    /// <summary>Not made, because it would change nothing: a find elsewhere speaks against a clean one here, or shows too late that it is due. Counts as found.</summary>
    Settled,

    /// <summary>Every place was clean, but a find made since speaks against it. Counts as found; the clean places clear nothing.</summary>
    Void,
}

/// <summary>One way in which all looks can come out, in order of work.</summary>
internal sealed record LookHistory(ImmutableArray<LookOutcome> Outcomes)
{
    /// <summary>The looks, as bits, that count as having found debris in every condition.</summary>
    public int CountsAsFound { get; } = Outcomes.Select((outcome, look) => outcome is LookOutcome.Found or LookOutcome.Settled or LookOutcome.Void ? LookMask.Of(look) : 0).Sum();

    /// <summary>Whether a condition is met in it.</summary>
    public bool Meets(LookCondition condition) => condition.IsMetWhere(look => (CountsAsFound & LookMask.Of(look)) != 0);

    /// <summary>The outcomes: <c>A clean, B found</c>.</summary>
    public override string ToString() => string.Join(", ", Outcomes.Select((outcome, look) => string.Create(CultureInfo.InvariantCulture, $"{LookCondition.LetterOf(look)} {outcome}")));
}
