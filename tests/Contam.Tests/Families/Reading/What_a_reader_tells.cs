using System.Collections.Immutable;
using Contam.Families.Reading;
using Contam.Problems;
using Contam.Treatment.Reading;

namespace Contam.Tests.Families.Reading;

/// <summary>The pages of cases are the specification of what readers tell: every message whole, with its place.</summary>
public sealed class What_a_reader_tells
{
    private static readonly string[] Pages =
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

        // These need more than a text: Hostile_files raises each of them.
        raised.UnionWith([ProblemCodes.FileUnreadable, ProblemCodes.FileTooLarge, ProblemCodes.TooManyProblems]);
        Assert.Equal([], ProblemCodes.All.Select(code => code.Code).Where(code => !raised.Contains(code)));
        Assert.Equal([], raised.Where(code => ProblemCodes.Find(code) is null));
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
