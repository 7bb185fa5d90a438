using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using Contam.Families.Reading;
using Contam.Families.Reading.Shapes;
using Contam.Families.Reading.Sheets;
using Contam.Problems;

namespace Contam.Tests.Families.Reading;

/// <summary>A sound file is gone through while it is read; what comes of it is what comes of the tree of all its values, which is made of any other file.</summary>
public sealed class Going_through_a_file
{
    [Fact]
    public void Says_what_its_tree_says_of_every_file_that_is_shipped()
    {
        string[] files = [.. Directory.EnumerateFiles(Path.Combine(CaseFile.Root, "systems"), "*.yaml", SearchOption.AllDirectories)];
        Assert.NotEmpty(files);
        // Each is sound, so each is gone through.
        Assert.All(files, file => Assert.True(Compared(File.ReadAllText(file), ShapeOf(File.ReadAllText(file))), file));
    }

    [Fact]
    public void Says_what_its_tree_says_or_leaves_it_to_the_tree_on_every_page_of_cases()
    {
        int goneThrough = 0;
        foreach (string page in What_a_reader_tells.Pages)
        {
            foreach ((string _, string text) in CaseFile.Read(page).SelectMany(one => one.Files))
                goneThrough += Compared(text, ShapeOf(text)) ? 1 : 0;
        }

        Assert.True(goneThrough > 10);
    }

    [Fact]
    public void Says_what_its_tree_says_or_leaves_it_to_the_tree_of_damaged_files()
    {
        string family = File.ReadAllText(CaseFile.PathOf("Families/Reading/Golden/harbour.yaml"));
        var random = new Random(7);
        int goneThrough = 0;
        for (int i = 0; i < 1_000; i++)
            goneThrough += Compared(Mutated_texts.Mutate(family, random), FamilyKeys.FamilyFile) ? 1 : 0;
        Assert.InRange(goneThrough, 50, 950);
    }

    [Theory]
    [InlineData("   : 1\nfamily: f\n")]
    [InlineData("family: f\nparts:\n  : 1\ncircuits: {}\n")]
    [InlineData("family: f\nparts:\n  a:\n    : 1\n")]
    public void Leaves_a_key_that_is_missing_to_the_tree(string text) => Assert.False(Compared(text, FamilyKeys.FamilyFile));

    [Theory]
    [InlineData("format: 1\nfamily: f\nparts:\n  ä: {name: Kühlerthermostat 🌡, kind: tank}\n  b: {name: \"öl \\u00fc\", kind: hose, ünknown: 1}\n")]
    [InlineData("format: 1\nfamily: f\nparts:\n  a: {name: Kühler 🌡 — Øl, kind: tank}\n")]
    [InlineData("# 🌡\r\nformat: 1\rfamily: f\nparts:\n  a: {name: [ü\n")]
    public void Counts_characters_where_bytes_are_more(string text) => Compared(text, FamilyKeys.FamilyFile);

