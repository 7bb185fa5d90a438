using System.Collections.Immutable;
using Contam.Families;
using Contam.Treatment;

namespace Contam.Audits;

/// <summary>What an audit goes through.</summary>
/// <param name="Families">The families, each once.</param>
/// <param name="Standard">The standard to plan by, its layers already joined.</param>
public sealed record AuditQuestion(ImmutableArray<Family> Families, ShopStandard Standard)
{
    /// <summary>How many failures are gone through at once, at least 1. The answer is the same for any number.</summary>
    public int Jobs { get; init; } = 1;

    /// <summary>Told after every failure how many are done, of how many; called from several threads at once where <see cref="Jobs"/> is above 1.</summary>
    public Action<int, int>? Progress { get; init; }
}
