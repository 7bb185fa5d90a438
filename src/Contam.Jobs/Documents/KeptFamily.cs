using System.Collections.Immutable;
using Contam.Families;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;
using Contam.Jobs.Stores;

namespace Contam.Jobs.Documents;

/// <summary>A family read again from copies of its files.</summary>
public static class KeptFamily
{
    /// <summary>Reads it. Several files are laid out in a folder of their own for the time of reading, since modules are read from a folder.</summary>
    /// <param name="files">The copies, the family file first.</param>
    /// <param name="catalogue">The kinds and debris that it may name.</param>
    /// <param name="limits">How much is taken in; <c>null</c> for the defaults.</param>
    /// <param name="shipped">Modules that may be used by their name alone; <c>null</c> for none.</param>
    /// <exception cref="ShopException">A name leads out of the folder.</exception>
    public static Outcome<Family> Read(ImmutableArray<SourceCopy> files, Catalogue catalogue, ReadLimits? limits = null, IShippedFiles? shipped = null) =>
        files.Length == 1 ? FamilyReader.ReadText(files[0].Text, files[0].Name, catalogue, limits, shipped) : ReadLaidOut(files, catalogue, limits, shipped);

    private static Outcome<Family> ReadLaidOut(ImmutableArray<SourceCopy> files, Catalogue catalogue, ReadLimits? limits, IShippedFiles? shipped)
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

            return FamilyReader.ReadFile(Path.Combine(folder, files[0].Name), catalogue, limits, shipped);
        }
        finally
        {
            root.Delete(recursive: true);
        }
    }
}
