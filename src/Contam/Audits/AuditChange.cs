using System.Collections.Immutable;
using Contam.Problems;

namespace Contam.Audits;

/// <summary>What is otherwise than in an earlier audit.</summary>
/// <param name="New">Messages that were not there; one whose severity rose counts as new.</param>
/// <param name="Gone">Messages that are there no more.</param>
/// <param name="Failures">Failures that came, went, or whose plan has changed.</param>
public sealed record AuditChange(ImmutableArray<AuditMessage> New, ImmutableArray<AuditMessage> Gone, ImmutableArray<ChangedFailure> Failures)
{
    /// <summary>How many of the new messages are errors.</summary>
    public int Errors => New.Count(message => message.Severity == Severity.Error);

    /// <summary>
    /// What has changed. A message is known again by code, family and what it is about, a failure by family, part and debris; how a message is worded does not count.
    /// </summary>
    public static AuditChange Between(ImmutableArray<AuditMessage> messagesBefore, ImmutableArray<AuditedFailure> failuresBefore, Audit now)
    {
        ArgumentNullException.ThrowIfNull(now);
        var known = messagesBefore.Select(KeyOf).ToHashSet();
        var still = now.Messages.Select(KeyOf).ToHashSet();
        var before = failuresBefore.GroupBy(KeyOf).ToDictionary(group => group.Key, group => group.First());
        var after = now.Failures.Select(KeyOf).ToHashSet();
        return new AuditChange(
            [.. now.Messages.Where(message => !known.Contains(KeyOf(message)))],
            [.. messagesBefore.Where(message => !still.Contains(KeyOf(message)))],
            [
                .. now.Failures.Select(failure => new ChangedFailure(before.GetValueOrDefault(KeyOf(failure)), failure)).Where(change => change.Before != change.Now),
                .. failuresBefore.Where(failure => !after.Contains(KeyOf(failure))).Select(failure => new ChangedFailure(failure, null)),
            ]);
    }

    private static (Severity, string, string?, string) KeyOf(AuditMessage message) => (message.Severity, message.Code, message.Family, message.About);

    private static (string, string, string) KeyOf(AuditedFailure failure) => (failure.Family, failure.Part, failure.Debris);
}

/// <summary>A failure whose plan has changed.</summary>
/// <param name="Before">What it came to; <c>null</c> where it is new.</param>
/// <param name="Now">What it comes to; <c>null</c> where it is there no more.</param>
public sealed record ChangedFailure(AuditedFailure? Before, AuditedFailure? Now);
