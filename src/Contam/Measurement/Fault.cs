namespace Contam.Measurement;

/// <summary>
/// Why a sum has no answer: what was given, and what was expected, as one clause without a full stop
/// (<c>the bore is 0 mm; more than 0 mm was expected</c>). Two faults are equal when their texts are.
/// </summary>
/// <param name="Text">The clause.</param>
public sealed record Fault(string Text)
{
    /// <summary>The clause.</summary>
    public override string ToString() => Text;
}
