namespace Contam.Jobs.Tests;

/// <summary>Several processes at one shop file.</summary>
public sealed class Several_at_once : SeveralAtOnce
{
    private protected override JobBench WithJob() => JobBench.WithJob();
}
