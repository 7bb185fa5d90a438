using System.Globalization;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Support;
using Contam.Support.Generation;
using Contam.Tests.Systems;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Procedure.References;

/// <summary>The work that the scheduler is judged on: lists of 20 to 60 jobs, each for one, two and three technicians.</summary>
internal static class KnownWork
{
    public const int Fewest = 20;
    public const int Most = 60;
    public const int MostTechnicians = 3;
    private const int MostParts = 14;

    /// <summary>The plan of every hand-worked failure of a shipped family; those of more than 60 steps in slices.</summary>
    public static IEnumerable<Work> Shipped() =>
        from file in Directory.GetFiles(RepositoryFiles.At("tests/Contam.Tests/Systems"), "*.txt").Order(StringComparer.Ordinal)
        from technicians in Enumerable.Range(1, MostTechnicians)
        let plan = Planner.Plan(RequestOf(HandWorkedCase.Read(file)) with { Technicians = technicians, Sequence = PlanSequence.Schedule })
        let name = Path.GetFileNameWithoutExtension(file)
        from work in plan.Steps.Length > Most ? Work.Slices(name, plan, Most, technicians) : [Work.Of(name, plan)]
        where work.Graph.Jobs.Count >= Fewest
        select work;

    /// <summary>The plans of so many random systems, by rising seed, each as it is and with other minutes.</summary>
    public static IEnumerable<Work> Generated(int plans) =>
        from seed in Seeds().Take(plans)
        let request = Cases.Make(seed, MostParts).ToRequest() with { Sequence = PlanSequence.Schedule }
        from technicians in Enumerable.Range(1, MostTechnicians)
        let work = Work.Of(string.Create(CultureInfo.InvariantCulture, $"seed {seed}"), Planner.Plan(request with { Technicians = technicians }))
        from one in new[] { work, work.WithOtherMinutes(new Random(seed)) }
        select one;

    private static IEnumerable<int> Seeds() =>
        Enumerable.Range(1, int.MaxValue - 1).Where(seed => Planner.Plan(Cases.Make(seed, MostParts).ToRequest() with { Sequence = PlanSequence.Schedule }).Steps.Length is >= Fewest and <= Most);

    private static PlanRequest RequestOf(HandWorkedCase asked)
    {
        ShopStandard standard = BuiltInStandards.HouseOverKinds;
        Catalogue catalogue = standard.CatalogueOf();
        Family family = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{asked.Family}.yaml"), catalogue).Value!;
        return new PlanRequest(family, standard, [.. asked.Failed.Select(id => new PartId(id))], [.. asked.Debris.Select(debris => catalogue.FindDebris(debris)!)]);
    }
}
