using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Looks;
using Contam.Procedure;
using Contam.Support;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Looks;

/// <summary>Looks that a technician would make, of the failures that are spoken of most.</summary>
public class Shipped_families
{
    private static readonly ShopStandard Standard = BuiltInStandards.HouseOverKinds;

    // The clean looks leave a rebuilt engine at a fifth of its hours. The injectors are cleaned whatever is seen.
    [Fact]
    public void Decide_by_few_looks_how_far_the_metal_of_the_outboards_compressor_went()
    {
        LookPlan plan = Choose("estuary-v6-outboard", "compressor");

        Assert.InRange(plan.Plan.Looks.Length, 2, 8);
        Assert.InRange(plan.MinutesAllClean / 60, 10, 26);
        Assert.True(plan.MinutesAllClean < plan.MinutesMost / 4);
        PartLooks[] injectors = [.. plan.Plan.Parts.Where(part => part.Part.RepeatOf?.EndsWith("injector", StringComparison.Ordinal) == true)];
        Assert.NotEmpty(injectors);
        Assert.All(injectors, injector => Assert.Contains(injector.Treatments, one => one.Treatment == TreatmentKind.Clean && one.When.OnlyIf.IsEmpty));
    }

    [Fact]
    public void Decide_by_a_few_looks_in_the_reverse_gear()
    {
        LookPlan plan = Choose("harbour-reverse-gear", "output-gear");

        Assert.InRange(plan.Plan.Looks.Length, 1, 4);
        Assert.True(plan.MinutesExpected < Flat("harbour-reverse-gear", "output-gear").MinutesExpected);
    }

    // What is named is held fixed, numbers of one part are one look, and the order is that of the work.
    [Fact]
    public void Look_where_they_are_told_to()
    {
        LookPlan plan = Choose("estuary-v6-outboard", "compressor", "port-air-rail", "starboard-reed-plate-2", "starboard-air-rail", "starboard-reed-plate-1", "starboard-reed-plate-3");

        Assert.Equal(
            ["starboard-air-rail", "port-air-rail", "starboard-reed-plate-1 starboard-reed-plate-2 starboard-reed-plate-3"],
            plan.Plan.Looks.OrderBy(look => look.Places.Length).ThenBy(look => look.Places[0].Value.StartsWith("port", StringComparison.Ordinal)).Select(look => string.Join(' ', look.Places)));
        Assert.Equal(ChoiceMethod.Named, plan.Method);
    }

    [Fact]
    public void Take_the_flat_plan_where_no_look_is_wanted()
    {
        LookPlan plan = Flat("estuary-v6-outboard", "compressor");

        Assert.Empty(plan.Plan.Looks);
        Assert.Single(plan.Plan.Histories!.Value);
        Assert.All(plan.Plan.Parts.SelectMany(part => part.Treatments), one => Assert.True(one.When.IsAlways));
    }

    [Fact]
    public void Say_why_a_look_that_is_named_decides_nothing()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() => Choose("estuary-v6-outboard", "compressor", "compressor"));

        Assert.StartsWith("a look at compressor decides nothing: it is the failed part", refused.Message, StringComparison.Ordinal);
    }

    private static LookPlan Flat(string family, string failed) => DecidingLooks.Choose(Question(family, failed) with { MostLooks = 0 });

    private static LookPlan Choose(string family, string failed, params string[] at)
    {
        ChoiceQuestion question = Question(family, failed);
        return DecidingLooks.Choose(at.Length == 0 ? question : question with { LookAt = [.. at.Select(place => new PartId(place))] });
    }

    private static ChoiceQuestion Question(string family, string failed)
    {
        Family read = FamilyReader.ReadFile(RepositoryFiles.At($"systems/families/{family}.yaml"), Standard.CatalogueOf()).Value!;
        return new ChoiceQuestion(new LookQuestion(read, Standard, [new PartId(failed)], [Debris.Metal]), new WorkTimes(Standard).Of, new PassingOn(Standard).ShareOf);
    }
}
