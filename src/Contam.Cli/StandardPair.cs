using System.Collections.Immutable;
using Contam.Audits;
using Contam.Cli.Starting;
using Contam.Treatment;

namespace Contam.Cli;

/// <summary>Every plan of some families, under two standards.</summary>
internal static class StandardPair
{
    /// <summary>The name of the standard that is built in.</summary>
    public const string House = "house";

    /// <summary>The comparison; <c>null</c> where something cannot be read.</summary>
    /// <param name="first">A standard, or <see cref="House"/>.</param>
    /// <param name="second">Likewise.</param>
    /// <param name="named">Family files and folders; none for the families that come with contam.</param>
    /// <param name="jobs">How many failures at once.</param>
    /// <param name="shell">Where progress is told.</param>
    /// <param name="loading">Reads.</param>
    public static ComparisonAnswer? Compare(string first, string second, string[] named, int jobs, Shell shell, Loading loading)
    {
        if (Standard(first, loading) is not { } older || Standard(second, loading) is not { } newer)
            return null;
        ImmutableArray<(ComparedSide, ComparedSide)>? pairs = named.Length > 0 ? Pairs(named, older, newer, loading) : Shipped(older, newer, loading);
        return pairs is { } all ? Comparing.All(all, first, second, jobs, new Progress(shell, "failures").Tell) : null;
    }

    private static ShopStandard? Standard(string named, Loading loading) => loading.Standard(named);

    private static ImmutableArray<(ComparedSide, ComparedSide)>? Pairs(string[] named, ShopStandard older, ShopStandard newer, Loading loading)
    {
        // Each standard knows its own kinds, so a family is read with each.
        if (FamilyFiles.Read(named, older, loading) is not { } first || FamilyFiles.Read(named, newer, loading) is not { } second)
            return null;
        return [.. first.Zip(second, (one, other) => (new ComparedSide(one, older), new ComparedSide(other, newer)))];
    }

    /// <summary>The families that come with contam, laid out in a folder for a moment, since modules are read from disk.</summary>
    private static ImmutableArray<(ComparedSide, ComparedSide)>? Shipped(ShopStandard older, ShopStandard newer, Loading loading)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("contam");
        try
        {
            string systems = Path.Combine(folder.FullName, "systems");
            NewFolder.Write(systems, [
                .. ShippedFiles.Families.Select(family => ($"families/{family}.yaml", ShippedFiles.Family(family))),
                .. ShippedFiles.Modules.Select(module => ($"modules/{module}.yaml", ShippedFiles.Module(module))),
            ]);
            return Pairs([systems], older, newer, loading);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
