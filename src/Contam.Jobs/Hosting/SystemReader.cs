using Contam.Families;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Hosting;

/// <summary>Reads from files, over the standards that come with the library.</summary>
internal sealed class SystemReader(ReadLimits? limits) : ISystemReader
{
    public Outcome<ShopStandard> ReadStandard(string? path)
    {
        if (path is null)
            return new Outcome<ShopStandard>(BuiltInStandards.HouseOverKinds, []);
        Outcome<ShopStandard> read = StandardReader.ReadFile(path, limits: limits);
        return read with { Value = read.Value?.Over(BuiltInStandards.HouseOverKinds) };
    }

    public Outcome<Family> ReadFamily(string path, ShopStandard standard) => FamilyReader.ReadFile(path, standard.CatalogueOf(), limits);
}
