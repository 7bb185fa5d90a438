using System.Collections.Immutable;
using Contam.Families.Reading;
using Contam.Families.Reading.Sheets;
using Contam.Problems;
using Contam.Treatment.Reading;

namespace Contam.Tests.Families.Reading;

/// <summary>The pages of cases are the specification of what readers tell: every message whole, with its place.</summary>
public sealed class What_a_reader_tells
{
    internal static readonly string[] Pages =
    [
        "Families/Reading/sheets.cases", "Families/Reading/shapes.cases", "Families/Reading/families.cases", "Families/Reading/modules.cases",
        "Treatment/Reading/standards.cases",
    ];

    public static TheoryData<string, string> Cases
    {
        get
        {
            var cases = new TheoryData<string, string>();
            foreach (string page in Pages)
            {
                foreach (Case one in CaseFile.Read(page))
                    cases.Add(page, one.Name);
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Is_as_the_page_says(string page, string name)
    {
        Case one = CaseFile.Read(page).Single(one => one.Name == name);
        string told = TestCatalogue.Told(Problems(one));
        if (CaseFile.IsUpdating)
            CaseFile.Update(page, name, told);
        else
            Assert.Equal(one.Told, told);
    }

    [Fact]
    public void Covers_every_code_of_the_catalogue()
    {
        var raised = new HashSet<string>(StringComparer.Ordinal);
        foreach (string page in Pages)
        {
            foreach (Case one in CaseFile.Read(page))
                raised.UnionWith(Problems(one).Select(problem => problem.Code));
        }

        // These need more than a text.
        raised.UnionWith(FamilyReader.ReadFile(AppContext.BaseDirectory, TestCatalogue.Value).Problems.Select(problem => problem.Code));
        raised.UnionWith(FamilyReader.ReadText("format: 1\n", "f.yaml", TestCatalogue.Value, new ReadLimits { FileBytes = 1 }).Problems.Select(problem => problem.Code));
        raised.UnionWith(FamilyReader.ReadText("a: 1\nb: 2\n", "f.yaml", TestCatalogue.Value, new ReadLimits { Problems = 1 }).Problems.Select(problem => problem.Code));
        raised.UnionWith(Authoring.FamilyFromTables.Write("f", new Authoring.TableFile("joints.csv", ""), null, TestCatalogue.Value).Problems.Select(problem => problem.Code));
        // What a check warns of once a file can be read has a page of its own.
        Assert.Equal([], ProblemCodes.All.Except(LintCodes.All).Select(code => code.Code).Where(code => !raised.Contains(code)));
        Assert.Equal([], raised.Where(code => ProblemCodes.Find(code) is null));
    }

    [Fact]
    public void Bears_a_code_that_is_explained_once()
    {
        string[] constants = [.. typeof(ProblemCodes).GetFields().Concat(typeof(LintCodes).GetFields()).Where(field => field.IsLiteral).Select(field => (string)field.GetRawConstantValue()!)];
        Assert.Equal(constants, ProblemCodes.All.Select(code => code.Code));
        Assert.Equal(constants.Length, constants.Distinct(StringComparer.Ordinal).Count());
        Assert.All(ProblemCodes.All, code => Assert.True(code.Meaning.Length > 0 && code.Example.Length > 0 && code.Mend.Length > 0, code.Code));
        Assert.All(constants, code => Assert.Matches("^[a-z]+(-[a-z0-9]+)*$", code));
    }

    [Fact]
    public void Comes_from_a_library_that_one_file_sees()
    {
        string source = Path.Combine(CaseFile.Root, "src", "Contam");
        IEnumerable<string> seeing = Directory.EnumerateFiles(source, "*.cs", SearchOption.AllDirectories)
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Where(file => File.ReadAllText(file).Contains("YamlDotNet", StringComparison.Ordinal))
            .Select(file => Path.GetFileName(file));
        Assert.Equal(["SheetParser.cs"], seeing);
    }

    [Fact]
    public void Names_no_case_twice()
    {
        foreach (string page in Pages)
        {
            IReadOnlyList<Case> cases = CaseFile.Read(page);
            Assert.NotEmpty(cases);
            Assert.Equal(cases.Count, cases.Select(one => one.Name).Distinct(StringComparer.Ordinal).Count());
        }
    }

    private static ImmutableArray<Problem> Problems(Case one)
    {
        if (one.Files.Count == 1)
        {
            (string file, string text) = one.Files[0];
            return one.IsStandard
                ? StandardReader.ReadText(text, file, TestCatalogue.Value).Problems
                : FamilyReader.ReadText(text, file, TestCatalogue.Value).Problems;
        }

        using var folder = new TestFolder(one.Files);
        return
        [
            .. FamilyReader.ReadFile(folder.PathOf(one.Files[0].File), TestCatalogue.Value).Problems.Select(folder.Shortened),
        ];
    }
}
