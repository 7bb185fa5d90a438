using Contam.Diagnosis;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Support;
using Contam.Treatment.Reading;

namespace Contam.References.Diagnosis;

/// <summary>
/// What metal looks like tells where it comes from, after TM 55-2840-251-23, para 1-78 (US Army, public): non-ferrous flakes are of plain bearings and
/// bushings; small ferrous flakes of anti-friction bearings, gear teeth or fretting; steel slivers of steel parts that touch, or heavy scoring; fuzz is
/// of cast iron. For the lubricated parts of the shipped families: who is suspected first, and of which kind everyone is that what was found fits.
/// </summary>
public sealed class Metal_by_its_looks
{
    [Theory]
    // Beside the bushings of the table a wheel of light alloy, whose pieces get past its seal rings when it bursts.
    [InlineData("harbour-diesel-i4", "oil-filter", DebrisForm.Flakes, false, "bearing piston turbocharger")]
    [InlineData("outboard-gearcase", "bearing-carrier", DebrisForm.Flakes, true, "bearing")]
    [InlineData("outboard-gearcase", "bearing-carrier", DebrisForm.Slivers, true, "clutch gear shaft")]
    [InlineData("estuary-v6-outboard", "exhaust-tuner", DebrisForm.Slivers, true, "ring-pack seal")]
    public void Points_to_the_kinds_of_the_table(string name, string place, DebrisForm form, bool magnetic, string kinds)
    {
        var standard = BuiltInStandards.HouseOverKinds;
        Family family = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{name}.yaml"), standard.CatalogueOf()).Value!;
        SuspectAnswer answer = Suspecting.Of(new SuspectQuestion(family, Debris.Metal, standard)
        {
            Findings = [new Finding(new PartId(place), Debris.Metal, Found: true) { Form = form, Magnetic = magnetic }],
        });
        string[] allowed = kinds.Split(' ');
        Assert.Contains(family[answer.Suspects[0].Part].Kind.Name, allowed);
        Assert.Equal(allowed, answer.Suspects.Where(IsSaidAndFits).Select(suspect => family[suspect.Part].Kind.Name).Distinct().Order(StringComparer.Ordinal));
        Assert.True(answer.Suspects.Where(IsSaidAndFits).Sum(suspect => suspect.Share) > 0.5);
    }

    // A part whose file does not say what it sheds looks like fits everything.
    private static bool IsSaidAndFits(Suspect suspect) => suspect.Shed.Form is not null && suspect.Evidence[0].Sort == EvidenceSort.Fits;
}
