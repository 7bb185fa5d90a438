using Contam.Families;
using Contam.Spread;
using Contam.Support.Notation;
using Contam.Treatment.Reading;
using Contam.Why;

namespace Contam.Tests.Why;

/// <summary>Why a part is reached, or is not.</summary>
public class A_question_why
{
    private static readonly Family Family = CaseReader.System("pump[sheds metal] > filter > rail");

    // A name that is not there must not be answered as if nothing had failed.
    [Theory]
    [InlineData("pum", "rail")]
    [InlineData("pump", "rial")]
    public void About_a_part_that_is_not_there_is_not_answered(string failed, string part) => Assert.Throws<KeyNotFoundException>(() =>
        Explaining.Of(new SpreadQuestion(Family, [new PartId(failed)], Debris.Metal), new PartId(part), BuiltInStandards.HouseOverKinds));
}
