using Contam.Families;
using Contam.Hosting;
using Contam.Jobs.Stores;
using Contam.Plans;
using Contam.Proof;
using Contam.Support;
using Contam.Treatment;
using Microsoft.Extensions.DependencyInjection;

namespace Contam.Jobs.Tests.Hosting;

/// <summary>A host that builds on the library: what it has after one line, and that what it has of its own stays.</summary>
public class A_host
{
    [Fact]
    public void Reads_plans_and_verifies_by_what_one_line_registers()
    {
        using ServiceProvider services = new ServiceCollection().AddContam().BuildServiceProvider();
        var reader = services.GetRequiredService<ISystemReader>();
        ShopStandard standard = reader.ReadStandard(RepositoryFiles.At("systems/standards/north-quay.yaml")).Value!;
        Family family = reader.ReadFamily(RepositoryFiles.At("systems/families/outboard-gearcase.yaml"), standard).Value!;
        var request = new PlanRequest(family, standard, [new PartId("pinion")], [Debris.Metal]) { MostLooks = HowFar.MostLooks };

        PlanDocument plan = services.GetRequiredService<IPlanner>().Plan(request);

        Assert.Equal(PlanJson.Write(Planner.Plan(request)), PlanJson.Write(plan));
        Assert.Equal(PlanVerifier.Verify(plan, family).Claims, services.GetRequiredService<IPlanVerifier>().Verify(plan, family, []).Claims);
        Assert.True(PlanVerifier.Verify(plan, family).Holds);
        Assert.Equal("house", reader.ReadStandard(null).Value!.Id);
    }

    [Fact]
    public void Is_told_what_is_wrong_with_a_file()
    {
        using ServiceProvider services = new ServiceCollection().AddContam().BuildServiceProvider();
        var reader = services.GetRequiredService<ISystemReader>();

        Assert.Null(reader.ReadStandard("no/such.yaml").Value);
        Assert.NotEmpty(reader.ReadFamily("no/such.yaml", reader.ReadStandard(null).Value!).Problems);
    }

    [Fact]
    public void Opens_a_shop_and_may_keep_it_open_beside_another()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");
        using ServiceProvider services = new ServiceCollection().AddContam().BuildServiceProvider();
        var books = services.GetRequiredService<IJobBooks>();
        using (JobBook one = books.Open(Path.Combine(folder.FullName, "one.db"), ShopUse.Create))
        using (JobBook other = books.Open(Path.Combine(folder.FullName, "other.db"), ShopUse.Create))
        {
            Assert.NotEqual(one.Place, other.Place);
            Assert.Empty(one.List());
        }

        folder.Delete(recursive: true);
    }

    [Fact]
    public void Keeps_what_it_has_registered_itself()
    {
        var clock = new StoppedClock();
        var planner = new CountingPlanner();
        using ServiceProvider services = new ServiceCollection().AddSingleton<TimeProvider>(clock).AddSingleton<IPlanner>(planner).AddContam().AddContam().BuildServiceProvider();

        Assert.Same(clock, services.GetRequiredService<TimeProvider>());
        Assert.Same(planner, Assert.Single(services.GetServices<IPlanner>()));
    }

    private sealed class StoppedClock : TimeProvider;

    private sealed class CountingPlanner : IPlanner
    {
        public PlanDocument Plan(PlanRequest request) => Planner.Plan(request);
    }
}
