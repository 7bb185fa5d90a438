using Contam.Jobs.Tests.Stores;

namespace Contam.Jobs.Tests;

/// <summary>Several processes at one server.</summary>
public sealed class Several_at_once_at_a_server : SeveralAtOnce
{
    private protected override JobBench WithJob() => JobBench.WithJob(place: PostgresServer.Get().NewDatabase());
}
