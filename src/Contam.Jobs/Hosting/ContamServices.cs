using Contam.Families.Reading.Sheets;
using Contam.Plans;
using Contam.Proof;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace Contam.Hosting;

/// <summary>Registers contam with a host: a shop's own system, a web page, a test. What the host has registered before stays.</summary>
public static class ContamServices
{
    /// <summary>
    /// Registers <see cref="ISystemReader"/>, <see cref="IPlanner"/>, <see cref="IPlanVerifier"/>, <see cref="IJobBooks"/> and the clock
    /// (<see cref="TimeProvider"/>), each once for all. None keeps anything between two calls, so any number of threads may share them; a
    /// <see cref="Jobs.JobBook"/> that is opened belongs to the one who opened it.
    /// </summary>
    /// <param name="services">Where to.</param>
    /// <param name="limits">How much is taken in from files; <c>null</c> for the defaults.</param>
    public static IServiceCollection AddContam(this IServiceCollection services, ReadLimits? limits = null)
    {
        ArgumentNullException.ThrowIfNull(services);
        services.TryAddSingleton(TimeProvider.System);
        services.TryAddSingleton<ISystemReader>(_ => new SystemReader(limits));
        services.TryAddSingleton<IPlanner>(_ => new StandingPlanner());
        services.TryAddSingleton<IPlanVerifier>(_ => new StandingVerifier());
        services.TryAddSingleton<IJobBooks>(_ => new StandingBooks());
        return services;
    }

    private sealed class StandingPlanner : IPlanner
    {
        public PlanDocument Plan(PlanRequest request) => Planner.Plan(request);
    }

    private sealed class StandingVerifier : IPlanVerifier
    {
        public Verification Verify(PlanDocument plan, Families.Family family, IEnumerable<Families.Debris> known) => PlanVerifier.Verify(plan, family, known);
    }

    private sealed class StandingBooks : IJobBooks
    {
        public Jobs.JobBook Open(string place, Jobs.Stores.ShopUse use) => Jobs.JobBook.Open(place, use);
    }
}
