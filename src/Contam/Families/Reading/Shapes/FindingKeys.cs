using Contam.Families.Quantities;

namespace Contam.Families.Reading.Shapes;

/// <summary>The keys of a findings file, which is a list of findings.</summary>
internal static class FindingKeys
{
    public static readonly Key<string> Part = new(new IdShape("the id of a part", "oil-filter"))
    {
        Name = "part", Means = "The part that was looked at", Example = "oil-filter",
    };

    public static readonly Key<string> Debris = new(PartKeys.DebrisName)
    {
        Name = "debris", Means = "The debris that was found or looked for; left out of a clean finding it means every debris", Example = "metal",
    };

    public static readonly Key<bool> Found = new(new FlagShape())
    {
        Name = "found", Means = "Whether it was found; false: the part was clean", Example = "true",
    };

    public static readonly Key<bool> Failed = new(new FlagShape())
    {
        Name = "failed", Means = "Whether the part itself was found to have failed; default: false", Example = "true",
    };

    public static readonly Key<bool> CannotTell = new(new FlagShape())
    {
        Name = "cannot-tell", Means = "Whether the look was made and told nothing; default: false", Example = "true",
    };

    public static readonly Key<ParticleSize> Size = new(new QuantityShape<ParticleSize>(Dimension.Length, ParticleSize.TryParse))
    {
        Name = "size", Means = "The size of the largest piece found", Example = "120 um",
    };

    public static readonly Key<string> By = new(new WordsShape()) { Name = "by", Means = "Who looked", Example = "night shift" };

    public static readonly Key<string> When = new(new WordsShape()) { Name = "when", Means = "When, in words or as a date", Example = "2026-05-04 10:30" };

    public static readonly FormShape Finding = new("finding", "a finding", Part, Debris, Found, Failed, CannotTell, Size, PartKeys.Form, PartKeys.Magnetic, By, When)
    {
        Required = [Part], Means = "What somebody saw at a part",
    };

    public static readonly ListShape<Form> File = new(Finding, "a list of findings");
}
