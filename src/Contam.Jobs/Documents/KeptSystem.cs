using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Reading;
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
        Family family = (files.Length == 1 ? FamilyReader.ReadText(files[0].Text, files[0].Name, standard.CatalogueOf(), limits) : ReadLaidOut(files, standard, limits)).Value
            ?? throw new ShopException(ShopFault.Newer, "this contam does not understand the family that the job keeps. Use the contam that the job was opened with.");
        return new KeptSystem(family, standard);
    }

    private static Outcome<Family> ReadLaidOut(ImmutableArray<SourceCopy> files, ShopStandard standard, ReadLimits limits)
    {
        DirectoryInfo root = Directory.CreateTempSubdirectory("contam");
        try
        {
            // As deep as the way up of any of them goes, so that none leaves the folder.
            int depth = files.Max(file => file.Name.Split('/').Count(step => step == ".."));
            string folder = Path.Combine([root.FullName, "systems", .. Enumerable.Repeat("d", depth)]);
            foreach (SourceCopy file in files)
            {
                string path = Path.GetFullPath(Path.Combine(folder, file.Name));
                if (!path.StartsWith(Path.Combine(root.FullName, "systems") + Path.DirectorySeparatorChar, StringComparison.Ordinal))
                    throw new ShopException(ShopFault.Damaged, "a file that the job keeps bears a name that leads out of its folder. Nothing was written.");
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.WriteAllText(path, file.Text);
            }

            return FamilyReader.ReadFile(Path.Combine(folder, files[0].Name), standard.CatalogueOf(), limits);
        }
        finally
        {
            root.Delete(recursive: true);
        }
    }

    private static ImmutableArray<SourceCopy> CopiesOf(Func<string, string> text, ImmutableArray<KeptFile> files) =>
        [.. files.Select(file => new SourceCopy(file.Name, text(file.Sha256)))];
}
