namespace Contam.Proof;

/// <summary>A part that is not clean when the work begins.</summary>
/// <param name="Part">Its place in the family.</param>
/// <param name="IsSuspect">Whether it is only looked at or tested, so that nobody knows yet whether it is dirty.</param>
/// <param name="IsLookedAt">Whether it is looked at.</param>
internal readonly record struct DirtyPart(int Part, bool IsSuspect, bool IsLookedAt)
{
    /// <summary>The part with these treatments.</summary>
    internal static DirtyPart Of(int part, IReadOnlyCollection<TreatmentKind> treatments) => new(
        part,
        treatments.Count > 0 && treatments.All(kind => kind is TreatmentKind.Inspect or TreatmentKind.Test),
        treatments.Contains(TreatmentKind.Inspect));
}
