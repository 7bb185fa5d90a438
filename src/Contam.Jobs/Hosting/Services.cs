using Contam.Families.Reading;
using Contam.Families;
using Contam.Jobs.Stores;
using Contam.Jobs;
using Contam.Plans;
using Contam.Proof;
using Contam.Treatment;

namespace Contam.Hosting;

/// <summary>Reads engine families and shop standards.</summary>
public interface ISystemReader
{
    /// <summary>A shop's own standard laid over the house standard.</summary>
    /// <param name="path">Its file; <c>null</c> for the house standard alone.</param>
    /// <returns>The standard, or what is wrong with the file.</returns>
    Outcome<ShopStandard> ReadStandard(string? path);

    /// <summary>The family in a file, with its modules.</summary>
    /// <param name="path">The file.</param>
    /// <param name="standard">The standard whose kinds and debris it may name.</param>
    /// <returns>The family, or what is wrong with the files.</returns>
    Outcome<Family> ReadFamily(string path, ShopStandard standard);
}

/// <summary>Makes plans; see <see cref="Planner"/>.</summary>
public interface IPlanner
{
    /// <summary>Makes the plan. The same request always gives the same plan.</summary>
    /// <exception cref="ArgumentException">The request asks for nothing that can be planned; see <see cref="Planner.Plan"/>.</exception>
    PlanDocument Plan(PlanRequest request);
}

/// <summary>Judges plans; see <see cref="PlanVerifier"/>.</summary>
public interface IPlanVerifier
{
    /// <summary>Whether this plan is complete and in a safe order.</summary>
    /// <param name="plan">The plan, from whatever hand.</param>
    /// <param name="family">The family to hold it against.</param>
    /// <param name="known">The sorts of debris that the shop's standard describes.</param>
    Verification Verify(PlanDocument plan, Family family, IEnumerable<Debris> known);
}

/// <summary>Opens the books of jobs, wherever they are kept.</summary>
public interface IJobBooks
{
    /// <summary>The book of the shop at this place. Whoever opens it disposes of it.</summary>
    /// <param name="place">A file, or <c>postgres://USER@HOST/DATABASE</c>.</param>
    /// <param name="use">What it is opened for.</param>
    /// <exception cref="ShopException">It cannot be used; the message says why and what to do, and shows no password.</exception>
    JobBook Open(string place, ShopUse use);
}