    [Fact]
    public void Keeps_every_entry_of_a_long_mapping_in_order()
    {
        string text = "format: 1\nfamily: f\nparts:\n" + string.Concat(Enumerable.Range(0, 5_000).Select(part => string.Create(CultureInfo.InvariantCulture, $"  p-{part}: {{kind: tank}}\n")));
        Assert.True(Compared(text, FamilyKeys.FamilyFile));
        foreach (int count in new[] { 0, 1, 3, 4, 5, 1_023, 1_024, 1_025, 2_048, 2_049, 5_000 })
        {
            var pieces = new Pieces<int>();
            foreach (int item in Enumerable.Range(0, count))
                pieces.Add(item);
            Assert.Equal(Enumerable.Range(0, count), pieces.ToImmutable());
        }
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void Counts_values_and_depth_as_the_tree_does(int most)
    {
        const string Text = "format: 1\nfamily: f\nparts:\n  a: {kind: tank, inspect: {minutes: 1, access: [b]}}\n  b: {kind: hose}\n";
        var deep = new ReadLimits { Nesting = most };
        Assert.Equal(most >= 5, Compared(Text, FamilyKeys.FamilyFile, deep));
        for (int values = 17; values <= 24; values++)
            Compared(Text, FamilyKeys.FamilyFile, new ReadLimits { Values = values });
        Assert.False(Compared(Text, FamilyKeys.FamilyFile, new ReadLimits { Values = 19 }));
        Assert.True(Compared(Text, FamilyKeys.FamilyFile, new ReadLimits { Values = 30 }));
    }

    /// <summary>Whether a text was gone through; then its tree has nothing to tell, and the forms of both are the same.</summary>
    private static bool Compared(string text, FormShape shape, ReadLimits? limits = null)
    {
        var problems = new ProblemList(10);
        if (SourceText.FromString("f.yaml", text, problems) is not SourceText source)
            return false;
        var passing = new ReadBudget(limits ?? ReadLimits.Default);
        var whole = new ReadBudget(limits ?? ReadLimits.Default);
        Form? passed = FileForm.Passed(source, shape, passing, new ProblemList(1));
        Form? tree = FileForm.Whole(source, shape, whole, problems);
        Assert.Equal(problems.Count == 0, passed is not null);
        IsTheSameFromBytes(text, shape, limits ?? ReadLimits.Default, passed, problems);
        if (passed is null)
        {
            Assert.Equal((limits ?? ReadLimits.Default).Values, passing.ValuesLeft);
            return false;
        }

        Assert.Equal(whole.ValuesLeft, passing.ValuesLeft);
        Assert.Equal(Written(tree), Written(passed));
        return true;
    }

    /// <summary>Of a file its bytes are kept, of a text the text; whichever it is, nothing else is said.</summary>
    private static void IsTheSameFromBytes(string text, FormShape shape, ReadLimits limits, Form? passed, ProblemList told)
    {
        string body = text.TrimStart('\uFEFF');
        foreach (string mark in new[] { "", "\uFEFF" })
        {
            var problems = new ProblemList(10);
            byte[] bytes = Encoding.UTF8.GetBytes(mark + body);
            SourceText source = SourceText.FromBytes("f.yaml", bytes, problems)!;
            Assert.Equal(Written(passed), Written(FileForm.Passed(source, shape, new ReadBudget(limits), new ProblemList(1))));
            FileForm.Whole(source, shape, new ReadBudget(limits), problems);
            Assert.Equal(told.ToSorted().Select(Said), problems.ToSorted().Select(Said));
            Assert.Equal((mark + body, Convert.ToHexStringLower(SHA256.HashData(bytes))), (source.Whole.Value, source.Sha256.Value));
        }

        static string Said(Problem problem) => $"{problem.Code} {problem.Place} {problem.Text} {problem.Mend} {string.Join(' ', problem.Related)}";
    }

    private static FormShape ShapeOf(string text) =>
        text.Contains("\nfamily:", StringComparison.Ordinal) ? FamilyKeys.FamilyFile
        : text.Contains("\nstandard:", StringComparison.Ordinal) ? StandardKeys.File
        : FamilyKeys.ModuleFile;

    /// <summary>Everything that a form holds, its places included.</summary>
    private static string Written(object? value)
    {
        var text = new StringBuilder();
        Write(value, text);
        return text.ToString();
    }

    private static void Write(object? value, StringBuilder text)
    {
        switch (value)
        {
            case Form form:
                text.Append(form.Place).Append('{');
                foreach (Form.Entry entry in form.Entries)
                    WriteMembers(entry, text);
                text.Append('}');
                break;
            case Key key:
                text.Append(key.Name).Append('=');
                break;
            case Sheet:
                break;
            case string or null:
                text.Append(value).Append(';');
                break;
            case IEnumerable items:
                foreach (object? item in items)
                    Write(item, text);
                break;
            case not null when value.GetType().Name is "Located`1" or "Entry`2":
                WriteMembers(value, text);
                break;
            default:
                text.Append(Convert.ToString(value, CultureInfo.InvariantCulture)).Append(';');
                break;
        }
    }

    private static void WriteMembers(object value, StringBuilder text)
    {
        foreach (PropertyInfo property in value.GetType().GetProperties().Where(property => property.Name != "Place"))
            Write(property.GetValue(value), text);
    }
}
