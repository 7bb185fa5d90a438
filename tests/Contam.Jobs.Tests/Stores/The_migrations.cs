using Contam.Jobs.Stores;

namespace Contam.Jobs.Tests.Stores;

/// <summary>The tables' versions.</summary>
public class The_migrations
{
    [Fact]
    public void Are_as_many_for_every_store() => Assert.Equal(Migrations.Newest, Migrations.ForPostgres.Length);
}
