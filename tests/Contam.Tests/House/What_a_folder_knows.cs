using System.Text.RegularExpressions;
using Contam.Families;
using NetArchTest.Rules;

namespace Contam.Tests.House;

/// <summary>The table of DEVELOPERS.md, held against what was compiled.</summary>
public sealed class What_a_folder_knows
{
    public static TheoryData<string> Folders => [.. FolderTable.Read().Rows.Select(row => row.Folder)];

    [Theory]
    [MemberData(nameof(Folders))]
    public void Is_nothing_that_its_row_forbids(string folder)
    {
        FolderTable.Row row = FolderTable.Read().Rows.Single(one => one.Folder == folder);
        Assert.NotEmpty(FolderTable.TypesIn(folder));
        string[] forbidden = [.. row.Forbidden.SelectMany(one => FolderTable.Packages.Contains(one) ? [one] : FolderTable.TypesIn(one))];
        NetArchTest.Rules.TestResult result = Types.InAssembly(typeof(Family).Assembly)
            .That().ResideInNamespaceMatching($"^{Regex.Escape(row.Namespace)}$")
            .ShouldNot().HaveDependencyOnAny(forbidden)
            .GetResult();
        Assert.True(result.IsSuccessful, string.Join('\n', (result.FailingTypes ?? []).Select(type => $"{type.FullName}: {type.Explanation}")));
    }

    [Fact]
    public void Is_said_for_every_folder() =>
        Assert.Equal(FolderTable.OnDisk(), FolderTable.Read().Rows.Select(row => row.Folder).Order(StringComparer.Ordinal));

    /// <summary>Otherwise two folders could each be allowed to know the other.</summary>
    [Fact]
    public void Never_goes_round_in_a_circle()
    {
        FolderTable table = FolderTable.Read();
        Dictionary<string, string[]> mayKnow = table.Rows.ToDictionary(row => row.Folder, row => table.Rows.Select(one => one.Folder).Except(row.Forbidden).Where(one => one != row.Folder).ToArray());
        while (mayKnow.Keys.Where(folder => !mayKnow[folder].Any(mayKnow.ContainsKey)).ToArray() is { Length: > 0 } free)
        {
            foreach (string folder in free)
                mayKnow.Remove(folder);
        }

        Assert.Empty(mayKnow.Keys.Order(StringComparer.Ordinal));
    }
}
