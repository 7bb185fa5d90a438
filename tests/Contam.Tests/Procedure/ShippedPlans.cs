using Contam.Families;
using Contam.Families.Reading;
using Contam.Plans;
using Contam.Support;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Procedure;

/// <summary>Plans of the families that come with the product.</summary>
internal static class ShippedPlans
{
    private static readonly ShopStandard House = BuiltInStandards.HouseOverKinds;

    public static string[] Names => [.. Directory.GetFiles(RepositoryFiles.At("systems/families"), "*.yaml").Order(StringComparer.Ordinal).Select(file => Path.GetFileNameWithoutExtension(file)!)];

    public static Family Family(string name) => FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), House.CatalogueOf()).Value!;

    /// <summary>One of every <paramref name="each"/> failures of a family, without looks and with them.</summary>
    public static IEnumerable<PlanDocument> Of(Family family, int each) =>
        family.Parts.SelectMany(part => House.CatalogueOf().Debris.Where(debris => part.ShedOf(debris) is not null).Select(debris => (part, debris)))
            .Where((_, index) => index % each == each / 2)
            .SelectMany(one => new[] { Of(family, one.part.Id.Value, one.debris.Name, 0), Of(family, one.part.Id.Value, one.debris.Name, HowFar.MostLooks) });

    public static PlanDocument Of(Family family, string failed, string debris, int looks) =>
        Planner.Plan(new PlanRequest(family, House, [new PartId(failed)], [House.CatalogueOf().FindDebris(debris)!]) { MostLooks = looks, TakesFirstSchedule = true });

    /// <summary>The number of the first step of this frame name; 0 where there is none.</summary>
    public static int Frame(this PlanDocument plan, string name) => plan.Steps.FirstOrDefault(step => step.Frame == name)?.Number ?? 0;

    public static IEnumerable<string> PartsOf(this PlanStep step) => step.Parts.Concat(step.Part is { } part ? [part] : Array.Empty<string>()).Distinct();

    /// <summary>Whether a step is done wherever another is: each letter of the other is one of its own, or of a look that is made only where its own letters count.</summary>
    public static bool IsDoneWherever(this PlanDocument plan, PlanStep step, PlanStep other)
    {
        return step.OnlyIf.IsEmpty || (!other.OnlyIf.IsEmpty && other.OnlyIf.All(Stands));

        bool Stands(string letter) => step.OnlyIf.Contains(letter) || plan.Looks.Single(look => look.Id == letter).OnlyIf is { IsEmpty: false } due && due.All(Stands);
    }
}
