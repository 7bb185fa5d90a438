using System.Collections.Immutable;
using Contam.Families;
using Contam.Reports.Text;
using Contam.Treatment;

namespace Contam.Cli;

/// <summary>Reads the families that a call names, by file or by folder.</summary>
internal static class FamilyFiles
{
    /// <summary>
    /// The families in these files and folders, in ordinal order of their paths; <c>null</c> where one cannot be read. In a folder and those within it a family is each
    /// <c>.yaml</c> file in which a line begins with <c>family:</c>.
    /// </summary>
    /// <exception cref="WrongUseException">A folder holds no family, or two files describe one of the same id.</exception>
    public static ImmutableArray<Family>? Read(IEnumerable<string> named, ShopStandard standard, Loading loading)
    {
        var families = ImmutableArray.CreateBuilder<Family>();
        bool isSound = true;
        foreach (string file in named.SelectMany(FilesOf).Distinct(StringComparer.Ordinal))
        {
            if (loading.Family(file, standard) is not { } family)
                isSound = false;
            else if (families.FirstOrDefault(one => one.Id == family.Id) is { } first)
                throw new WrongUseException($"{TextPage.Harmless(first.File)} and {TextPage.Harmless(family.File)} both describe {family.Id}. Give one of the two another id, or leave it out.");
            else
                families.Add(family);
        }

        return isSound ? families.ToImmutable() : null;
    }

    private static IEnumerable<string> FilesOf(string path)
    {
        if (!Directory.Exists(path) || Starting.NamedFile.ShippedFamily(path) is not null)
            return [path];
        try
        {
            var search = new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.System | FileAttributes.Hidden | FileAttributes.ReparsePoint };
            string[] found = [.. Directory.EnumerateFiles(path, "*.yaml", search).Where(IsFamily).Order(StringComparer.Ordinal)];
            return found.Length > 0 ? found : throw new WrongUseException($"there is no family in {TextPage.Harmless(path)}: no .yaml file in which a line begins with family:.");
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException)
        {
            throw new WrongUseException($"{TextPage.Harmless(path)} cannot be gone through: {TextPage.Harmless(cannot.Message)}");
        }
    }

    /// <summary>Whether this file looks like a family, or cannot be looked into.</summary>
    internal static bool IsFamily(string file)
    {
        try
        {
            return File.ReadLines(file).Take(200).Any(line => line.StartsWith("family:", StringComparison.Ordinal));
        }
        catch (Exception cannot) when (cannot is IOException or UnauthorizedAccessException)
        {
            // Left for the reader, which says what is wrong with it.
            return true;
        }
    }
}
