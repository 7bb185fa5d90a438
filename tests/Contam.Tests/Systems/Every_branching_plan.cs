using System.Collections.Immutable;
using System.Globalization;
using Contam.Families;
using Contam.Plans;
using Contam.Proof;
using Contam.Treatment.Reading;
using Contam.Support;
using Contam.Families.Reading;
using Contam.Treatment;

namespace Contam.Tests.Systems;

public class Every_branching_plan
{
    [Fact]
    public void Tmp()
    {
        var lines = new List<string>();
        foreach (Family family in Directory.GetFiles(Contam.Support.RepositoryFiles.At("systems/families"), "*.yaml").Order(StringComparer.Ordinal).Select(file => Contam.Families.Reading.FamilyReader.ReadFile(file, Contam.Treatment.Reading.BuiltInStandards.HouseOverKinds.CatalogueOf()).Value!))
        {
            foreach (Part part in family.Parts.Where(part => !part.Sheds.IsEmpty))
            {
                foreach (Debris debris in part.Sheds.Select(shed => shed.Debris))
                {
                    string what = $"{family.Id} {part.Id} {debris.Name}";
                    try
                    {
                        var request = new PlanRequest(family, Contam.Treatment.Reading.BuiltInStandards.HouseOverKinds, [part.Id], [debris]) { MostLooks = 16, TakesFirstSchedule = true };
                        PlanDocument plan = Planner.Plan(request);
                        PlanDocument flat = Planner.Plan(request with { MostLooks = 0 });
                        string fault = PlanVerifier.Verify(plan, family).Claims.FirstOrDefault(claim => !claim.Holds)?.Where ?? "";
                        lines.Add(string.Create(CultureInfo.InvariantCulture, $"{what}\t{plan.Looks.Length}\t{flat.Hours.Bench}\t{plan.Hours.BenchAllClean}\t{plan.Hours.BenchExpected}\t{plan.Hours.Bench}\t{fault}"));
                    }
                    catch (Exception e)
                    {
                        lines.Add($"{what}\tEXC {e.GetType().Name} {e.Message} {e.StackTrace?.Split('\n').FirstOrDefault()}");
                    }
                }
            }
        }

        File.WriteAllLines("/tmp/every.txt", lines);
    }
}
