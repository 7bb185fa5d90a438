namespace Contam.Families.Reading.Shapes;

/// <summary>Keys that a kind and a part both have: the part's word goes before that of its kind.</summary>
internal static class KindPartKeys
{
    private static readonly ChoiceShape<ClearedBy> Looks = new(
        "what clears a part", ("nothing", Families.ClearedBy.Nothing), ("two-looks", Families.ClearedBy.TwoLooks), ("one-look", Families.ClearedBy.OneLook));

    private static readonly ChoiceShape<TestAt> Place = new(
        "where a part is tested", ("bench", Families.TestAt.Bench), ("built-up", Families.TestAt.BuiltUp), ("fitted", Families.TestAt.Fitted));

    public static readonly Key<ClearedBy> ClearedBy = new(Looks)
    {
        Name = "cleared-by",
        Means = "How many clean looks leave the part alone: `nothing` for a part that is treated whenever there is a way to it, `two-looks` for two clean places on every way, `one-look` for one; "
            + "default: as its kind says, else one-look",
        Example = "two-looks",
    };

    public static readonly Key<TestAt> TestAt = new(Place)
    {
        Name = "test-at",
        Means = "Where the part can be tested: `bench` for by itself, `built-up` for with what rides or stands on it but before it goes on, `fitted` for in its place; default: as its kind says, else bench",
        Example = "built-up",
    };
}
