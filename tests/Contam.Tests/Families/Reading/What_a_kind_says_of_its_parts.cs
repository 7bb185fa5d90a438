using Contam.Families;
using Contam.Families.Reading;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Tests.Families.Reading;

/// <summary>What clears a part, where it is tested and what a look does to it: its kind says it, and the part's own word goes before.</summary>
public class What_a_kind_says_of_its_parts
{
    private const string Kinds = """
        format: 1
        standard: shop
        kinds:
          plain: {}
          element: {look-uses-up: true}
          needle: {cleared-by: nothing, test-at: built-up}
          shell: {cleared-by: two-looks, test-at: fitted, carried: true}
          strap: {look-opens: false}
          lip: {renewed-when-out: true}
        """;

    [Theory]
    [InlineData("kind: plain", ClearedBy.OneLook, TestAt.Bench)]
    [InlineData("kind: needle", ClearedBy.Nothing, TestAt.BuiltUp)]
    [InlineData("kind: shell", ClearedBy.TwoLooks, TestAt.Fitted)]
    [InlineData("kind: needle, cleared-by: one-look, test-at: bench", ClearedBy.OneLook, TestAt.Bench)]
    [InlineData("kind: plain, cleared-by: two-looks", ClearedBy.TwoLooks, TestAt.Bench)]
    [InlineData("kind: plain, cleared-by: nothing, test-at: built-up", ClearedBy.Nothing, TestAt.BuiltUp)]
    [InlineData("kind: shell, test-at: built-up", ClearedBy.TwoLooks, TestAt.BuiltUp)]
    public void Holds_unless_the_part_says_otherwise(string said, ClearedBy clearedBy, TestAt testAt)
    {
        Part part = Read(said);
        Assert.Equal((clearedBy, testAt), (part.ClearedBy, part.TestAt));
        Assert.Equal(clearedBy != ClearedBy.OneLook, part.IsCritical);
    }

    [Theory]
    [InlineData("kind: plain", false, false, true)]
    [InlineData("kind: plain, inspect: {minutes: 5}", false, false, true)]
    [InlineData("kind: plain, inspect: {access: []}", false, false, false)]
    [InlineData("kind: plain, inspect: {access: [other]}", false, false, true)]
    [InlineData("kind: plain, inspect: {takes-off: true}", false, true, true)]
    [InlineData("kind: plain, inspect: {takes-off: true, access: []}", false, true, true)]
    [InlineData("kind: plain, inspect: {uses-up: true, access: []}", true, true, true)]
    [InlineData("kind: element", true, true, true)]
    [InlineData("kind: element, inspect: {minutes: 5}", true, true, true)]
    [InlineData("kind: element, inspect: {uses-up: false}", false, false, true)]
    [InlineData("kind: element, inspect: {uses-up: false, takes-off: true}", false, true, true)]
    [InlineData("kind: strap", false, false, false)]
    [InlineData("kind: strap, inspect: {access: [other]}", false, false, false)]
    [InlineData("kind: strap, inspect: {takes-off: true}", false, true, true)]
    public void Says_what_a_look_does(string said, bool usesUp, bool takesOff, bool opens)
    {
        Part part = Read(said);
        Assert.Equal((usesUp, takesOff, opens), (part.LookUsesUp, part.LookTakesOff, part.LookOpens));
    }

    [Fact]
    public void Says_that_it_is_carried() => Assert.Equal((true, false), (Read("kind: shell").Kind.IsCarried, Read("kind: plain").Kind.IsCarried));

    [Fact]
    public void Says_that_it_is_renewed_when_it_was_out() => Assert.Equal((true, false), (Read("kind: lip").Kind.IsRenewedWhenOut, Read("kind: plain").Kind.IsRenewedWhenOut));

    private static Part Read(string said)
    {
        Outcome<ShopStandard> standard = StandardReader.ReadText(Kinds, "s.yaml");
        Assert.Equal("", TestCatalogue.Told(standard.Problems));
        Outcome<Family> outcome = FamilyReader.ReadText($"format: 1\nfamily: f\nparts:\n  a: {{{said}}}\n  other: {{kind: plain}}\n", "f.yaml", standard.Value!.CatalogueOf());
        Assert.Equal("", TestCatalogue.Told(outcome.Problems));
        return outcome.Value!.Parts[0];
    }
}
