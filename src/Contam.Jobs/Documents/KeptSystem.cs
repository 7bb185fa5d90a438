using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Reading.Sheets;
using Contam.Jobs.Entries;
using Contam.Jobs.Stores;
using Contam.Treatment;
using Contam.Treatment.Reading;

namespace Contam.Jobs.Documents;

/// <summary>The family and the standard that a job keeps, read again from its own texts. What has become of the files since does not matter.</summary>
/// <param name="Family">The family.</param>
/// <param name="Standard">The standard, its layers joined.</param>
public sealed record KeptSystem(Family Family, ShopStandard Standard)
{
    /// <summary>Reads both. The family's files are laid out in a folder of their own for the time of reading, since modules are read from a folder.</summary>
    /// <exception cref="ShopException">A text is gone, or is no longer read as what it was.</exception>
    internal static KeptSystem Of(JobBook book, Opened opened)
    {
        ArgumentNullException.ThrowIfNull(book);
        return Of(book.Text, opened);
    }

    /// <summary>Reads both from texts that are asked for by their SHA-256.</summary>
    /// <exception cref="ShopException">A text is gone, or is no longer read as what it was.</exception>
    internal static KeptSystem Of(Func<string, string> text, Opened opened)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(opened);
        ReadLimits limits = KeptLimits.ToRead(opened.Limits);
        ShopStandard standard = BuiltInStandards.ReadSources(CopiesOf(text, opened.Standard), limits).Value
            ?? throw new ShopException(ShopFault.Newer, "this contam does not understand the standard that the job keeps. Use the contam that the job was opened with.");
        ImmutableArray<SourceCopy> files = CopiesOf(text, opened.Family);
        Family family = KeptFamily.Read(files, standard.CatalogueOf(), limits).Value
            ?? throw new ShopException(ShopFault.Newer, "this contam does not understand the family that the job keeps. Use the contam that the job was opened with.");
        return new KeptSystem(family, standard);
    }

    private static ImmutableArray<SourceCopy> CopiesOf(Func<string, string> text, ImmutableArray<KeptFile> files) =>
        [.. files.Select(file => new SourceCopy(file.Name, text(file.Sha256)))];
}
