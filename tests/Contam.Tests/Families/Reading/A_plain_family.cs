using Contam.Families;
using Contam.Families.Reading;

namespace Contam.Tests.Families.Reading;

public class A_plain_family
{
    [Fact]
    public void Reads_with_repeats_written_out()
    {
        Outcome<Family> outcome = TestCatalogue.Read("""
            format: 1
            family: small
            parts:
              tank: {kind: tank}
              injector-#: {count: 2, kind: injector}
            circuits:
              fuel:
                runs:
                  - [tank, injector-#]
            """);

        Assert.Equal("", TestCatalogue.Told(outcome.Problems));
        Assert.Equal(["tank", "injector-1", "injector-2"], outcome.Value!.Parts.Select(part => part.Id.Value));
        Assert.Equal(["tank>injector-1", "tank>injector-2"], outcome.Value.Joints.Select(joint => $"{joint.From}>{joint.To}"));
    }
}
